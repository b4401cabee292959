/**
 * The flow of a line as a table that the solver can read fast.
 *
 * q = dp g(u) with u = sqrt|dp|: g is the laminar conductance at u = 0 and falls like 1/u far
 * out, so the slope is exact at zero and nothing is singular. g is a cubic Hermite with exact
 * slopes over w = u / (u + u0), which puts a quarter of the knots into the transition. Beyond
 * the last knot q grows as u (rough turbulent), joined with equal slope.
 */
import {
  laminarConductance,
  lineDrop,
  lineDropSlope,
  lineFlow,
  flowOf,
  TURBULENT_START,
} from './line-loss.js';
import type { LineLoss } from './line-loss.js';

/** Number of intervals, and length of a table in numbers. */
export const LINE_INTERVALS = 96;
export const LINE_TABLE_SIZE = 3 + 2 * (LINE_INTERVALS + 1);

/** Largest tabulated drop, Pa: beyond any system this engine is for. */
const LARGEST = 4e7;

/**
 * Writes the table into `k` from `at`: u0, largest w, largest u, then pairs g, dg/dw x width.
 */
export function writeLineTable(k: Float64Array, at: number, line: LineLoss): void {
  const u0 = Math.min(Math.sqrt(lineDrop(flowOf(TURBULENT_START, line), line)), Math.sqrt(LARGEST));
  const largest = Math.sqrt(LARGEST);
  const end = largest / (largest + u0);
  const width = end / LINE_INTERVALS;
  k[at] = u0;
  k[at + 1] = width;
  k[at + 2] = largest;
  k[at + 3] = laminarConductance(line);
  k[at + 4] = 0;
  for (let i = 1; i <= LINE_INTERVALS; i++) {
    const w = i * width;
    const u = (u0 * w) / (1 - w);
    const q = lineFlow(u * u, line);
    const g = q / (u * u);
    const slope = i < LINE_INTERVALS ? (2 * (1 / lineDropSlope(q, line) - g)) / u : -g / u;
    k[at + 3 + 2 * i] = g;
    k[at + 4 + 2 * i] = (slope * u0 * width) / ((1 - w) * (1 - w));
  }
}
