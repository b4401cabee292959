/**
 * Small pieces of statics the mechanisms share: vectors, gravity in the aircraft's axes, a
 * smooth curve through a sampled shape.
 *
 * Axes: x aft, y right, z up, fixed in the aircraft; metres.
 */
import type { Parameters, Point3, Shape } from '../define/index.js';

/** Standard acceleration of free fall, m/s2 (ISO 80000-3). */
export const GRAVITY = 9.80665;

/** Samples per coordinate shape: half a degree for a quarter turn. */
export const SAMPLES = 181;

export const add = (a: Point3, b: Point3): Point3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const times = (k: number, a: Point3): Point3 => ({ x: k * a.x, y: k * a.y, z: k * a.z });
export const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Point3, b: Point3): Point3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

/** Unit vector along which weight acts, in aircraft axes, for a nose-up pitch on the jacks, rad. */
export function downward(pitch: number): Point3 {
  return { x: Math.sin(pitch), y: 0, z: -Math.cos(pitch) };
}

/** A number parameter; the scenario reader has checked that it is one. */
export function num(p: Parameters, name: string): number {
  return p[name] as number;
}

/** Samples a function over [low, high] at {@link SAMPLES} evenly spaced angles. */
export function sample(low: number, high: number, f: (angle: number) => number): Shape {
  const x = new Array<number>(SAMPLES);
  const y = new Array<number>(SAMPLES);
  for (let i = 0; i < SAMPLES; i++) {
    x[i] = low + ((high - low) * i) / (SAMPLES - 1);
    y[i] = f(x[i]);
  }
  return { x, y };
}

/** A smooth hump, 1 at its middle and 0 beyond `width` from it: (1 + cos) / 2, C1. */
export function hump(x: number, middle: number, width: number): number {
  const u = Math.abs(x - middle) / width;
  return u < 1 ? 0.5 * (1 + Math.cos(Math.PI * u)) : 0;
}

/** Value, first and second derivative of a curve at x. */
export interface CurvePoint {
  readonly value: number;
  readonly slope: number;
  readonly bend: number;
}

/**
 * Cubic spline through a shape, with end slopes from the cubic (or lower) through the first
 * and last four points; constant beyond the ends. Source: the tridiagonal system of the
 * clamped cubic spline, any text on numerical methods.
 */
export function curve(shape: Shape): (x: number) => CurvePoint {
  const { x, y } = shape;
  const n = x.length;
  const slope = slopes(x, y);
  return (at) => {
    if (at < x[0]) return { value: y[0], slope: 0, bend: 0 };
    if (at > x[n - 1]) return { value: y[n - 1], slope: 0, bend: 0 };
    let i = 0;
    let j = n - 1;
    while (j - i > 1) {
      const m = (i + j) >> 1;
      if (x[m] <= at) i = m;
      else j = m;
    }
    const h = x[i + 1] - x[i];
    const u = (at - x[i]) / h;
    const rise = (y[i + 1] - y[i]) / h;
    const c = 3 * rise - 2 * slope[i] - slope[i + 1];
    const d = slope[i] + slope[i + 1] - 2 * rise;
    return {
      value: y[i] + h * u * (slope[i] + u * (c + u * d)),
      slope: slope[i] + u * (2 * c + 3 * u * d),
      bend: (2 * c + 6 * u * d) / h,
    };
  };
}

/** Slopes at the knots that make the second derivative continuous. */
function slopes(x: readonly number[], y: readonly number[]): Float64Array {
  const n = x.length;
  const s = new Float64Array(n);
  const k = Math.min(4, n);
  s[0] = endSlope(x.slice(0, k), y.slice(0, k));
  s[n - 1] = endSlope(x.slice(n - k).reverse(), y.slice(n - k).reverse());
  const c = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const h0 = x[i] - x[i - 1];
    const h1 = x[i + 1] - x[i];
    const r = 3 * ((h1 / h0) * (y[i] - y[i - 1]) + (h0 / h1) * (y[i + 1] - y[i]));
    const pivot = 2 * (h0 + h1) - h1 * c[i - 1];
    c[i] = h0 / pivot;
    s[i] = (r - h1 * s[i - 1]) / pivot;
  }
  for (let i = n - 2; i >= 1; i--) s[i] -= c[i] * s[i + 1];
  return s;
}

/** Slope at the first of up to four points of the polynomial through them (Newton's divided differences). */
function endSlope(x: readonly number[], y: readonly number[]): number {
  const d = [...y];
  let result = 0;
  let product = 1;
  for (let order = 1; order < x.length; order++) {
    for (let i = 0; i < x.length - order; i++) d[i] = (d[i + 1] - d[i]) / (x[i + order] - x[i]);
    if (order > 1) product *= x[0] - x[order - 1];
    result += d[0] * product;
  }
  return result;
}

/** Which way the air goes past the aircraft, unit vector (x aft, y right), under a sideslip, rad: positive from the right. */
export function windFrom(sideslip: number): Point3 {
  return { x: Math.cos(sideslip), y: -Math.sin(sideslip), z: 0 };
}
