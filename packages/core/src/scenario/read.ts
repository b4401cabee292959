import type { Issue } from '../define/issue.js';
import type { NumberParameter } from '../define/parameter.js';
import type { MechanismEntry, Scenario } from '../define/scenario.js';
import { buildCards } from './card.js';
import type { Catalogues } from '../define/catalogue.js';
import {
  buildComponents,
  buildNodes,
  buildUnits,
  checkNames,
  checkNodes,
  collectNodes,
} from './connections.js';
import { readDraft } from './draft.js';
import { settleDevices } from './device.js';
import { readDriven } from './driven.js';
import { readMechanism, type ReadMechanism } from './parameters.js';
import { camel } from './names.js';
import { OIL, SURROUNDINGS } from './own-parameters.js';
import type { Plain } from './parse.js';
import type { IssueList } from './issue-list.js';
import { buildRules } from './rule.js';
import { readSignals } from './signal.js';
import type { World } from './world.js';

/** A scenario, or everything that keeps the text from being one. */
export interface Reading {
  readonly scenario?: Scenario;
  /** In the order of the file; empty when there is a scenario. */
  readonly issues: readonly Issue[];
}

/**
 * Reads a scenario from plain data: every quantity to SI, defaults filled, expressions sampled,
 * references followed. Safe on data from anywhere: never throws, and cost and memory are bounded.
 */
export function readData(catalogues: Catalogues, data: Plain, issues: IssueList): Reading {
  const written = readDraft(data, catalogues, issues);
  if (written === undefined) return { issues: issues.sorted() };
  const { components: devices, parameters } = settleDevices(written, issues);
  const draft = { ...written, components: devices };

  const mechanisms = new Map<string, ReadMechanism>();
  for (const [name, part] of draft.mechanisms)
    mechanisms.set(name, readMechanism(part, ['mechanisms', name], issues));
  const world: World = {
    draft,
    catalogues,
    issues,
    mechanisms,
    nodes: collectNodes(draft),
    parameters,
    signals: readSignals(draft, issues),
    driven: readDriven(draft, mechanisms, issues),
  };
  checkNames(world);
  checkNodes(world);
  const components = buildComponents(world);
  const moving: Record<string, MechanismEntry> = {};
  for (const [name, { definition, frame }] of draft.mechanisms) {
    const own = mechanisms.get(name)?.parameters;
    if (definition === undefined || own === undefined) continue;
    const driven = world.driven.get(name);
    moving[name] = {
      is: definition.kind,
      note: frame?.note ?? '',
      parameters: own,
      ...(driven && { driven }),
    };
  }
  const units = buildUnits(world);
  const rules = buildRules(world);
  const cards = buildCards(world, components, moving);
  const { title, note, fluid, limits } = draft;
  if (issues.length > 0 || title === undefined || fluid === undefined)
    return { issues: issues.sorted() };
  const scenario: Scenario = {
    wheelwell: 1,
    file: issues.file,
    title,
    note,
    fluid: {
      kind: fluid.kind,
      temperature: fluid.temperature ?? given(OIL.temperature),
      freeAir: fluid['free-air'] ?? given(OIL.freeAir),
      thickness: fluid.thickness ?? given(OIL.thickness),
      warmedBy: fluid['warmed-by'] ?? given(OIL.warmedBy),
    },
    ambient: draft.ambient ?? given(SURROUNDINGS.ambient),
    airspeed: draft.airspeed ?? given(SURROUNDINGS.airspeed),
    sideslip: draft.sideslip ?? given(SURROUNDINGS.sideslip),
    components,
    mechanisms: moving,
    nodes: buildNodes(world),
    units,
    limits: camelKeys(limits ?? {}),
    rules,
    cards,
  };
  return { scenario, issues: [] };
}

function camelKeys(limits: Record<string, number | undefined>): Scenario['limits'] {
  return Object.fromEntries(Object.entries(limits).map(([name, value]) => [camel(name), value]));
}

const given = ({ default: usual = 0 }: NumberParameter): number => usual;
