import fc from 'fast-check';
import { det, inv, multiply } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  evenSize,
  Gaussian,
  Room,
} from '../../../packages/core/src/analysis/diagnosis/gaussian.js';

/** Figures that scatter together by what is unknown, and each by itself; and how far each is off. */
const scattered = fc.integer({ min: 1, max: 11 }).chain((n) => {
  const some = (length: number, min: number, max: number) =>
    fc.array(fc.double({ min, max, noNaN: true }), { minLength: length, maxLength: length });
  return fc.record({
    loads: fc.array(some(3, -2, 2), { minLength: n, maxLength: n }),
    own: some(n, 0.05, 1),
    off: some(n, -3, 3),
  });
});

/** As the class wants it: the lower triangle alone, the rest of no matter. */
function packed(covariance: readonly (readonly number[])[]): Room {
  const size = evenSize(covariance.length);
  // As another has left it.
  const room = new Room(covariance.length);
  for (const a of [room.covariance, room.inverse, room.precision, room.white]) a.fill(7);
  covariance.forEach((row, i) =>
    row.forEach((x, j) => j <= i && (room.covariance[i * size + j] = x)),
  );
  return room;
}

describe('the normal distribution of several figures', () => {
  it('is that of mathjs, for any number of figures', () => {
    fc.assert(
      fc.property(scattered, ({ loads, own, off }) => {
        const n = own.length;
        const covariance = loads.map((a, i) =>
          loads.map((b, j) => a.reduce((s, x, k) => s + x * b[k], i === j ? own[i] : 0)),
        );
        const precision = inv(covariance);
        const pulled = multiply(precision, off);
        const g = new Gaussian(packed(covariance));
        const pulls = new Float64Array(n);
        const squared = g.squared(off, pulls);
        expect(squared).toBeCloseTo(
          pulled.reduce((sum, q, i) => sum + q * off[i], 0),
          8,
        );
        expect(g.logDeterminant).toBeCloseTo(Math.log(det(covariance)), 8);
        pulled.forEach((q, i) => {
          expect(pulls[i]).toBeCloseTo(q, 8);
          expect(g.precision[i]).toBeCloseTo(precision[i][i], 8);
        });
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  it('is that of two by hand: squared distance, pulls and precision', () => {
    const [va, vb, c] = [0.04, 0.09, 0.03];
    const det = va * vb - c * c;
    const g = new Gaussian(
      packed([
        [va, c],
        [c, vb],
      ]),
    );
    const [x, y] = [0.3, -0.2];
    const pulls = new Float64Array(2);
    expect(g.squared([x, y], pulls)).toBeCloseTo(
      (vb * x * x - 2 * c * x * y + va * y * y) / det,
      12,
    );
    expect(pulls[0]).toBeCloseTo((vb * x - c * y) / det, 12);
    expect(pulls[1]).toBeCloseTo((va * y - c * x) / det, 12);
    expect(g.logDeterminant).toBeCloseTo(Math.log(det), 12);
    expect([...g.precision].map((p) => p * det)).toEqual([
      expect.closeTo(vb, 12) as number,
      expect.closeTo(va, 12) as number,
    ]);
  });
});
