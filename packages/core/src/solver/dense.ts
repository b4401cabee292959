/**
 * Dense output of a step: a cubic per state in s = (t - t0) / h,
 * y(s) = c0 + s (c1 + s (c2 + s c3)), four coefficients per state, state by state.
 *
 * Slow states take the cubic Hermite interpolant of both ends (fourth-order local error).
 * Fast states relax within a small part of the step, so their end rates are not slopes of the
 * step; there the slopes are limited to three times the secant, which keeps the interpolant
 * monotone (Fritsch, Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246).
 */
export function fillDense(
  coefficients: Float64Array,
  fast: Uint8Array,
  h: number,
  y0: Float64Array,
  rate0: Float64Array,
  y1: Float64Array,
  rate1: Float64Array,
): void {
  for (let i = 0, c = 0; i < y0.length; i++, c += 4) {
    const start = y0[i];
    const rise = y1[i] - start;
    let m0 = h * rate0[i];
    let m1 = h * rate1[i];
    if (fast[i] === 1) {
      const most = 3 * rise;
      if (rise >= 0) {
        m0 = m0 < 0 ? 0 : m0 > most ? most : m0;
        m1 = m1 < 0 ? 0 : m1 > most ? most : m1;
      } else {
        m0 = m0 > 0 ? 0 : m0 < most ? most : m0;
        m1 = m1 > 0 ? 0 : m1 < most ? most : m1;
      }
    }
    coefficients[c] = start;
    coefficients[c + 1] = m0;
    coefficients[c + 2] = 3 * rise - 2 * m0 - m1;
    coefficients[c + 3] = m0 + m1 - 2 * rise;
  }
}

/**
 * Dense output of states whose integrals are states too (pairs integral, state): the slope of the
 * integral's cubic. A mass that stiff oil holds takes its speed within a small part of a step, so
 * its own rates say nothing; the way it has gone does.
 */
export function fillSlopes(coefficients: Float64Array, integrals: Int32Array, h: number): void {
  if (!(h > 0)) return;
  for (let i = 0; i < integrals.length; i += 2) {
    const a = 4 * integrals[i];
    const b = 4 * integrals[i + 1];
    coefficients[b] = coefficients[a + 1] / h;
    coefficients[b + 1] = (2 * coefficients[a + 2]) / h;
    coefficients[b + 2] = (3 * coefficients[a + 3]) / h;
    coefficients[b + 3] = 0;
  }
}

/** Evaluates the cubics at s in [0, 1] into `y`; `from` is the offset of the step's coefficients. */
export function evaluateDense(
  coefficients: Float64Array,
  from: number,
  s: number,
  y: Float64Array,
): void {
  for (let i = 0, c = from; i < y.length; i++, c += 4) {
    y[i] =
      coefficients[c] +
      s * (coefficients[c + 1] + s * (coefficients[c + 2] + s * coefficients[c + 3]));
  }
}
