/**
 * A multivariate normal distribution about nothing, by the inverse of its covariance's Cholesky factor:
 * what is left of deviations is their length after it, and of one figure left out the rest follows
 * (marginalisation; Rasmussen and Williams, Gaussian Processes, 5.12, from memory).
 */
export class Gaussian {
  readonly logDeterminant: number;
  /** Diagonal of the precision matrix. */
  readonly precision: Float64Array;
  /** Lower triangle of the inverse factor, row after row of `size`. */
  private readonly inverse: Float64Array;
  private readonly white: Float64Array;

  /** @param covariance size x size, row after row, positive definite; of it only the lower triangle is read, and written over */
  constructor(
    covariance: Float64Array,
    readonly size: number,
  ) {
    this.logDeterminant = factor(covariance, size);
    this.inverse = inverted(covariance, size);
    this.white = new Float64Array(size);
    this.precision = new Float64Array(size);
    for (let k = 0; k < size; k++)
      for (let i = 0; i <= k; i++) this.precision[i] += this.inverse[k * size + i] ** 2;
  }

  /** The squared length of deviations in standard deviations; `pulls`, where given, is set to P r. */
  squared(r: ArrayLike<number>, pulls?: Float64Array): number {
    const { inverse, size, white } = this;
    let sum = 0;
    for (let k = 0; k < size; k++) {
      let w = 0;
      for (let i = 0; i <= k; i++) w += inverse[k * size + i] * r[i];
      white[k] = w;
      sum += w * w;
    }
    if (pulls !== undefined)
      for (let i = 0; i < size; i++) {
        let q = 0;
        for (let k = i; k < size; k++) q += inverse[k * size + i] * white[k];
        pulls[i] = q;
      }
    return sum;
  }
}

/** Cholesky's factor, in place of the lower triangle; the log of the determinant. */
function factor(a: Float64Array, n: number): number {
  let logDeterminant = 0;
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = a[i * n + j];
      for (let k = 0; k < j; k++) sum -= a[i * n + k] * a[j * n + k];
      a[i * n + j] = i === j ? Math.sqrt(sum) : sum / a[j * n + j];
    }
    logDeterminant += 2 * Math.log(a[j * n + j]);
  }
  return logDeterminant;
}

/** The inverse of a lower triangle. */
function inverted(l: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let c = 0; c < n; c++) {
    out[c * n + c] = 1 / l[c * n + c];
    for (let i = c + 1; i < n; i++) {
      let sum = 0;
      for (let k = c; k < i; k++) sum -= l[i * n + k] * out[k * n + c];
      out[i * n + c] = sum / l[i * n + i];
    }
  }
  return out;
}
