import { describe, expect, it } from 'vitest';
import {
  integrate,
  patternFrom,
  placeOf,
  rodas3,
  rodas4,
  Shear,
  type Bends,
  type Problem,
} from '../../../packages/core/src/solver/index.js';
import {
  keeper,
  oilBehindPiston,
  problemOf,
  referenceProblems,
  type Equations,
} from '../../support/reference-problems/index.js';

/** Two chambers of one piston and a tank; flows that are not linear, volumes that bend. */
const area = [3e-4, -2e-4];
const volume = (k: number, q: number): number => area[k] * Math.sin(q);
const bends: Bends = {
  follower: Int32Array.of(2, 3),
  leader: Int32Array.of(0, 0),
  pace: Int32Array.of(1, 1),
  at: (k, q) => ({
    value: volume(k, q),
    slope: area[k] * Math.cos(q),
    curvature: -volume(k, q),
  }),
};
const STIFF = 1e13;
const jack: Equations = {
  names: ['angle', 'speed', 'head', 'rod', 'tank'],
  scale: [0.01, 1, 1e-8, 1e-8, 1e-4],
  rate: (_t, [q, w, head, rod, tank], r) => {
    const p = STIFF * (head - volume(0, q));
    const back = STIFF * (rod - 3e-4 - volume(1, q));
    const fed = 1e-11 * (4e6 - p) + 1e-2 * tank * tank;
    const drained = 1e-11 * back * (1 + 1e-8 * back);
    r[0] = w;
    r[1] = (p * area[0] + back * area[1]) * Math.cos(q) - 20 * w;
    r[2] = fed;
    r[3] = -drained;
    r[4] = drained - fed;
  },
  partials: (_t, [q, , head, rod, tank]) => {
    const back = STIFF * (rod - 3e-4 - volume(1, q));
    const p = STIFF * (head - volume(0, q));
    const pq = -STIFF * area[0] * Math.cos(q);
    const bq = -STIFF * area[1] * Math.cos(q);
    const drain = 1e-11 * (1 + 2e-8 * back);
    const byAngle =
      (pq * area[0] + bq * area[1]) * Math.cos(q) - (p * area[0] + back * area[1]) * Math.sin(q);
    return [
      [0, 1, 0, 0, 0],
      [byAngle, -20, STIFF * area[0] * Math.cos(q), STIFF * area[1] * Math.cos(q), 0],
      [-1e-11 * pq, 0, -1e-11 * STIFF, 0, 2e-2 * tank],
      [-drain * bq, 0, 0, -drain * STIFF, 0],
      [drain * bq + 1e-11 * pq, 0, 1e-11 * STIFF, drain * STIFF, -2e-2 * tank],
    ];
  },
  bends,
};
const START = [0.1, 0, volume(0, 0.1), 3e-4 + volume(1, 0.1), 1e-3];

describe('the change of variables', () => {
  const problem = problemOf(jack);
  const shear = new Shear(problem);
  const at = Float64Array.of(0.4, 0.7, volume(0, 0.4) + 2e-7, 3e-4 + volume(1, 0.4) + 1e-7, 9e-4);

  it('and back gives the state it began with', () => {
    const z = new Float64Array(shear.size);
    const y = new Float64Array(5);
    shear.start(at, z);
    expect(z[2]).toBeCloseTo(2e-7, 12);
    shear.within(z, y);
    y.forEach((v, i) => expect(v).toBeCloseTo(at[i], 15));
  });

  it('turns the Jacobian into that of the turned rates: central differences agree', () => {
    const rate = new Float64Array(5);
    const values = new Float64Array(problem.pattern.column.length);
    problem.jacobian(0, at, rate, values);
    shear.turnJacobian(values, at, rate);
    const z = new Float64Array(shear.size);
    shear.start(at, z);
    const turned = (moved: Float64Array): Float64Array => {
      const y = new Float64Array(5);
      const r = new Float64Array(shear.size);
      shear.within(moved, y);
      problem.derivatives(0, y, r);
      shear.turnRate(r);
      return r;
    };
    for (let j = 0; j < 5; j++) {
      const step = problem.scale[j] * 1e-4;
      const high = turned(z.map((v, i) => (i === j ? v + step : v)));
      const low = turned(z.map((v, i) => (i === j ? v - step : v)));
      for (let i = 0; i < 5; i++) {
        const unit = problem.scale[j] / problem.scale[i];
        const difference = ((high[i] - low[i]) / (2 * step)) * unit;
        const analytic = values[placeOf(problem.pattern, i, j)] * unit;
        expect(analytic, `row ${i}, column ${j}`).toBeCloseTo(difference, 3);
      }
    }
  });

  it('refuses a pattern without the places that it fills', () => {
    const bare: Problem = { ...problem, pattern: patternFrom(5, []) };
    expect(() => new Shear(bare)).toThrow('the pattern lacks (2, 0)');
  });
});

describe.each([
  ['rodas3', rodas3],
  ['rodas4', rodas4],
] as const)('%s', (_, method) => {
  const run = (equations: Equations, start: readonly number[], end: number) => {
    const y = Float64Array.from(start);
    const options = { method, tolerance: 0.02, maxSteps: 100_000, eventWidth: 1e-6 };
    const result = integrate(problemOf(equations), 0, end, y, options, keeper());
    expect(result.end).toBe('done');
    return { y, steps: result.statistics.steps + result.statistics.rejected };
  };

  it('keeps what flows between chambers and a tank, to rounding', () => {
    const sum = START[2] + START[3] + START[4];
    const { y } = run(jack, START, 1);
    expect(y[0]).toBeGreaterThan(0.15);
    expect(Math.abs(y[2] + y[3] + y[4] - sum)).toBeLessThan(1e-14);
  });

  it('takes a bent stiff constraint in well under half the attempts', () => {
    const { start, end, answer } = referenceProblems.find((p) => p.name === 'oil behind a piston')!;
    const straight = run(oilBehindPiston(false), start, end);
    const bent = run(oilBehindPiston(true), start, end);
    expect(bent.steps).toBeLessThan(straight.steps / 2.5);
    expect(Math.abs(bent.y[0] - answer[0])).toBeLessThan(1e-3);
  });
});
