import type {
  AheadOptions,
  BlowDownCell,
  Diagnosis,
  DiagnosisOptions,
  ChargeTable,
  FollowUp,
  MinimumCharge,
  RampCase,
  ServiceStep,
} from '../analysis/index.js';
import type {
  Catalogues,
  CheckDefinition,
  FaultEntry,
  Issue,
  Run,
  Scenario,
} from '../define/index.js';
import type { ExpectedSwing, ObservationReading, ObservationSheet } from '../observation/index.js';

/** The part of the public door that the command line uses. */
export interface Engine {
  readonly readScenario: (
    text: string,
    options: { readonly file: string },
  ) => { readonly scenario?: Scenario; readonly issues: readonly Issue[] };
  readonly simulate: (
    scenario: Scenario,
    options: {
      readonly card?: string;
      readonly faults?: readonly FaultEntry[];
      readonly tick?: number;
      readonly tolerance?: Run['tolerance'];
      readonly onProgress?: (share: number) => void;
    },
  ) => Run;
  readonly blowDownCard: (scenario: Scenario, card?: string) => string;
  readonly judgeBlowDown: (run: Run) => BlowDownCell;
  readonly minimumCharge: (
    scenario: Scenario,
    options: { readonly card?: string },
  ) => MinimumCharge;
  readonly chargeTable: (scenario: Scenario) => ChargeTable;
  readonly serviceSteps: (run: Run) => readonly ServiceStep[];
  readonly rampCases: (run: Run) => readonly RampCase[];
  readonly followUp: (run: Run) => FollowUp | undefined;
  readonly scenarioJsonSchema: () => unknown;
  readonly observationJsonSchema: () => unknown;
  readonly lessonJsonSchema: () => unknown;
  readonly readObservations: (
    text: string,
    options: { readonly file?: string; readonly scenario?: Scenario },
  ) => ObservationReading;
  readonly diagnose: (
    scenario: Scenario,
    sheet: ObservationSheet,
    options: DiagnosisOptions,
  ) => Promise<Diagnosis>;
  readonly playAhead: (
    scenario: Scenario,
    sheet: ObservationSheet,
    options: AheadOptions,
  ) => Promise<number>;
  readonly expectedSwings: (run: Run) => readonly ExpectedSwing[];
  readonly checks: Readonly<Record<string, CheckDefinition>>;
  readonly catalogues: Catalogues;
}
