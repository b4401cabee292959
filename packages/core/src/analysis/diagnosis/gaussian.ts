/**
 * A multivariate normal distribution about nothing, by the inverse of its covariance's Cholesky factor:
 * what is left of deviations is their length after it, and of one figure left out the rest follows
 * (marginalisation; Rasmussen and Williams, Gaussian Processes, 5.12, from memory).
 */
export class Gaussian {
  readonly logDeterminant: number;
  /** Diagonal of the precision matrix. */
  readonly precision: Float64Array;
  /** The inverse factor, column after column of `size`: all that is summed up lies side by side. */
  private readonly inverse: Float64Array;
  private readonly white: Float64Array;

  /** @param factored size x size, row after row, positive definite; of it only the lower triangle is read, and written over */
  constructor(
    private readonly factored: Float64Array,
    readonly size: number,
  ) {
    this.logDeterminant = factor(factored, size);
    this.inverse = inverted(factored, size);
    this.white = new Float64Array(size);
    this.precision = new Float64Array(size);
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let k = i; k < size; k++) sum += this.inverse[i * size + k] ** 2;
      this.precision[i] = sum;
    }
  }

  /** The squared length of deviations in standard deviations; `pulls`, where given, is set to P r. */
  squared(r: ArrayLike<number>, pulls?: Float64Array): number {
    const { factored, inverse, size, white } = this;
    let sum = 0;
    for (let k = 0; k < size; k++) {
      let w = r[k];
      for (let i = 0; i < k; i++) w -= factored[k * size + i] * white[i];
      w /= factored[k * size + k];
      white[k] = w;
      sum += w * w;
    }
    if (pulls !== undefined)
      for (let i = 0; i < size; i++) {
        let q = 0;
        for (let k = i; k < size; k++) q += inverse[i * size + k] * white[k];
        pulls[i] = q;
      }
    return sum;
  }
}
/** Cholesky's factor, in place of the lower triangle; the log of the determinant. */
function factor(a: Float64Array, n: number): number {
  let logDeterminant = 0;
  for (let i = 0; i < n; i++) {
    const row = i * n;
    let square = a[row + i];
    for (let j = 0; j < i; j++) {
      const other = j * n;
      let sum = a[row + j];
      for (let k = 0; k < j; k++) sum -= a[row + k] * a[other + k];
      sum /= a[other + j];
      a[row + j] = sum;
      square -= sum * sum;
    }
    a[row + i] = Math.sqrt(square);
    logDeterminant += Math.log(square);
  }
  return logDeterminant;
}

/** The inverse of a lower triangle, column after column. */
function inverted(l: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const row = i * n;
    const scale = -1 / l[row + i];
    out[row + i] = -scale;
    for (let c = 0; c < i; c++) {
      const column = c * n;
      let sum = 0;
      for (let k = c; k < i; k++) sum += l[row + k] * out[column + k];
      out[column + i] = scale * sum;
    }
  }
  return out;
}
