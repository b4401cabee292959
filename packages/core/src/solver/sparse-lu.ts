import type { SparsePattern } from './pattern.js';

/**
 * LU factors of (shift I - J) with a fixed pattern and no pivoting, in the given order.
 *
 * The symbolic elimination is done once; factoring and solving run over flat index lists and
 * allocate nothing. Without pivoting a small pivot is possible; `factor` then says so and the
 * caller takes a smaller step (a larger shift makes the diagonal dominant).
 */
export class SparseLU {
  /** [ diagonal | upper rows | lower columns ] */
  private readonly a: Float64Array;
  private readonly inverse: Float64Array;
  private readonly upperStart: Int32Array;
  private readonly upperColumn: Int32Array;
  private readonly lowerStart: Int32Array;
  private readonly lowerRow: Int32Array;
  /** Targets of the elimination's updates, in order. */
  private readonly target: Int32Array;
  /** Where each place of the pattern goes in `a`. */
  private readonly scatter: Int32Array;
  /** Places that elimination fills and the pattern does not have. */
  private readonly fill: Int32Array;
  private readonly upperAt: number;
  private readonly lowerAt: number;

  constructor(private readonly pattern: SparsePattern) {
    const n = pattern.size;
    const rows: Set<number>[] = [];
    const columns: Set<number>[] = [];
    for (let i = 0; i < n; i++) {
      rows.push(new Set());
      columns.push(new Set());
    }
    for (let i = 0; i < n; i++) {
      for (let e = pattern.rowStart[i]; e < pattern.rowStart[i + 1]; e++) {
        const j = pattern.column[e];
        if (j > i) rows[i].add(j);
        else if (j < i) columns[j].add(i);
      }
    }
    for (let k = 0; k < n; k++) {
      for (const i of columns[k]) {
        for (const j of rows[k]) {
          if (j > i) rows[i].add(j);
          else if (j < i) columns[j].add(i);
        }
      }
    }
    this.upperStart = new Int32Array(n + 1);
    this.lowerStart = new Int32Array(n + 1);
    const upper: number[] = [];
    const lower: number[] = [];
    for (let k = 0; k < n; k++) {
      upper.push(...[...rows[k]].sort((x, y) => x - y));
      lower.push(...[...columns[k]].sort((x, y) => x - y));
      this.upperStart[k + 1] = upper.length;
      this.lowerStart[k + 1] = lower.length;
    }
    this.upperColumn = Int32Array.from(upper);
    this.lowerRow = Int32Array.from(lower);
    this.upperAt = n;
    this.lowerAt = n + upper.length;
    this.a = new Float64Array(n + upper.length + lower.length);
    this.inverse = new Float64Array(n);
    const where = (i: number, j: number): number => {
      if (i === j) return i;
      if (j > i) {
        for (let e = this.upperStart[i]; e < this.upperStart[i + 1]; e++) {
          if (upper[e] === j) return this.upperAt + e;
        }
      } else {
        for (let e = this.lowerStart[j]; e < this.lowerStart[j + 1]; e++) {
          if (lower[e] === i) return this.lowerAt + e;
        }
      }
      throw new Error(`place ${i},${j} is outside the factors`);
    };
    const target: number[] = [];
    for (let k = 0; k < n; k++) {
      for (let l = this.lowerStart[k]; l < this.lowerStart[k + 1]; l++) {
        for (let u = this.upperStart[k]; u < this.upperStart[k + 1]; u++) {
          target.push(where(lower[l], upper[u]));
        }
      }
    }
    this.target = Int32Array.from(target);
    this.scatter = new Int32Array(pattern.column.length);
    for (let i = 0; i < n; i++) {
      for (let e = pattern.rowStart[i]; e < pattern.rowStart[i + 1]; e++) {
        this.scatter[e] = where(i, pattern.column[e]);
      }
    }
    const own = new Set(this.scatter);
    this.fill = Int32Array.from(this.a.keys()).filter((e) => !own.has(e));
  }

  /** Multiplications of one factorisation, for statistics. */
  get work(): number {
    return this.target.length;
  }

  /** Factors shift I - J; false when a pivot vanished or a value is not finite. */
  factor(jacobian: Float64Array, shift: number): boolean {
    const { a, inverse, upperStart, lowerStart, target, scatter, upperAt, lowerAt } = this;
    const n = this.pattern.size;
    const { fill } = this;
    for (let e = 0; e < fill.length; e++) a[fill[e]] = 0;
    for (let e = 0; e < scatter.length; e++) a[scatter[e]] = -jacobian[e];
    for (let k = 0; k < n; k++) a[k] += shift;
    let at = 0;
    for (let k = 0; k < n; k++) {
      const pivot = a[k];
      const r = 1 / pivot;
      if (!(Math.abs(r) < 1e300) || r === 0) return false;
      inverse[k] = r;
      const u0 = upperAt + upperStart[k];
      const u1 = upperAt + upperStart[k + 1];
      const l1 = lowerAt + lowerStart[k + 1];
      for (let l = lowerAt + lowerStart[k]; l < l1; l++) {
        const factor = a[l] * r;
        a[l] = factor;
        if (factor === 0) {
          at += u1 - u0;
          continue;
        }
        for (let u = u0; u < u1; u++) a[target[at++]] -= factor * a[u];
      }
    }
    return true;
  }

  /** Solves in place. */
  solve(x: Float64Array): void {
    const { a, inverse, upperStart, upperColumn, lowerStart, lowerRow, upperAt, lowerAt } = this;
    const n = this.pattern.size;
    for (let k = 0; k < n; k++) {
      const xk = x[k];
      if (xk === 0) continue;
      const end = lowerStart[k + 1];
      for (let l = lowerStart[k]; l < end; l++) x[lowerRow[l]] -= a[lowerAt + l] * xk;
    }
    for (let k = n - 1; k >= 0; k--) {
      let s = x[k];
      const end = upperStart[k + 1];
      for (let u = upperStart[k]; u < end; u++) s -= a[upperAt + u] * x[upperColumn[u]];
      x[k] = s * inverse[k];
    }
  }
}
