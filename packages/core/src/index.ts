/**
 * wheelwell: aircraft hydraulic landing gear, simulated. The public door of the core; works in
 * Node and in browsers.
 *
 * @packageDocumentation
 */

export { braceBars, plungerDepression, type BraceBars } from './component/index.js';
export type * from './define/index.js';
export { FAULT_GROUPS, formatIssue, kept, SI_UNIT, tailored, worse } from './define/index.js';
export {
  clearancesOf,
  judge,
  lightSwitches,
  timings,
  type Clearance,
  type Gap,
} from './monitor/index.js';
export { GEAR, type PlayOptions, type SimulateOptions } from './machine/index.js';
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

/** What a mechanic can do to tell causes apart. */
export { checks } from './check/index.js';
/** The JSON Schema of observation sheets, for editors. */
export { observationSchema as observationJsonSchema } from './observation/index.js';
/** What works with the catalogues that come with core. */
export {
  blowDownBottle,
  blowDownCard,
  blowDownCards,
  blowDownMargin,
  blowDownUnder,
  chargeTable,
  followUp,
  followUpSwing,
  judgeBlowDown,
  minimumCharge,
  playBlowDown,
  serviceSteps,
} from './bound/blow-down.js';
export { catalogues } from './bound/catalogues.js';
export { checkConditions, diagnose, playAhead, signaturePlayer } from './bound/diagnosis.js';
export { taskSender } from './analysis/index.js';
export { underConditions } from './bound/conditions.js';
export { lessonJsonSchema, prepareLesson, readLesson } from './bound/lesson.js';
export {
  applyCard,
  checkFault,
  editScenarioText,
  glance,
  holdScenario,
  readScenario,
  scenarioJsonSchema,
  simulate,
} from './bound/swing.js';
