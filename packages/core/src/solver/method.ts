import type { Problem } from './problem.js';
import type { Shear } from './shear.js';
import type { SparseLU } from './sparse-lu.js';

/**
 * One step of a linearly implicit method. The integrator gives the rate and the factored
 * matrix (of the sheared equations, see shear.ts) at the step's start; the method fills `y1` and
 * returns the error relative to the tolerance (1 = just good enough), in the maximum norm so that the result does not depend on
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

/** The error of a step in the maximum norm, relative to the states' sizes. */
export class ErrorNorm {
  /** State with the largest error. */
  worst = 0;

  constructor(private readonly scale: Float64Array) {}

  /** Adds the last increment to `z` and measures that of the states; NaN when one is no number. */
  take(increment: Float64Array, z: Float64Array): number {
    const { scale } = this;
    let largest = 0;
    for (let i = scale.length; i < increment.length; i++) z[i] += increment[i];
    for (let i = 0; i < scale.length; i++) {
      const e = increment[i];
      z[i] += e;
      const size = (e < 0 ? -e : e) / scale[i];
      if (!(size <= largest)) {
        largest = size;
        this.worst = i;
        if (size !== size) return NaN;
      }
    }
    return largest;
  }
}

export type StepMethodFactory = (
  problem: Problem,
  lu: SparseLU,
  shear: Shear,
  tolerance: number,
) => StepMethod;
