import type { Catalogues, FaultEntry, Issue, Run, Scenario } from '../define/index.js';

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
  readonly scenarioJsonSchema: () => unknown;
  readonly catalogues: Catalogues;
}
