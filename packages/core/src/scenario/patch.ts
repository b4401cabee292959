import type { Catalogues } from '../define/catalogue.js';
import type { FaultDefinition } from '../define/fault.js';
import type { Card, FaultEntry, Scenario } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { lookUp } from './look-up.js';
import { applySetting, splitSetting } from './setting.js';

/** A scenario and card with the card's conditions and all faults worked into the scenario. */
export interface Patched {
  readonly scenario: Scenario;
  /** The card with the faults that were applied; the given one when none were added. */
  readonly card: Card;
}

/**
 * Works a card into a scenario: its temperature, its settings, its faults, then `extraFaults`. What
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
  const part = lookUp(scenario.components, on) ?? lookUp(scenario.mechanisms, on);
  const fitting = canBefall(scenario, fault);
  if (part === undefined) return told(`there is no device or mechanism ${on}`, on, fitting);
  if (!fault.befalls.includes(part.is)) {
    return told(
      `${name} cannot befall ${on}, a ${part.is}; here it can befall ${fitting.join(', ') || 'nothing'}`,
      '',
      [],
    );
  }
  if (!(severity >= 0 && severity <= 1))
    return `the severity of ${name} is outside 0 to 1: ${severity}`;
  return undefined;
}

/** Devices and mechanisms of a scenario that a fault can befall, in declared order. */
export function canBefall(scenario: Scenario, fault: FaultDefinition): readonly string[] {
  return Object.entries({ ...scenario.components, ...scenario.mechanisms })
    .filter(([, part]) => fault.befalls.includes(part.is))
    .map(([name]) => name);
}

function told(problem: string, name: string, known: readonly string[]): string {
  const hint = didYouMean(name, known);
  return hint === '' ? problem : `${problem} (${hint})`;
}

function applyFault(scenario: Scenario, entry: FaultEntry, catalogues: Catalogues): Scenario {
  const problem = faultProblem(scenario, entry, catalogues);
  if (problem !== undefined) throw new RangeError(problem);
  if (entry.severity === 0) return scenario;
  const { on, severity } = entry;
  const section = Object.hasOwn(scenario.components, on) ? 'components' : 'mechanisms';
  const part = scenario[section][on];
  const changed = catalogues.faults[entry.fault].change(part.parameters, severity);
  return {
    ...scenario,
    [section]: {
      ...scenario[section],
      [on]: { ...part, parameters: { ...part.parameters, ...changed } },
    },
  };
}
