import { describe, expect, it } from 'vitest';
import {
  rodas3,
  rodas4,
  Shear,
  SparseLU,
  type StepMethodFactory,
} from '../../../packages/core/src/solver/index.js';
import { problemOf, type Equations } from '../../support/reference-problems/index.js';

/** Steps of one length with a method itself, without error control. */
function march(
  factory: StepMethodFactory,
  e: Equations,
  start: readonly number[],
  h: number,
  steps: number,
): Float64Array {
  const problem = problemOf(e);
  const lu = new SparseLU(problem.pattern);
  const shear = new Shear(problem);
  const method = factory(problem, lu, shear, 1);
  const values = new Float64Array(problem.pattern.column.length);
  const rate = new Float64Array(problem.size);
  const next = new Float64Array(problem.size);
  const y = Float64Array.from(start);
  for (let k = 0; k < steps; k++) {
    problem.jacobian(k * h, y, rate, values);
    shear.turnJacobian(values, y, rate);
    expect(lu.factor(values, 1 / (method.gamma * h))).toBe(true);
    method.attempt(k * h, h, y, rate, next);
    y.set(next);
  }
  return y;
}

/**
 * Motion round a circle with a speed that is cubic in the radius: (cos t, sin t) from (1, 0). Not
 * linear, nor a Riccati equation (which such methods may solve exactly), so all order conditions count.
 */
const circle: Equations = {
  names: ['x', 'y'],
  rate: (_t, [x, y], r) => {
    const square = x * x + y * y;
    r[0] = -y * square;
    r[1] = x * square;
  },
  partials: (_t, [x, y]) => [
    [-2 * x * y, -(x * x) - 3 * y * y],
    [3 * x * x + y * y, 2 * x * y],
  ],
};

/**
 * An oscillator with a state that comes to a cubic of its position: x = cos t, c = x^3 + x^2 + e^-t.
 * With the bend declared the step is taken in c - x^3 - x^2.
 */
const follows: Equations = {
  names: ['x', 'v', 'c'],
  rate: (_t, [x, v, c], r) => {
    r[0] = v;
    r[1] = -x;
    r[2] = x * x * (x + 1) - c + x * (3 * x + 2) * v;
  },
  partials: (_t, [x, v]) => [
    [0, 1, 0],
    [-1, 0, 0],
    [x * (3 * x + 2) + (6 * x + 2) * v, x * (3 * x + 2), -1],
  ],
  bends: {
    follower: Int32Array.of(2),
    leader: Int32Array.of(0),
    pace: Int32Array.of(1),
    at: (_bend, x) => ({
      value: x * x * (x + 1),
      slope: x * (3 * x + 2),
      curvature: 6 * x + 2,
    }),
  },
};

/** y' = rate (y - cos s) - sin s, s' = 1 (Prothero, Robinson, Math. Comp. 28 (1974) 145): y = cos s for any rate. */
const forced = (rate: number): Equations => ({
  names: ['y', 's'],
  rate: (_t, y, r) => {
    r[0] = rate * (y[0] - Math.cos(y[1])) - Math.sin(y[1]);
    r[1] = 1;
  },
  partials: (_t, y) => [
    [rate, rate * Math.sin(y[1]) - Math.cos(y[1])],
    [0, 0],
  ],
});

describe.each([
  ['rodas3', rodas3, 3],
  ['rodas4', rodas4, 4],
] as const)('%s', (_, factory, order) => {
  it(`halving the step divides the error by 2^${order}`, () => {
    const error = (steps: number): number => {
      const y = march(factory, circle, [1, 0], 1 / steps, steps);
      return Math.hypot(y[0] - Math.cos(1), y[1] - Math.sin(1));
    };
    // rodas4's error constant is small: finer steps would meet rounding.
    const errors = [40, 80, 160].map(error);
    const measured = [Math.log2(errors[0] / errors[1]), Math.log2(errors[1] / errors[2])];
    for (const m of measured) expect(Math.abs(m - order)).toBeLessThan(0.25);
  });

  it('and along a curve that bends as well', () => {
    const error = (steps: number): number => {
      const y = march(factory, follows, [1, 0, 3], 2 / steps, steps);
      const x = Math.cos(2);
      return Math.abs(y[2] - (x * x * (x + 1) + Math.exp(-2)));
    };
    const errors = [40, 80, 160].map(error);
    const measured = [Math.log2(errors[0] / errors[1]), Math.log2(errors[1] / errors[2])];
    for (const m of measured) expect(Math.abs(m - order)).toBeLessThan(0.25);
  });

  it('declares the order and stage count it has', () => {
    const problem = problemOf(circle);
    let calls = 0;
    const counting = {
      ...problem,
      derivatives: (t: number, y: Float64Array, r: Float64Array) => {
        calls++;
        problem.derivatives(t, y, r);
      },
    };
    const lu = new SparseLU(problem.pattern);
    const method = factory(counting, lu, new Shear(problem), 1);
    const values = new Float64Array(4);
    const rate = new Float64Array(2);
    problem.jacobian(0, Float64Array.of(1, 0), rate, values);
    lu.factor(values, 1 / (method.gamma * 0.1));
    method.attempt(0, 0.1, Float64Array.of(1, 0), rate, new Float64Array(2));
    expect(method.order).toBe(order);
    expect(calls).toBe(method.evaluations);
  });

  it('damps an infinitely fast decay to nothing in one step (L-stability)', () => {
    const y = march(
      factory,
      { names: ['y'], rate: (_t, v, r) => void (r[0] = -1e12 * v[0]), partials: () => [[-1e12]] },
      [1],
      1,
      1,
    );
    expect(Math.abs(y[0])).toBeLessThan(1e-10);
  });

  it('is stiffly accurate: the error on a stiff forced decay falls with its rate', () => {
    const error = (rate: number): number =>
      Math.abs(march(factory, forced(rate), [1, 0], 0.1, 10)[0] - Math.cos(1));
    expect(error(-1e7)).toBeLessThan(error(-1e4) / 500);
  });

  it('conserves a linear invariant to rounding', () => {
    // Exchange between three stores at rates that are not linear: the sum cannot change.
    const exchange: Equations = {
      names: ['a', 'b', 'c'],
      rate: (_t, y, r) => {
        const ab = 50 * y[0] * y[0] - y[1];
        const bc = 1e4 * (y[1] - y[2]);
        r[0] = -ab;
        r[1] = ab - bc;
        r[2] = bc;
      },
      partials: (_t, y) => [
        [-100 * y[0], 1, 0],
        [100 * y[0], -1 - 1e4, 1e4],
        [0, 1e4, -1e4],
      ],
    };
    const y = march(factory, exchange, [1, 0.3, 0], 0.02, 100);
    expect(Math.abs(y[0] + y[1] + y[2] - 1.3)).toBeLessThan(1e-13);
  });
});
