import type { Problem } from './problem.js';
import type { SparseLU } from './sparse-lu.js';

/**
 * One step of a linearly implicit method. The integrator gives the rate and the factored
 * matrix at the step's start; the method fills `y1` and returns the error relative to the
 * tolerance (1 = just good enough), in the maximum norm so that the result does not depend on
 * how many well-behaved states stand beside the worst one.
 */
export interface StepMethod {
  readonly name: string;
  /** Order of the solution; the embedded solution has one less. */
  readonly order: number;
  /** The shift is 1 / (gamma h). */
  readonly gamma: number;
  /** Calls of `derivatives` in one attempt. */
  readonly evaluations: number;
  attempt(t: number, h: number, y0: Float64Array, rate0: Float64Array, y1: Float64Array): number;
  /** State with the largest error in the last attempt. */
  worst(): number;
}

export type StepMethodFactory = (problem: Problem, lu: SparseLU, tolerance: number) => StepMethod;
