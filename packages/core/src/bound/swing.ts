/** Scenarios and their runs, with the catalogues that come with core. */
import type { Card, Edit, Evidence, FaultEntry, Gear, Run, Scenario } from '../define/index.js';
import {
  glanceWith,
  simulateWith,
  type PlayOptions,
  type SimulateOptions,
} from '../machine/index.js';
import {
  faultProblem,
  holdWith,
  jsonSchemaOf,
  patchScenario,
  readWith,
  type Edited,
  type HeldScenario,
  type Patched,
  type Reading,
} from '../scenario/index.js';
import { catalogues } from './catalogues.js';

/**
 * Reads a scenario from YAML text. Never throws: everything wrong with the text comes back in
 * `issues`, placed by line and column; `scenario` is there when nothing was.
 */
export function readScenario(text: string, options: { readonly file?: string } = {}): Reading {
  return readWith(catalogues, text, options);
}

/**
 * Holds a scenario text for changes. Reading it with changes costs what they touch, not a reading
 * of the whole text; never throws.
 */
export function holdScenario(text: string, options: { readonly file?: string } = {}): HeldScenario {
  return holdWith(catalogues, text, options);
}

/**
 * Works changes of single values into a scenario text; comments, order and layout of all else stay
 * as they are. A value out of its range is refused as reading refuses it; then there is no text.
 */
export function editScenarioText(
  text: string,
  edits: readonly Edit[],
  options: { readonly file?: string } = {},
): Edited {
  const held = holdScenario(text, options);
  const { issues } = held.read(edits);
  return issues.length > 0 ? { issues } : held.write(edits);
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

/**
 * Plays a test card for the sake of a few channels, read at the ends of steps as they are made: with a small part of
 * the memory of {@link simulate}, for whoever wants little of many runs. Its log is whole; of other channels `series`
 * knows nothing.
 *
 * @param wanted of the aircraft with its faults in it: which channels
 * @throws RangeError when `options.card` names no card.
 */
export function glance(
  scenario: Scenario,
  options: PlayOptions,
  wanted: (gear: Gear) => (channel: string) => boolean,
): Evidence {
  return glanceWith(catalogues, scenario, options, wanted);
}
