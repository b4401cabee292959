import type { Catalogues } from '../define/catalogue.js';
import type { FaultDefinition } from '../define/fault.js';
import type { ParameterValue } from '../define/parameter.js';
import type { Card, FaultEntry, Scenario } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { lookUp } from './look-up.js';
import { FLUID } from './names.js';
import { applySetting, splitSetting } from './setting.js';

/** A scenario and card with the card's conditions and all faults worked into the scenario. */
export interface Patched {
  readonly scenario: Scenario;
  /** The card with the faults that were applied; the given one when none were added. */
  readonly card: Card;
}

/**
 * Works a card into a scenario: its temperature and wind, its settings, its faults, then `extraFaults`. What
 * nothing changes is shared with the given scenario; faults of severity 0 change nothing, and where
 * nothing changes at all the given objects themselves come back.
 *
 * @throws RangeError when a fault or setting names something that does not exist, befalls a device it
 * cannot befall, or has a severity outside 0 to 1. What `readScenario` accepted never throws.
 */
export function patchScenario(
  scenario: Scenario,
  card: Card,
  extraFaults: readonly FaultEntry[],
  catalogues: Catalogues,
): Patched {
  let patched = scenario;
  if (card.temperature !== undefined && card.temperature !== scenario.fluid.temperature) {
    patched = { ...patched, fluid: { ...patched.fluid, temperature: card.temperature } };
  }
  if (card.airspeed !== undefined && card.airspeed !== scenario.airspeed) {
    patched = { ...patched, airspeed: card.airspeed };
  }
  if (card.sideslip !== undefined && card.sideslip !== scenario.sideslip) {
    patched = { ...patched, sideslip: card.sideslip };
  }
  for (const [text, value] of Object.entries(card.set)) {
    const path = splitSetting(text);
    if (path === undefined) throw new RangeError(`not something a card can set: ${text}`);
    patched = applySetting(patched, path, value);
  }
  for (const entry of [...card.faults, ...extraFaults])
    patched = applyFault(patched, entry, catalogues);
  const added = extraFaults.filter((entry) => entry.severity > 0);
  return {
    scenario: patched,
    card: added.length === 0 ? card : { ...card, faults: [...card.faults, ...added] },
  };
}

/** What keeps a fault from being applied, as a sentence; undefined when nothing does. */
export function faultProblem(
  scenario: Scenario,
  entry: FaultEntry,
  catalogues: Catalogues,
): string | undefined {
  const { fault: name, on, severity } = entry;
  const fault = lookUp(catalogues.faults, name);
  if (fault === undefined)
    return told(`there is no fault ${name}`, name, Object.keys(catalogues.faults));
  const kind =
    on === FLUID ? FLUID : (lookUp(scenario.components, on) ?? lookUp(scenario.mechanisms, on))?.is;
  const fitting = canBefall(scenario, fault);
  if (kind === undefined) return told(`there is no device or mechanism ${on}`, on, fitting);
  if (!fault.befalls.includes(kind)) {
    return told(
      `${name} cannot befall ${kind === FLUID ? 'the oil' : `${on}, a ${kind}`}; here it can befall ${fitting.join(', ') || 'nothing'}`,
      '',
      [],
    );
  }
  if (!(severity >= 0 && severity <= 1))
    return `the severity of ${name} is outside 0 to 1: ${severity}`;
  return undefined;
}

/** Devices and mechanisms of a scenario that a fault can befall, in declared order; the oil last. */
export function canBefall(scenario: Scenario, fault: FaultDefinition): readonly string[] {
  const parts = Object.entries({ ...scenario.components, ...scenario.mechanisms })
    .filter(([, part]) => fault.befalls.includes(part.is))
    .map(([name]) => name);
  return fault.befalls.includes(FLUID) ? [...parts, FLUID] : parts;
}

function told(problem: string, name: string, known: readonly string[]): string {
  const hint = didYouMean(name, known);
  return hint === '' ? problem : `${problem} (${hint})`;
}

/** What a fault does to its part: figures that differ, and ports where it joins them otherwise. */
export interface PartChange {
  readonly changed: Readonly<Record<string, ParameterValue>>;
  readonly ports?: Readonly<Record<string, string>>;
}

/** What a fault that can befall a part (`faultProblem`) makes of it at a severity, 0 to 1. */
export function changeOf(
  scenario: Scenario,
  { fault: name, on, severity }: FaultEntry,
  catalogues: Catalogues,
): PartChange {
  const fault = catalogues.faults[name];
  if (on === FLUID) {
    const { temperature, freeAir, thickness, warmedBy } = scenario.fluid;
    return { changed: fault.change({ temperature, freeAir, thickness, warmedBy }, severity) };
  }
  const part = scenario[sectionOf(scenario, on)][on];
  const ports = 'ports' in part ? fault.reconnect?.(part.ports) : undefined;
  return { changed: fault.change(part.parameters, severity), ...(ports && { ports }) };
}

function sectionOf({ components }: Scenario, on: string): 'components' | 'mechanisms' {
  return Object.hasOwn(components, on) ? 'components' : 'mechanisms';
}

function applyFault(scenario: Scenario, entry: FaultEntry, catalogues: Catalogues): Scenario {
  const problem = faultProblem(scenario, entry, catalogues);
  if (problem !== undefined) throw new RangeError(problem);
  if (entry.severity === 0) return scenario;
  const { on } = entry;
  const { changed, ports } = changeOf(scenario, entry, catalogues);
  if (on === FLUID) return { ...scenario, fluid: { ...scenario.fluid, ...changed } };
  const section = sectionOf(scenario, on);
  const part = scenario[section][on];
  return {
    ...scenario,
    [section]: {
      ...scenario[section],
      [on]: {
        ...part,
        parameters: { ...part.parameters, ...changed },
        ...(ports && { ports }),
      },
    },
  };
}
