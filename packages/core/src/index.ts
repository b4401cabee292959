/**
 * wheelwell: aircraft hydraulic landing gear, simulated. The public door of the core; works in
 * Node and in browsers.
 *
 * @packageDocumentation
 */
import * as analysis from './analysis/index.js';
import { checks } from './check/index.js';
import { components } from './component/index.js';
import type { Card, Catalogues, Edit, FaultEntry, Run, Scenario } from './define/index.js';
import { faults } from './fault/index.js';
import {
  lessonJsonSchemaOf,
  prepareLessonWith,
  readLessonWith,
  type LessonPlan,
  type LessonReading,
  type PrepareOptions,
} from './lesson/index.js';
import { simulateWith, type SimulateOptions } from './machine/index.js';
import { mechanisms } from './mechanism/index.js';
import { fluids, gases } from './medium/index.js';
import { rules } from './monitor/index.js';
import {
  observationSchema,
  type ObservationConditions,
  type ObservationSheet,
} from './observation/index.js';
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
} from './scenario/index.js';

export { braceBars, plungerDepression, type BraceBars } from './component/index.js';
export type * from './define/index.js';
export { FAULT_GROUPS, formatIssue, kept, SI_UNIT, tailored, worse } from './define/index.js';
export { clearancesOf, judge, timings, type Clearance, type Gap } from './monitor/index.js';
export { GEAR, type SimulateOptions } from './machine/index.js';
export { parseQuantity, toDisplay, type Display, type DisplaySystem } from './quantity/index.js';
export {
  CAUTIONS,
  diagnosisDocument,
  toBlowDownText,
  toDiagnosisText,
  toCsv,
  toDocument,
  toJson,
  toTable,
  type Caution,
  type BlowDownReport,
  type CheckLine,
  type ComparisonLine,
  type DiagnosisCatalogues,
  type DiagnosisDocument,
  type MemberLine,
  type RankedLine,
  type RemedyLine,
  type CsvContent,
  type CsvOptions,
  type RunDocument,
  type TableOptions,
} from './report/index.js';
export {
  gasLeft,
  rampCases,
  momentCurve,
  momentCurves,
  TABLE_TEMPERATURES,
  worstPoint,
} from './analysis/index.js';
export type * from './analysis/index.js';
export {
  findOffset,
  readRecording,
  type ColumnChoice,
  type Offset,
  type OffsetPair,
  type RecordedSeries,
  type Recording,
  type RecordingColumn,
  type RecordingOptions,
} from './recording/index.js';
export {
  expectedSwings,
  GAUGE_MOMENTS,
  HAND_STOPWATCH,
  REMARKS,
  readObservations,
  SUPPLY_READINGS,
  TIMED,
  writeObservations,
  type Contradiction,
  type ExpectedSwing,
  type GaugeMoment,
  type GaugeReadings,
  type ObservationConditions,
  type ObservationReading,
  type ObservationSheet,
  type ObservationWriting,
  type ObservedColumn,
  type ObservedEvent,
  type ObservedLook,
  type ObservedSwing,
  type ObservedTime,
  type ObservedTimes,
  type SupplyReading,
  type SupplyReadings,
  type RecordingEntry,
  type Remark,
  type SwingDirection,
  type TimedEvent,
} from './observation/index.js';
export {
  writeLesson,
  type LessonPlan,
  type LessonReading,
  type PrepareOptions,
} from './lesson/index.js';
export type {
  ArrangeStep,
  CompareStep,
  FindStep,
  Lesson,
  LessonCheck,
  LessonChoice,
  LessonEvent,
  LessonLine,
  LessonStep,
  Measure,
  Moment,
  PredictStep,
  PreparedStep,
  Scene,
  TellStep,
} from './lesson/index.js';
export { rampMargin, rampOf, type Ramp, type RampMargin } from './mechanism/index.js';
export {
  OWN_PARAMETERS,
  writeScenario,
  type Edited,
  type HeldScenario,
  type Patched,
  type Reading,
} from './scenario/index.js';

/** Everything a scenario may name: devices, mechanisms, oils, faults, rules. */
export const catalogues: Catalogues = { components, mechanisms, fluids, gases, faults, rules };

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

/** The JSON Schema of observation sheets, for editors. */
export function observationJsonSchema(): Record<string, unknown> {
  return observationSchema();
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

/** The card of a scenario that pulls a blow-down handle: the named one or the first. @throws RangeError when there is none. */
export function blowDownCard(scenario: Scenario, card?: string): string {
  return analysis.blowDownCard(scenario, catalogues, card);
}

/** The cards of a scenario that pull a blow-down handle; none without one. */
export function blowDownCards(scenario: Scenario): string[] {
  return analysis.blowDownCards(scenario, catalogues);
}

/** The bottle whose charge is looked at: the first of the scenario. @throws RangeError when there is none. */
export function blowDownBottle(scenario: Scenario): string {
  return analysis.bottleOf(scenario, catalogues);
}

/** The scenario with one of its cards under another charge and temperature, to simulate. */
export function blowDownUnder(
  scenario: Scenario,
  card: string,
  condition: analysis.BlowDownCondition,
): Scenario {
  return analysis.under(scenario, catalogues, card, condition);
}

/**
 * A blow-down under another charge and temperature: what locks, when, with what margin.
 *
 * @throws RangeError when the scenario has no bottle or no such card.
 */
export function playBlowDown(
  scenario: Scenario,
  card: string,
  condition: analysis.BlowDownCondition,
): analysis.BlowDownCell {
  return analysis.playCell(catalogues, scenario, card, condition);
}

/** How every leg fared in a run that pulls a blow-down handle. @throws RangeError when the scenario has no bottle. */
export function judgeBlowDown(run: Run): analysis.BlowDownCell {
  return analysis.judgeRun(catalogues, run);
}

/**
 * The map of a blow-down over charge and temperature (and a third parameter).
 *
 * @throws RangeError when the scenario has no bottle or card for it, or a range is empty or not rising.
 */
export function blowDownMargin(
  scenario: Scenario,
  ranges: analysis.BlowDownRanges,
  options?: analysis.BlowDownOptions,
): Promise<analysis.BlowDownMap> {
  return analysis.blowDownMargin(catalogues, scenario, ranges, options);
}

/** The least charge with which every leg still locks. @throws RangeError as {@link blowDownMargin}. */
export function minimumCharge(
  scenario: Scenario,
  options?: { readonly card?: string; readonly temperature?: number },
): analysis.MinimumCharge {
  return analysis.minimumCharge(catalogues, scenario, options);
}

/** The pressure to see on the gauge at each temperature, K. @throws RangeError without a bottle. */
export function chargeTable(
  scenario: Scenario,
  temperatures?: readonly number[],
): analysis.ChargeTable {
  return analysis.chargeTable(catalogues, scenario, temperatures);
}

/** What has to be done after a blow-down, each step with its reason from the run. */
export function serviceSteps(run: Run): readonly analysis.ServiceStep[] {
  return analysis.serviceSteps(catalogues, run);
}

/** Times of a normal swing, and with the gas of a blow-down still in the oil; undefined without a card for one. */
export function followUp(run: Run): analysis.FollowUp | undefined {
  return analysis.followUp(catalogues, run);
}

/** A normal swing with the gas of a blow-down still in the oil. @throws RangeError when there is no such card. */
export function followUpSwing(run: Run, card: string): Run {
  return analysis.followUpSwing(catalogues, run, card);
}

/**
 * Reads a lesson from YAML text; with its scenario also whether all it names is there. Never throws:
 * what is wrong comes back in `issues`.
 */
export function readLesson(
  text: string,
  options: { readonly file?: string; readonly scenario?: Scenario } = {},
): LessonReading {
  return readLessonWith(catalogues, text, options);
}

/**
 * Reads a lesson and makes it ready: questions, choices, answers and reasons from runs of its
 * scenario. What the runs do not bear out is told in `issues` like a slip in the file. Never throws.
 */
export function prepareLesson(
  text: string,
  scenario: Scenario,
  options: PrepareOptions = {},
): LessonPlan {
  return prepareLessonWith(catalogues, text, scenario, options);
}

/** The JSON Schema of lesson files, for editors. */
export function lessonJsonSchema(): Record<string, unknown> {
  return lessonJsonSchemaOf(catalogues);
}

/** What a mechanic can do to tell causes apart. */
export { checks };

/**
 * What explains a sheet: every known fault, wherever it can befall, against what was noted, with its
 * probability. Cancelled, it gives what it has.
 */
export function diagnose(
  scenario: Scenario,
  sheet: ObservationSheet,
  options?: analysis.DiagnosisOptions,
): Promise<analysis.Diagnosis> {
  return analysis.diagnose(catalogues, scenario, sheet, options);
}

/**
 * Plays into `memory` what a diagnosis of this sheet will want when more has been noted on it: a sheet
 * that is still empty counts by its conditions and the ways of its swings. @returns swings played
 */
export function playAhead(
  scenario: Scenario,
  sheet: ObservationSheet,
  options?: analysis.AheadOptions,
): Promise<number> {
  return analysis.playAhead(catalogues, scenario, sheet, options);
}

/** The scenario with a card under a sheet's conditions; what they do not name stays. @throws RangeError for an unknown oil */
export function underConditions(
  scenario: Scenario,
  card: string,
  conditions: ObservationConditions,
): Scenario {
  return analysis.underConditions(catalogues, scenario, card, conditions);
}

/** How the aircraft stands for the swing that a check asks for; undefined for a check that is a look. */
export function checkConditions(
  scenario: Scenario,
  sheet: ObservationSheet,
  check: string,
): ObservationConditions | undefined {
  return analysis.checkConditions(catalogues, scenario, sheet, check);
}

/** A player of the swings that a diagnosis asks for, e.g. in a worker. */
export function signaturePlayer(
  scenario: Scenario,
  sheet: ObservationSheet,
): (job: analysis.SignatureJob) => analysis.Signature {
  return analysis.signaturePlayer(catalogues, scenario, sheet);
}
