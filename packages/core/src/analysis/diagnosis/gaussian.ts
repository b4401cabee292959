/**
 * A multivariate normal distribution about nothing, by the inverse of its covariance's Cholesky factor:
 * what is left of deviations is their length after it, and of one figure left out the rest follows
 * (marginalisation; Rasmussen and Williams, Gaussian Processes, 5.12, from memory).
 *
 * A diagnosis makes some seven thousand of them, a third of its arithmetic: factor and inverse go by two rows and
 * two columns at once, which takes half the loads (an odd size is made even by a row of the unit matrix).
 */
export class Gaussian {
  readonly logDeterminant: number;
  /** Diagonal of the precision matrix. */
  readonly precision: Float64Array;
  readonly size: number;
  /** The size of the triangles, which is even. */
  private readonly even: number;
  private readonly factored: Float64Array;
  /** The inverse factor, column after column of `even`: all that is summed up lies side by side. */
  private readonly inverse: Float64Array;
  private readonly white: Float64Array;

  /** @param room with the covariance in it; another one made in it is the end of this one */
  constructor({ size, covariance, inverse, precision, white }: Room) {
    const even = evenSize(size);
    this.size = size;
    this.even = even;
    // A row and a column for it to be paired with.
    if (even > size) {
      covariance.fill(0, size * even, size * even + size);
      covariance[size * even + size] = 1;
    }
    this.logDeterminant = factor(covariance, even);
    this.factored = covariance;
    this.white = white;
    this.precision = precision.fill(0);
    this.inverse = inverse;
    invert(covariance, even, inverse, precision);
  }

  /** Deviations as so many independent ones of standard deviation one, into `white`. */
  whiten(r: ArrayLike<number>, white: Float64Array): void {
    const { factored, size, even } = this;
    for (let k = 0; k < size; k++) {
      let w = r[k];
      for (let i = 0; i < k; i++) w -= factored[k * even + i] * white[i];
      white[k] = w / factored[k * even + k];
    }
  }

  /** The squared length of deviations in standard deviations; `pulls`, where given, is set to P r. */
  squared(r: ArrayLike<number>, pulls?: Float64Array): number {
    const { inverse, size, even, white } = this;
    this.whiten(r, white);
    let sum = 0;
    for (let k = 0; k < size; k++) sum += white[k] * white[k];
    if (pulls !== undefined)
      for (let i = 0; i < size; i++) {
        let q = 0;
        for (let k = i; k < size; k++) q += inverse[i * even + k] * white[k];
        pulls[i] = q;
      }
    return sum;
  }
}

/**
 * The memory of a distribution of so many figures: making it costs as much as the arithmetic, so what is wanted for a
 * moment only is made where the last one was.
 */
export class Room {
  /**
   * {@link evenSize} of `size` squared, row after row, positive definite; of it only the lower triangle is read, and
   * written over.
   */
  readonly covariance: Float64Array;
  readonly inverse: Float64Array;
  readonly precision: Float64Array;
  readonly white: Float64Array;

  constructor(readonly size: number) {
    const even = evenSize(size);
    this.covariance = new Float64Array(even * even);
    this.inverse = new Float64Array(even * even);
    this.precision = new Float64Array(even);
    this.white = new Float64Array(size);
  }
}

/** The size of the matrix that so many figures are worked out with. */
export const evenSize = (size: number): number => size + (size & 1);

/** Cholesky's factor, in place of the lower triangle; the log of the determinant. */
function factor(a: Float64Array, n: number): number {
  let logDeterminant = 0;
  for (let i = 0; i < n; i += 2) {
    const [upper, lower] = [i * n, (i + 1) * n];
    for (let j = 0; j < i; j += 2) {
      const [left, right] = [j * n, (j + 1) * n];
      let ul = a[upper + j];
      let ur = a[upper + j + 1];
      let ll = a[lower + j];
      let lr = a[lower + j + 1];
      for (let k = 0; k < j; k++) {
        const u = a[upper + k];
        const l = a[lower + k];
        const x = a[left + k];
        const y = a[right + k];
        ul -= u * x;
        ur -= u * y;
        ll -= l * x;
        lr -= l * y;
      }
      const [first, between, second] = [a[left + j], a[right + j], a[right + j + 1]];
      ul /= first;
      ll /= first;
      a[upper + j] = ul;
      a[upper + j + 1] = (ur - ul * between) / second;
      a[lower + j] = ll;
      a[lower + j + 1] = (lr - ll * between) / second;
    }
    let uu = a[upper + i];
    let lu = a[lower + i];
    let ll = a[lower + i + 1];
    for (let k = 0; k < i; k++) {
      const u = a[upper + k];
      const l = a[lower + k];
      uu -= u * u;
      lu -= l * u;
      ll -= l * l;
    }
    const root = Math.sqrt(uu);
    lu /= root;
    ll -= lu * lu;
    a[upper + i] = root;
    a[lower + i] = lu;
    a[lower + i + 1] = Math.sqrt(ll);
    logDeterminant += Math.log(uu * ll);
  }
  return logDeterminant;
}

/** The inverse of a lower triangle, column after column; the squared lengths of its columns are added to `squares`. */
function invert(l: Float64Array, n: number, out: Float64Array, squares: Float64Array): void {
  for (let i = 0; i < n; i += 2) {
    const [upper, lower] = [i * n, (i + 1) * n];
    const [first, second] = [1 / l[upper + i], 1 / l[lower + i + 1]];
    const between = l[lower + i];
    for (let c = 0; c < i; c += 2) {
      const [left, right] = [c * n, (c + 1) * n];
      // Above its diagonal the right column is nothing.
      let ul = l[upper + c] * out[left + c];
      let ll = l[lower + c] * out[left + c];
      let ur = 0;
      let lr = 0;
      for (let k = c + 1; k < i; k++) {
        const u = l[upper + k];
        const w = l[lower + k];
        const x = out[left + k];
        const y = out[right + k];
        ul += u * x;
        ur += u * y;
        ll += w * x;
        lr += w * y;
      }
      ul *= -first;
      ur *= -first;
      ll = -second * (ll + between * ul);
      lr = -second * (lr + between * ur);
      out[left + i] = ul;
      out[left + i + 1] = ll;
      out[right + i] = ur;
      out[right + i + 1] = lr;
      squares[c] += ul * ul + ll * ll;
      squares[c + 1] += ur * ur + lr * lr;
    }
    const across = -second * between * first;
    out[upper + i] = first;
    out[upper + i + 1] = across;
    out[lower + i + 1] = second;
    squares[i] += first * first + across * across;
    squares[i + 1] += second * second;
  }
}
