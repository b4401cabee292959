import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateDense, fillDense, firstAbove } from '../../../packages/core/src/solver/index.js';

const number = fc.double({ min: -100, max: 100, noNaN: true });

/** Values at s of one state's cubic. */
function cubic(
  fast: number,
  h: number,
  ends: readonly [number, number, number, number],
): (s: number) => number {
  const c = new Float64Array(4);
  const [y0, r0, y1, r1] = ends.map((v) => Float64Array.of(v));
  fillDense(c, Uint8Array.of(fast), h, y0, r0, y1, r1);
  const y = new Float64Array(1);
  return (s) => {
    evaluateDense(c, 0, s, y);
    return y[0];
  };
}

describe('dense output', () => {
  it('meets both ends, fast or slow', () => {
    fc.assert(
      fc.property(number, number, number, number, fc.nat(1), (y0, r0, y1, r1, fast) => {
        const at = cubic(fast, 0.3, [y0, r0, y1, r1]);
        expect(at(0) - y0).toBe(0);
        expect(Math.abs(at(1) - y1)).toBeLessThan(
          1e-12 * (1 + Math.abs(y0) + Math.abs(y1) + Math.abs(r0) + Math.abs(r1)),
        );
      }),
      { seed: 1 },
    );
  });

  it('a slow state is met to fourth order inside the step', () => {
    const error = (h: number): number => {
      const at = cubic(0, h, [1, 1, Math.exp(h), Math.exp(h)]);
      return Math.max(...[0.25, 0.5, 0.75].map((s) => Math.abs(at(s) - Math.exp(s * h))));
    };
    expect(Math.abs(Math.log2(error(0.2) / error(0.1)) - 4)).toBeLessThan(0.2);
  });

  it('a slow cubic is met exactly', () => {
    const f = (t: number): number => 2 - t + 3 * t * t - t ** 3;
    const at = cubic(0, 2, [f(0), -1, f(2), -1 + 12 - 12]);
    for (const s of [0.1, 0.5, 0.8]) expect(Math.abs(at(s) - f(2 * s))).toBeLessThan(1e-13);
  });

  it('a fast state never leaves the span between its ends, whatever its end rates', () => {
    const rates = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(
        number,
        rates,
        number,
        rates,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (y0, r0, y1, r1, s) => {
          const v = cubic(1, 0.01, [y0, r0, y1, r1])(s);
          const slack = 1e-12 * (Math.abs(y0) + Math.abs(y1) + 1);
          expect(v).toBeGreaterThanOrEqual(Math.min(y0, y1) - slack);
          expect(v).toBeLessThanOrEqual(Math.max(y0, y1) + slack);
        },
      ),
      { seed: 2, numRuns: 500 },
    );
  });

  it('a slow state keeps its slopes, even past its ends', () => {
    expect(cubic(0, 1, [0, 10, 0, -10])(0.5)).toBeGreaterThan(1);
    expect(cubic(1, 1, [0, 10, 0, -10])(0.5)).toBe(0);
  });

  it('states do not mix, and the offset picks the step', () => {
    const c = new Float64Array(16);
    const step = new Float64Array(8);
    fillDense(
      step,
      Uint8Array.of(0, 0),
      1,
      Float64Array.of(1, 10),
      Float64Array.of(1, 10),
      Float64Array.of(2, 20),
      Float64Array.of(1, 10),
    );
    c.set(step, 8);
    const y = new Float64Array(2);
    evaluateDense(c, 8, 0.5, y);
    expect([...y]).toEqual([1.5, 15]);
  });
});

describe('firstAbove', () => {
  const shapes: readonly (readonly [string, (x: number) => number, number])[] = [
    ['a line', (x) => x - 0.3, 0.3],
    ['a flat start', (x) => (x - 0.5) ** 9, 0.5],
    ['a steep end', (x) => Math.exp(40 * (x - 1)) - 1e-6, 1 + Math.log(1e-6) / 40],
    ['a step', (x) => (x > 0.123456 ? 1 : -1), 0.123456],
    ['a tiny slope beside a huge one', (x) => (x > 0.7 ? 1e6 * (x - 0.7) : 1e-6 * (x - 0.7)), 0.7],
    ['zero from the start', (x) => x, 0],
  ];

  it.each(shapes)(
    '%s: ends on the side above zero, within the width, in few turns',
    (_, f, root) => {
      const width = 1e-9;
      let calls = 0;
      const x = firstAbove((v) => (calls++, f(v)), 0, f(0), 1, f(1), width);
      expect(f(x)).toBeGreaterThan(0);
      expect(x - root).toBeGreaterThanOrEqual(0);
      // Ninth-order flat: f is not told from zero closer than this.
      expect(x - root).toBeLessThanOrEqual(width + 1e-12);
      // Bisection alone would take 30; a bracket halves at least every third turn.
      expect(calls).toBeLessThan(90);
    },
  );
});
