/** What the test card shows: the draft of the aircraft on show, what is expected, what is wrong. */
import type {
  Contradiction,
  Expectation,
  ObservationSheet,
  SheetJob,
  SheetReply,
  SwingDirection,
} from '../worker/sheet-message.js';
import type { Issue } from '../worker/message.js';
import type { Draft } from './draft.js';

export interface TestCardState {
  /** Of the aircraft on show. */
  readonly draft: Draft | undefined;
  readonly expectation: Expectation | undefined;
  /** The way chosen for the next swing. */
  readonly way: SwingDirection | undefined;
  /** Row looked at; -1 for none. */
  readonly picked: number;
  readonly contradictions: readonly Contradiction[];
  /** What could not be read of the sheet opened last. */
  readonly issues: readonly Issue[];
  readonly opened: string;
  readonly failure: string;
  /** A sheet that was opened while another has not been saved. */
  readonly offered: { readonly file: string; readonly sheet: ObservationSheet } | undefined;
}

export const NO_CARD: TestCardState = {
  draft: undefined,
  expectation: undefined,
  way: undefined,
  picked: -1,
  contradictions: [],
  issues: [],
  opened: '',
  failure: '',
  offered: undefined,
};

/** What was chosen; else the other way than the last swing, or the way the card goes. */
export function nextWay({ way, draft, expectation }: TestCardState): SwingDirection {
  const last = draft?.sheet.swings.at(-1)?.direction;
  if (way !== undefined) return way;
  if (last === undefined) return expectation?.swings[0]?.direction ?? 'up';
  return last === 'up' ? 'down' : 'up';
}

/** Whoever reads and writes: the worker, or a stand-in. */
export interface SheetMaker {
  ask(job: SheetJob): Promise<SheetReply>;
}
