/**
 * Sparsity patterns and the elimination order.
 */

/** Compressed rows: columns of row i are `column[rowStart[i] .. rowStart[i+1])`, ascending. */
export interface SparsePattern {
  readonly size: number;
  readonly rowStart: Int32Array;
  readonly column: Int32Array;
}

/** Pattern from a list of (row, column) places; the diagonal is always included. */
export function patternFrom(
  size: number,
  places: Iterable<readonly [number, number]>,
): SparsePattern {
  const rows: Set<number>[] = [];
  for (let i = 0; i < size; i++) rows.push(new Set([i]));
  for (const [i, j] of places) rows[i].add(j);
  const rowStart = new Int32Array(size + 1);
  const column: number[] = [];
  rows.forEach((set, i) => {
    column.push(...[...set].sort((a, b) => a - b));
    rowStart[i + 1] = column.length;
  });
  return { size, rowStart, column: Int32Array.from(column) };
}

/** Position of (row, column) in the pattern's value array, -1 when it is not there. */
export function placeOf(pattern: SparsePattern, row: number, column: number): number {
  for (let e = pattern.rowStart[row]; e < pattern.rowStart[row + 1]; e++) {
    if (pattern.column[e] === column) return e;
  }
  return -1;
}

/**
 * Minimum-degree elimination order of the symmetrised pattern (ties: lowest index, so the
 * order is deterministic). Returns `order` with `order[k]` = the variable eliminated k-th.
 * Source: Duff, Erisman, Reid, Direct Methods for Sparse Matrices (the Markowitz criterion
 * for a symmetric pattern).
 */
export function minimumDegreeOrder(
  size: number,
  places: Iterable<readonly [number, number]>,
): Int32Array {
  const neighbours: Set<number>[] = [];
  for (let i = 0; i < size; i++) neighbours.push(new Set());
  for (const [i, j] of places) {
    if (i === j) continue;
    neighbours[i].add(j);
    neighbours[j].add(i);
  }
  const order = new Int32Array(size);
  const left = new Set(Array.from({ length: size }, (_, i) => i));
  for (let k = 0; k < size; k++) {
    let best = -1;
    let degree = Infinity;
    for (const i of left) {
      if (neighbours[i].size < degree) {
        degree = neighbours[i].size;
        best = i;
      }
    }
    order[k] = best;
    left.delete(best);
    const around = [...neighbours[best]];
    for (const a of around) {
      neighbours[a].delete(best);
      for (const b of around) if (a !== b) neighbours[a].add(b);
    }
  }
  return order;
}
