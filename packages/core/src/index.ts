/**
 * wheelwell: aircraft hydraulic landing gear, simulated. The public door of the core; works in
 * Node and in browsers.
 *
 * @packageDocumentation
 */
import { components } from './component/index.js';
import type { Card, Catalogues, FaultEntry, Run, Scenario } from './define/index.js';
import { faults } from './fault/index.js';
import { simulateWith, type SimulateOptions } from './machine/index.js';
import { mechanisms } from './mechanism/index.js';
import { fluids, gases } from './medium/index.js';
import { rules } from './monitor/index.js';
import {
  faultProblem,
  jsonSchemaOf,
  patchScenario,
  readWith,
  type Patched,
  type Reading,
} from './scenario/index.js';

export type * from './define/index.js';
export { FAULT_GROUPS, formatIssue, SI_UNIT, tailored, worse } from './define/index.js';
export { judge, timings } from './monitor/index.js';
export { GEAR, type SimulateOptions } from './machine/index.js';
export { parseQuantity, toDisplay, type Display, type DisplaySystem } from './quantity/index.js';
export {
  CAUTIONS,
  toCsv,
  toDocument,
  toJson,
  toTable,
  type Caution,
  type CsvContent,
  type CsvOptions,
  type RunDocument,
  type TableOptions,
} from './report/index.js';
export { writeScenario, type Patched, type Reading } from './scenario/index.js';

/** Everything a scenario may name: devices, mechanisms, oils, faults, rules. */
export const catalogues: Catalogues = { components, mechanisms, fluids, gases, faults, rules };

/**
 * Reads a scenario from YAML text. Never throws: everything wrong with the text comes back in
 * `issues`, placed by line and column; `scenario` is there when nothing was.
 */
export function readScenario(text: string, options: { readonly file?: string } = {}): Reading {
  return readWith(catalogues, text, options);
}

/** The JSON Schema of scenario files, for editors. */
export function scenarioJsonSchema(): Record<string, unknown> {
  return jsonSchemaOf(catalogues);
}

/** A scenario with a card's changes and faults applied to its parameters; nothing is simulated. */
export function applyCard(
  scenario: Scenario,
  card: Card,
  more: readonly FaultEntry[] = [],
): Patched {
  return patchScenario(scenario, card, more, catalogues);
}

/** Why a fault cannot be put where the entry says, as a sentence; undefined when it can. */
export function checkFault(scenario: Scenario, entry: FaultEntry): string | undefined {
  return faultProblem(scenario, entry, catalogues);
}

/**
 * Plays a test card of a scenario. A run that cannot go on says so in its outcome and keeps
 * what it has computed.
 *
 * @throws RangeError when `options.card` names no card or `options.tick` is out of range.
 */
export function simulate(scenario: Scenario, options: SimulateOptions = {}): Run {
  return simulateWith(catalogues, scenario, options);
}
