import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  minimumDegreeOrder,
  patternFrom,
  placeOf,
  SparseLU,
} from '../../../packages/core/src/solver/index.js';

/** A sparse matrix as entries, a shift that makes it dominant, and a right-hand side. */
const system = fc.integer({ min: 1, max: 14 }).chain((n) =>
  fc.record({
    n: fc.constant(n),
    entries: fc.uniqueArray(
      fc.tuple(fc.nat(n - 1), fc.nat(n - 1), fc.double({ min: -1, max: 1, noNaN: true })),
      { maxLength: 4 * n, selector: ([i, j]) => `${i},${j}` },
    ),
    right: fc.array(fc.integer({ min: -10_000, max: 10_000 }), { minLength: n, maxLength: n }),
    share: fc.double({ min: 1.1, max: 10, noNaN: true }),
  }),
);

describe('SparseLU', () => {
  it('solves random sparse systems as mathjs does', () => {
    fc.assert(
      fc.property(system, ({ n, entries, right, share }) => {
        const pattern = patternFrom(
          n,
          entries.map(([i, j]) => [i, j] as const),
        );
        const values = new Float64Array(pattern.column.length);
        const dense = Array.from({ length: n }, () => new Array<number>(n).fill(0));
        for (const [i, j, v] of entries) {
          values[placeOf(pattern, i, j)] = v;
          dense[i][j] -= v;
        }
        // Row sums bound the shift from below, so no pivoting is needed.
        const shift =
          share * Math.max(1e-3, ...dense.map((r) => r.reduce((s, v) => s + Math.abs(v), 0)));
        dense.forEach((r, i) => (r[i] += shift));
        const lu = new SparseLU(pattern);
        expect(lu.factor(values, shift)).toBe(true);
        const x = Float64Array.from(right);
        lu.solve(x);
        const expected = (lusolve(dense, right) as number[][]).map((r) => r[0]);
        const size = Math.max(...expected.map(Math.abs));
        expected.forEach((e, i) => expect(Math.abs(x[i] - e)).toBeLessThanOrEqual(1e-11 * size));
      }),
      { seed: 20, numRuns: 300 },
    );
  });

  it('factors again and solves several times without remembering', () => {
    const pattern = patternFrom(2, [
      [0, 1],
      [1, 0],
    ]);
    const lu = new SparseLU(pattern);
    const solve = (
      values: readonly number[],
      shift: number,
      right: readonly number[],
    ): number[] => {
      lu.factor(Float64Array.from(values), shift);
      const x = Float64Array.from(right);
      lu.solve(x);
      return [...x];
    };
    const first = solve([1, 2, 3, 4], 10, [1, 1]);
    solve([0, 1, 0, 0], 1, [5, 5]);
    expect(solve([1, 2, 3, 4], 10, [1, 1])).toEqual(first);
  });

  it.each([
    ['a pivot vanishes', [2, 0], 2],
    ['a value is not a number', [NaN, 0], 1],
    ['a value is infinite', [Infinity, 0], 1],
  ])('says so when %s', (_, values, shift) => {
    expect(new SparseLU(patternFrom(2, [])).factor(Float64Array.from(values), shift)).toBe(false);
  });
});

/** Multiplications that an order costs. */
function work(
  n: number,
  places: readonly (readonly [number, number])[],
  order: ArrayLike<number>,
): number {
  const number = new Int32Array(n);
  Array.from(order).forEach((v, k) => (number[v] = k));
  return new SparseLU(
    patternFrom(
      n,
      places.map(([i, j]) => [number[i], number[j]] as const),
    ),
  ).work;
}

describe('minimumDegreeOrder', () => {
  const arrow = (n: number): [number, number][] =>
    Array.from(
      { length: n - 1 },
      (_, k) =>
        [
          [0, k + 1],
          [k + 1, 0],
        ] as [number, number][],
    ).flat();

  it('is a permutation, and the same however the places are listed', () => {
    fc.assert(
      fc.property(system, fc.integer(), ({ n, entries }, seed) => {
        const places = entries.map(([i, j]) => [i, j] as const);
        const order = [...minimumDegreeOrder(n, places)];
        expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
        const mixed = [...places].sort(
          (a, b) => Math.sin(a[0] * 31 + a[1] + seed) - Math.sin(b[0] * 31 + b[1] + seed),
        );
        expect([...minimumDegreeOrder(n, mixed)]).toEqual(order);
      }),
      { seed: 21, numRuns: 100 },
    );
  });

  it('leaves the hub of a star until its spokes are gone: no fill-in', () => {
    const n = 30;
    expect(work(n, arrow(n), minimumDegreeOrder(n, arrow(n)))).toBe(n - 1);
    const plain = Array.from({ length: n }, (_, i) => i);
    // In plain order the hub goes first and joins everything with everything.
    expect(work(n, arrow(n), plain)).toBeGreaterThan(1000);
  });

  it('breaks ties by the lowest index', () => {
    expect([...minimumDegreeOrder(4, [])]).toEqual([0, 1, 2, 3]);
  });
});

describe('patternFrom', () => {
  it('has the diagonal, sorted rows, no doubles', () => {
    const p = patternFrom(3, [
      [0, 2],
      [0, 1],
      [0, 2],
      [2, 0],
    ]);
    expect([...p.rowStart]).toEqual([0, 3, 4, 6]);
    expect([...p.column]).toEqual([0, 1, 2, 1, 0, 2]);
    expect(placeOf(p, 0, 2)).toBe(2);
    expect(placeOf(p, 1, 2)).toBe(-1);
  });
});
