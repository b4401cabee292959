/**
 * How a run ended. Outcomes are values with sentences, never exceptions: a run that cannot
 * go on still carries everything computed so far.
 */
export type OutcomeKind =
  /** The card was played to its end. */
  | 'done'
  /** Stopped from outside (cancelled). */
  | 'stopped'
  /** The state machine did not come to rest at one instant: devices switch each other for ever. */
  | 'chatter'
  /** The step size fell below what double precision can resolve. */
  | 'stuck'
  /** A value became NaN or infinite. */
  | 'diverged'
  /** The step budget was used up. */
  | 'exhausted';

export interface Outcome {
  readonly kind: OutcomeKind;
  /** Simulated time at which the run ended, s. */
  readonly time: number;
  /** Devices or states concerned, worst first; empty for `done`. */
  readonly where: readonly string[];
  /** One sentence: what happened. */
  readonly why: string;
  /** One sentence: what to try next; empty for `done`. */
  readonly hint: string;
}

const RANK: Readonly<Record<OutcomeKind, number>> = {
  done: 0,
  stopped: 1,
  exhausted: 2,
  stuck: 3,
  chatter: 4,
  diverged: 5,
};

/** The worse of two outcomes (the first when equally bad). */
export function worse(a: Outcome, b: Outcome): Outcome {
  return RANK[b.kind] > RANK[a.kind] ? b : a;
}
