/** What the page knows at one moment: what is loaded, selected, playing. */
import type { BlowDownState } from './blow-down.js';
import { NO_MAP } from './blow-down.js';
import type { ChangesState } from './changes.js';
import { NO_CHANGES } from './changes.js';
import type { ParameterBook } from './edits.js';
import { NO_BOOK } from './edits.js';
import { NO_DIAGNOSIS } from './diagnosis-state.js';
import type { DiagnosisState } from './diagnosis-state.js';
import type { Held } from './held.js';
import type { KeptState } from './kept.js';
import { NOTHING_KEPT } from './kept.js';
import type { LessonState } from './lesson-state.js';
import { NO_LESSON } from './lesson-state.js';
import type { Loop } from './loop.js';
import type { Mark } from './marks.js';
import type { TracesState } from './traces.js';
import { NO_TRACES } from './traces.js';
import type { MeasuredTime } from './measured.js';
import { NO_CARD } from './test-card-state.js';
import type { TestCardState } from './test-card-state.js';
import type { Edit, FaultEntry, Issue, Picture, System, Timing, Trace } from '../worker/message.js';

/** A scenario text and the name it goes by. */
export interface Source {
  readonly file: string;
  readonly text: string;
}

/** What is picked out for a closer look. */
export type Selection =
  | { readonly kind: 'none' }
  | { readonly kind: 'event'; readonly index: number }
  | { readonly kind: 'flag'; readonly index: number }
  /** A device, by its name in the scenario. */
  | { readonly kind: 'part'; readonly name: string };

/** A run that was on show, kept to compare times with. */
export interface Former {
  readonly title: string;
  readonly timings: readonly Timing[];
}

export interface State {
  /** The run on show; kept when a later file cannot be read. */
  readonly picture: Picture | undefined;
  /** The text the run on show came from. */
  readonly source: Source | undefined;
  /** The faults asked for; those of the run on show follow when it arrives. */
  readonly faults: readonly FaultEntry[];
  /** Changes of the scenario's figures in force on top of `source`. */
  readonly edits: readonly Edit[];
  /** What was changed, to be taken back and made again. */
  readonly changes: ChangesState;
  /** The changes that were last saved as a file; undefined when none were. */
  readonly saved: readonly Edit[] | undefined;
  /** Work of former visits on offer. */
  readonly kept: KeptState;
  /** What can be changed, as far as it was asked for. */
  readonly parameters: ParameterBook;
  /** Channels of the run on show as far as they were asked for and have come; see model/series.ts. */
  readonly series: ReadonlyMap<string, Trace>;
  /** The files the user has given, to go back to. */
  readonly files: readonly Source[];
  /** What is being simulated; the run on show stays until it is there. */
  readonly asked: { readonly source: Source; readonly card: string } | undefined;
  /** Share of it that is done, 0..1. */
  readonly progress: number;
  readonly busy: boolean;
  /** The run before this one, of the same file: other card or other faults. */
  readonly former: Former | undefined;
  /** A run of this file that the user holds, to compare with in place of the one before. */
  readonly held: Held | undefined;
  readonly issues: readonly Issue[];
  readonly issuesFile: string;
  /** A sentence when the simulation itself failed; empty when all is well. */
  readonly failure: string;
  /** Play head, s. */
  readonly time: number;
  readonly playing: boolean;
  /** Simulated seconds per second. */
  readonly rate: number;
  /** The span that plays over and over. */
  readonly loop: Loop | undefined;
  readonly selection: Selection;
  /** None, one or both ends of a time that is read off the chart; see model/between.ts. */
  readonly marks: readonly Mark[];
  /** Window of time the charts show, s. */
  readonly span: readonly [number, number];
  readonly system: System;
  /** The bench at work, by the name of its view; empty for the plain swing. */
  readonly bench: string;
  readonly blowDown: BlowDownState;
  readonly lesson: LessonState;
  /** Traces shown, recordings laid over. */
  readonly traces: TracesState;
  /** Times taken by hand, laid over the chart. */
  readonly measured: readonly MeasuredTime[];
  /** A fault that some view suggests to put in, for the drawer to show. */
  readonly proposed: { readonly fault: string; readonly on: string } | undefined;
  readonly testCard: TestCardState;
  readonly diagnosis: DiagnosisState;
  /** Drawings and chart large, for a room full of people. */
  readonly large: boolean;
  /** What was last said to a screen reader. */
  readonly said: string;
}

export const RATES: readonly number[] = [0.1, 0.25, 0.5, 1, 2, 4];

export const EMPTY: State = {
  picture: undefined,
  source: undefined,
  faults: [],
  edits: [],
  changes: NO_CHANGES,
  saved: undefined,
  kept: NOTHING_KEPT,
  parameters: NO_BOOK,
  series: new Map(),
  files: [],
  asked: undefined,
  progress: 0,
  busy: false,
  former: undefined,
  held: undefined,
  issues: [],
  issuesFile: '',
  failure: '',
  time: 0,
  playing: false,
  rate: 1,
  loop: undefined,
  selection: { kind: 'none' },
  marks: [],
  span: [0, 1],
  system: 'us',
  bench: '',
  blowDown: NO_MAP,
  lesson: NO_LESSON,
  traces: NO_TRACES,
  measured: [],
  proposed: undefined,
  testCard: NO_CARD,
  diagnosis: NO_DIAGNOSIS,
  large: false,
  said: '',
};
