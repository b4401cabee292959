import type { Equations } from './equations.js';

/** A problem whose answer is known from outside the project. */
export interface ReferenceProblem {
  readonly name: string;
  /** Where problem and answer come from. */
  readonly source: string;
  /** Fresh equations: jumps may keep a memory. */
  readonly equations: () => Equations;
  readonly start: readonly number[];
  readonly end: number;
  readonly answer: readonly number[];
  /** Tolerance given to the solver, relative to the scales. */
  readonly tolerance: number;
  /** Largest error of each state that a right solver makes with it, and why it is larger than the tolerance. */
  readonly within: readonly number[];
  /** Times of the jumps, where the answer has any. */
  readonly jumps?: readonly number[];
}
