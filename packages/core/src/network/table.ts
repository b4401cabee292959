import type { Shape } from '../define/index.js';

/**
 * Sampled functions for the loop: natural-end cubic splines on a uniform grid, all of a network
 * in one flat array. Value, first and second derivative come from the same cubic, so that
 * stroke, lever arm and volume agree exactly and energy closes.
 */
const HEAD = 3;

/** Numbers of grid points to try, and how well a grid must do at PROBES points in between. */
const GRIDS = [2, 33, 65, 129, 257];
const TOLERANCE = 1e-7;
const PROBES = 97;

/** Slope at x[0] of the polynomial through the given points (Newton's divided differences). */
function slopeAtFirst(x: readonly number[], y: readonly number[]): number {
  const d = [...y];
  let slope = 0;
  let product = 1;
  for (let k = 1; k < x.length; k++) {
    for (let i = x.length - 1; i >= k; i--) d[i] = (d[i] - d[i - 1]) / (x[i] - x[i - k]);
    slope += d[k] * product;
    product *= x[0] - x[k];
  }
  return slope;
}

/**
 * Slopes of the C2 cubic spline through the points. The end slopes are those of the cubic
 * through the four points at that end, so that ends are as exact as the middle.
 */
function splineSlopes(x: readonly number[], y: readonly number[]): Float64Array {
  const n = x.length;
  const m = new Float64Array(n);
  const near = Math.min(4, n);
  m[0] = slopeAtFirst(x.slice(0, near), y.slice(0, near));
  m[n - 1] = slopeAtFirst(x.slice(n - near).reverse(), y.slice(n - near).reverse());
  const upper = new Float64Array(n);
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

/** Value and slope at a place. */
export type Curve = (x: number) => { readonly value: number; readonly slope: number };

/** A shape's spline (load time and transitions only). */
export const spline = (shape: Shape): Curve => hermite(shape, splineSlopes(shape.x, shape.y));

/** The cubics through a shape's points with these slopes there. */
export function hermite({ x: xs, y: ys }: Shape, slopes: ArrayLike<number>): Curve {
  return (x) => {
    let i = 0;
    for (let high = xs.length - 1; high - i > 1;) {
      const middle = (i + high) >> 1;
      if (x > xs[middle]) i = middle;
      else high = middle;
    }
    const h = xs[i + 1] - xs[i];
    const s = (x - xs[i]) / h;
    const rise = ys[i + 1] - ys[i];
    const m0 = slopes[i] * h;
    const m1 = slopes[i + 1] * h;
    const sag = 3 * rise - 2 * m0 - m1;
    const bend = m0 + m1 - 2 * rise;
    return {
      value: ys[i] + s * (m0 + s * (sag + s * bend)),
      slope: (m0 + s * (2 * sag + 3 * s * bend)) / h,
    };
  };
}

/** A function at `n` even places over [low, high]. */
export function sampled(low: number, high: number, n: number, f: (x: number) => number): Shape {
  const x = Array.from({ length: n }, (_, i) => low + ((high - low) * i) / (n - 1));
  return { x, y: x.map(f) };
}

/** Tables made of shapes, by range: a shape seen again (another run of the scenario) is not fitted again. */
const made = new WeakMap<Shape, Map<string, readonly number[]>>();

function tableOf(shape: Shape, low: number, high: number): readonly number[] {
  const ranges = made.get(shape) ?? new Map<string, readonly number[]>();
  made.set(shape, ranges);
  const key = `${low} ${high}`;
  const found = ranges.get(key) ?? fit(shape, low, high);
  ranges.set(key, found);
  return found;
}

/**
 * A shape over [low, high] as numbers: first place, places per unit, last interval, cubics. The
 * grid is the coarsest of GRIDS whose spline stays within TOLERANCE of the shape's own spline (as
 * a share of its span), so that smooth tables stay small enough for the cache. Beyond its ends the
 * end cubic goes on.
 */
function fit(shape: Shape, low: number, high: number): readonly number[] {
  const through = spline(shape);
  const exact = (x: number): number => through(x).value;
  const probes = Array.from(
    { length: PROBES },
    (_, i) => low + ((high - low) * (i + 0.5)) / PROBES,
  );
  const wanted = probes.map(exact);
  const size = Math.max(...wanted) - Math.min(...wanted);
  let grid: Shape = { x: [], y: [] };
  for (const n of GRIDS) {
    grid = sampled(low, high, n, exact);
    const fitted = spline(grid);
    const off = probes.some((p, i) => Math.abs(fitted(p).value - wanted[i]) > TOLERANCE * size);
    if (!off) break;
  }
  const { x, y } = grid;
  const m = splineSlopes(x, y);
  const step = x[1] - x[0];
  const table = [x[0], 1 / step, x.length - 2];
  for (let i = 0; i < x.length - 1; i++) {
    const rise = y[i + 1] - y[i];
    const m0 = m[i] * step;
    const m1 = m[i + 1] * step;
    table.push(y[i], m0, 3 * rise - 2 * m0 - m1, m0 + m1 - 2 * rise);
  }
  return table;
}

/** Collects shapes while a network is compiled. */
export class TableBuilder {
  private readonly data: number[] = [];

  /** Adds a shape over [low, high]; returns its offset. */
  add(shape: Shape, low: number, high: number): number {
    const offset = this.data.length;
    for (const v of tableOf(shape, low, high)) this.data.push(v);
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
