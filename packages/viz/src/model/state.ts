/** What the page knows at one moment: what is loaded, selected, playing. */
import type { FaultEntry, Issue, Picture, System } from '../worker/message.js';

/** A scenario text and the name it goes by. */
export interface Source {
  readonly file: string;
  readonly text: string;
}

/** What is picked out for a closer look. */
export type Selection =
  | { readonly kind: 'none' }
  | { readonly kind: 'event'; readonly index: number }
  | { readonly kind: 'flag'; readonly index: number };

export interface State {
  /** The run on show; kept when a later file cannot be read. */
  readonly picture: Picture | undefined;
  /** The text the run on show came from. */
  readonly source: Source | undefined;
  /** The faults asked for; those of the run on show follow when it arrives. */
  readonly faults: readonly FaultEntry[];
  readonly busy: boolean;
  readonly issues: readonly Issue[];
  readonly issuesFile: string;
  /** A sentence when the simulation itself failed; empty when all is well. */
  readonly failure: string;
  /** Play head, s. */
  readonly time: number;
  readonly playing: boolean;
  /** Simulated seconds per second. */
  readonly rate: number;
  readonly selection: Selection;
  /** Window of time the charts show, s. */
  readonly span: readonly [number, number];
  readonly system: System;
  /** What was last said to a screen reader. */
  readonly said: string;
}

export const RATES: readonly number[] = [0.1, 0.25, 0.5, 1, 2, 4];

export const EMPTY: State = {
  picture: undefined,
  source: undefined,
  faults: [],
  busy: false,
  issues: [],
  issuesFile: '',
  failure: '',
  time: 0,
  playing: false,
  rate: 1,
  selection: { kind: 'none' },
  span: [0, 1],
  system: 'us',
  said: '',
};
