import { placeOf } from './pattern.js';
import type { Bends, Problem } from './problem.js';

/**
 * The change of variables in which a step is taken: z = y - curve(leader) for every state that
 * follows another along a curve (see {@link Bends}), z = y for the others.
 *
 * A linearly implicit step takes the curve for a straight line. What the curve bends away from it
 * within the step is a small volume, but stiff oil makes a large pressure of that, and the step is
 * refused: in y a jack that moves steadily allows some 3 ms, in z some 60 ms. In z the volume that a
 * piston sweeps stands in the rate, as curve' times the leader's rate, and the stiff part, the
 * pressure of what is squeezed in, is straight. The two are the same equations: with S = dz/dy the
 * rate is S f, the Jacobian S J S^-1 less the leader's rate times curve''.
 *
 * What flows conserve, z does not: a step knows the swept volume to its own order only. So the
 * volume is stepped beside the states, as `swept' = curve' times the leader's rate`, and where the
 * step lands the follower has what flowed: y = y0 + (z - z0) + swept. That is the sum of two rows of
 * one linearly implicit step, so linear invariants of y hold to rounding; from z + curve it differs
 * by the step's error in a volume, far below the tolerance.
 *
 * (That a stiff constraint which bends costs such methods their order: Hairer, Lubich, Roche, The
 * Numerical Solution of Differential-Algebraic Systems by Runge-Kutta Methods, 1989; from memory.)
 */
export class Shear {
  /** Length of the vectors a step works on: the states, then the swept volumes, by bend. */
  readonly size: number;
  private readonly bends: Bends;
  private readonly states: number;
  /** Curves where the step starts. */
  private readonly value0: Float64Array;
  private readonly slope0: Float64Array;
  private readonly curvature0: Float64Array;
  /** Curves at the state last given, and where their leaders were: a leader that is held costs a look once. */
  private readonly x: Float64Array;
  private readonly value: Float64Array;
  private readonly slope: Float64Array;
  private readonly curvature: Float64Array;
  /** Places of column `follower`, and those in column `leader` beside them; those of bend k from columnStart[k]. */
  private readonly columnStart: Int32Array;
  private readonly columnFrom: Int32Array;
  private readonly columnTo: Int32Array;
  /** Places of (leader, pace), (follower, pace) and (follower, leader), by bend. */
  private readonly leaderByPace: Int32Array;
  private readonly byPace: Int32Array;
  private readonly byLeader: Int32Array;

  /** @throws Error when the pattern lacks a place that the change of variables fills. */
  constructor({ bends = NONE, pattern, size }: Problem) {
    const { follower, leader, pace } = bends;
    const count = follower.length;
    this.bends = bends;
    this.states = size;
    this.size = size + count;
    const curves = (): Float64Array => new Float64Array(count);
    this.value0 = curves();
    this.slope0 = curves();
    this.curvature0 = curves();
    this.x = curves().fill(NaN);
    this.value = curves();
    this.slope = curves();
    this.curvature = curves();
    const place = (row: number, column: number): number => {
      const found = placeOf(pattern, row, column);
      if (found < 0) throw new Error(`the pattern lacks (${row}, ${column})`);
      return found;
    };
    const rows = Array.from(follower, (f) =>
      Array.from({ length: size }, (_, row) => row).filter((row) => placeOf(pattern, row, f) >= 0),
    );
    this.columnStart = new Int32Array(count + 1);
    rows.forEach((r, k) => (this.columnStart[k + 1] = this.columnStart[k] + r.length));
    this.columnFrom = Int32Array.from(rows.flatMap((r, k) => r.map((i) => place(i, follower[k]))));
    this.columnTo = Int32Array.from(rows.flatMap((r, k) => r.map((i) => place(i, leader[k]))));
    this.leaderByPace = leader.map((l, k) => place(l, pace[k]));
    this.byPace = follower.map((f, k) => place(f, pace[k]));
    this.byLeader = follower.map((f, k) => place(f, leader[k]));
  }

  /** Start of a step at `y`: z, nothing swept yet; rates turned next belong there. */
  start(y: Float64Array, z: Float64Array): void {
    const { bends, value, slope, curvature, value0, slope0, curvature0, states } = this;
    this.look(y);
    for (let i = 0; i < states; i++) z[i] = y[i];
    for (let k = 0; k < value.length; k++) {
      value0[k] = value[k];
      slope0[k] = slope[k];
      curvature0[k] = curvature[k];
      z[bends.follower[k]] -= value[k];
      z[states + k] = 0;
    }
  }

  /** State of a z within the step; rates turned next belong there. */
  within(z: Float64Array, y: Float64Array): void {
    const { bends, value, states } = this;
    for (let i = 0; i < states; i++) y[i] = z[i];
    // No leader follows another state: the curves may be read before the followers are right.
    this.look(y);
    for (let k = 0; k < value.length; k++) y[bends.follower[k]] += value[k];
  }

  /** State where the step lands: with what has flowed since {@link start}, to rounding. */
  land(z: Float64Array, y: Float64Array): void {
    const { bends, value0, states } = this;
    for (let i = 0; i < states; i++) y[i] = z[i];
    for (let k = 0; k < value0.length; k++) y[bends.follower[k]] += value0[k] + z[states + k];
  }

  /** dy/dt at the state last given becomes dz/dt, in place, with the rates of the swept volumes behind. */
  turnRate(rate: Float64Array): void {
    const { slope, bends, states } = this;
    for (let k = 0; k < slope.length; k++) {
      const swept = slope[k] * rate[bends.leader[k]];
      rate[bends.follower[k]] -= swept;
      rate[states + k] = swept;
    }
  }

  /**
   * Completes a stage: of `u` the states are solved for, the swept volumes are still right-hand
   * sides. `shift`: that of the factored matrix; `rate0`: dy/dt where the step starts.
   */
  complete(u: Float64Array, shift: number, rate0: Float64Array): void {
    const { slope0, curvature0, bends, states } = this;
    for (let k = 0; k < slope0.length; k++) {
      const l = bends.leader[k];
      const along = slope0[k] * u[bends.pace[k]] + curvature0[k] * rate0[l] * u[l];
      u[states + k] = (u[states + k] + along) / shift;
    }
  }

  /** The Jacobian of dy/dt at `y`, where the rates are `rate`, becomes that of dz/dt, in place. */
  turnJacobian(values: Float64Array, y: Float64Array, rate: Float64Array): void {
    const { bends, slope, curvature } = this;
    const { columnStart, columnFrom, columnTo, leaderByPace, byPace, byLeader } = this;
    this.look(y);
    for (let k = 0; k < slope.length; k++) {
      const end = columnStart[k + 1];
      for (let e = columnStart[k]; e < end; e++)
        values[columnTo[e]] += values[columnFrom[e]] * slope[k];
    }
    for (let k = 0; k < slope.length; k++) {
      values[byPace[k]] -= slope[k] * values[leaderByPace[k]];
      values[byLeader[k]] -= curvature[k] * rate[bends.leader[k]];
    }
  }

  private look(y: Float64Array): void {
    const { bends, x, value, slope, curvature } = this;
    for (let k = 0; k < x.length; k++) {
      const leader = y[bends.leader[k]];
      if (leader === x[k]) continue;
      const curve = bends.at(k, leader);
      x[k] = leader;
      value[k] = curve.value;
      slope[k] = curve.slope;
      curvature[k] = curve.curvature;
    }
  }
}

const NONE: Bends = {
  follower: new Int32Array(0),
  leader: new Int32Array(0),
  pace: new Int32Array(0),
  at: () => ({ value: 0, slope: 0, curvature: 0 }),
};
