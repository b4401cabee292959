import type { Shape } from '../define/index.js';

/**
 * Sampled functions for the loop: natural-end cubic splines on a uniform grid, all of a network
 * in one flat array. Value, first and second derivative come from the same cubic, so that
 * stroke, lever arm and volume agree exactly and energy closes.
 */
const HEAD = 3;

/** Second derivatives of the cubic spline through the points (not-a-knot is not needed: the end
 * slopes are those of the parabola through the three end points). */
function splineSlopes(x: readonly number[], y: readonly number[]): Float64Array {
  const n = x.length;
  const m = new Float64Array(n);
  if (n === 2) {
    m.fill((y[1] - y[0]) / (x[1] - x[0]));
    return m;
  }
  const endSlope = (i: number, j: number, k: number): number => {
    const a = (y[j] - y[i]) / (x[j] - x[i]);
    const b = (y[k] - y[j]) / (x[k] - x[j]);
    return a - ((b - a) / (x[k] - x[i])) * (x[j] - x[i]);
  };
  const upper = new Float64Array(n);
  m[0] = endSlope(0, 1, 2);
  m[n - 1] = endSlope(n - 1, n - 2, n - 3);
  // Thomas algorithm for the interior slopes of the C2 spline.
  upper[0] = 0;
  for (let i = 1; i < n - 1; i++) {
    const h0 = x[i] - x[i - 1];
    const h1 = x[i + 1] - x[i];
    const right = 3 * ((h1 / h0) * (y[i] - y[i - 1]) + (h0 / h1) * (y[i + 1] - y[i]));
    const diagonal = 2 * (h0 + h1) - h1 * upper[i - 1];
    upper[i] = h0 / diagonal;
    m[i] = (right - h1 * m[i - 1]) / diagonal;
  }
  for (let i = n - 2; i >= 1; i--) m[i] -= upper[i] * m[i + 1];
  return m;
}

/** Value of the spline through a shape at one x (load time only). */
function splineValue(shape: Shape, slopes: Float64Array, x: number): number {
  const xs = shape.x;
  let i = 0;
  while (i < xs.length - 2 && x > xs[i + 1]) i++;
  const h = xs[i + 1] - xs[i];
  const s = (x - xs[i]) / h;
  const rise = shape.y[i + 1] - shape.y[i];
  const m0 = slopes[i] * h;
  const m1 = slopes[i + 1] * h;
  return shape.y[i] + s * (m0 + s * (3 * rise - 2 * m0 - m1 + s * (m0 + m1 - 2 * rise)));
}

/** Collects shapes while a network is compiled. */
export class TableBuilder {
  private readonly data: number[] = [];

  /**
   * Adds a shape over [low, high] with `points` grid points; returns its offset. A flat shape
   * takes two points. Beyond its ends the end cubic goes on.
   */
  add(shape: Shape, low: number, high: number, points = 129): number {
    const slopes = splineSlopes(shape.x, shape.y);
    const flat = shape.y.every((v) => v === shape.y[0]);
    const n = flat ? 2 : points;
    const step = (high - low) / (n - 1);
    const x = Array.from({ length: n }, (_, i) => low + i * step);
    const y = x.map((v) => splineValue(shape, slopes, v));
    const m = splineSlopes(x, y);
    const offset = this.data.length;
    this.data.push(low, 1 / step, n - 2);
    for (let i = 0; i < n - 1; i++) {
      const rise = y[i + 1] - y[i];
      const m0 = m[i] * step;
      const m1 = m[i + 1] * step;
      this.data.push(y[i], m0, 3 * rise - 2 * m0 - m1, m0 + m1 - 2 * rise);
    }
    return offset;
  }

  build(): Tables {
    return new Tables(Float64Array.from(this.data));
  }
}

/** Evaluates tables; the results stand in `value`, `slope`, `curvature`. */
export class Tables {
  value = 0;
  slope = 0;
  curvature = 0;

  constructor(private readonly data: Float64Array) {}

  at(offset: number, x: number): void {
    const d = this.data;
    const inverse = d[offset + 1];
    let u = (x - d[offset]) * inverse;
    const last = d[offset + 2];
    let i = Math.floor(u);
    if (i < 0) i = 0;
    else if (i > last) i = last;
    u -= i;
    const c = offset + HEAD + 4 * i;
    const c1 = d[c + 1];
    const c2 = d[c + 2];
    const c3 = d[c + 3];
    this.value = d[c] + u * (c1 + u * (c2 + u * c3));
    this.slope = (c1 + u * (2 * c2 + 3 * u * c3)) * inverse;
    this.curvature = (2 * c2 + 6 * u * c3) * inverse * inverse;
  }
}
