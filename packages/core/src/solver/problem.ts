import type { SparsePattern } from './pattern.js';

/** A curve at one place, with its first and second derivative there. */
export interface Curve {
  readonly value: number;
  readonly slope: number;
  readonly curvature: number;
}

/**
 * States that follow others along curves, so stiffly that what matters is the small difference:
 * y[follower] = the sum of curve(y[leader]) over its bends + that difference. The oil in a jack
 * against the angle of what the jack moves is one. No leader is a follower.
 */
export interface Bends {
  /** State that follows, by bend; one state may follow several others. */
  readonly follower: Int32Array;
  /** State that it follows, by bend. */
  readonly leader: Int32Array;
  /** State that is the leader's rate, by bend, whenever that is not held. */
  readonly pace: Int32Array;
  /** The curve of a bend where its leader is at `x`; good until the next call. */
  at(bend: number, x: number): Curve;
}

/**
 * What the solver asks of a problem, and nothing else. The network implements it; the tests
 * implement it for bare equations. All arrays have length `size` unless said.
 *
 * The problem keeps a workspace: `jacobian(t, y, …)` evaluates everything at (t, y), and
 * `crossing()` then reads guards from that workspace.
 */
export interface Problem {
  readonly size: number;
  /** Places of the Jacobian that can be non-zero, diagonal included. */
  readonly pattern: SparsePattern;
  /**
   * Size of each state; the step's error is held below tolerance x scale. `jacobian` may change
   * it for the step that starts there.
   */
  readonly scale: Float64Array;
  /**
   * 1 where a state relaxes so fast that its rate says nothing about the slope across a step
   * (oil contents); dense output limits the slopes there.
   */
  readonly fast: Uint8Array;
  /**
   * Pairs of states (a, b, a, b ...) of which the first is the second's integral over time: an
   * angle and its speed. Dense output of b is then the slope of a's.
   */
  readonly integrals?: Int32Array;
  /**
   * Where states follow others; the step is taken in the differences (see shear.ts). The pattern
   * must have, for every bend, (row, leader) where it has (row, follower), and (follower, pace).
   */
  readonly bends?: Bends;
  /** dy/dt at (t, y). */
  derivatives(t: number, y: Float64Array, rate: Float64Array): void;
  /** dy/dt and its partial derivatives in pattern order. */
  jacobian(t: number, y: Float64Array, rate: Float64Array, values: Float64Array): void;
  /** Largest guard value at the point last given to `jacobian` or `look`; above zero: a guard fires. */
  crossing(): number;
  /** Notes which guards are above zero at the point last evaluated. */
  mark(): void;
  /** Largest of the marked guards at the point last evaluated: others, however near to zero, do not blur the place where these cross it. */
  marked(): number;
  /** Evaluates what the guards need at (t, y). */
  look(t: number, y: Float64Array): void;
  /** Next instant at which the right-hand side may jump on its own; the step ends there. Infinity when none. */
  nextBreak(t: number): number;
  /** Longest step to take from the point last evaluated, s: something changes within it that a step's slopes do not show. */
  longestStep(): number;
  /**
   * Called where a guard fired, at a break, and once at the start: performs the transitions,
   * may change `y` in place. Returns what to do.
   */
  jump(t: number, y: Float64Array): JumpResult;
  /** Name of a state, for messages. */
  nameOf(state: number): string;
}

export type JumpResult =
  /** Nothing changed the right-hand side. */
  | 'unchanged'
  /** The right-hand side jumped: cached slopes are void. */
  | 'jumped'
  /** The run is over. */
  | 'end'
  /** The run cannot go on; the problem knows why. */
  | 'failed';

/** Receives every accepted step's dense output (see dense.ts), in time order. */
export interface Recorder {
  /**
   * One step: valid from t0 to t1; `h` is the length the coefficients refer to (t1 - t0, or
   * longer when the step was cut at an event).
   */
  step(t0: number, t1: number, h: number, coefficients: Float64Array): void;
}
