/**
 * The flow of a line as a table that the solver can read fast.
 *
 * q = dp g(u) with u = sqrt|dp|: g is the laminar conductance at u = 0 and falls like 1/u far
 * out, so the slope is exact at zero and nothing is singular. g is a cubic Hermite with exact
 * slopes over w = u / (u + u0), which puts a quarter of the knots into the transition. Beyond
 * the last knot the reader goes on linearly in u (near rough turbulent), with equal slope.
 */
import {
  evaluateFriction,
  flowOf,
  LAMINAR_END,
  laminarConductance,
  lineDrop,
  TURBULENT_START,
} from './line-loss.js';
import type { LineLoss } from './line-loss.js';

/** Number of intervals, and length of a table in numbers. */
export const LINE_INTERVALS = 96;
export const LINE_TABLE_SIZE = 3 + 2 * (LINE_INTERVALS + 1);

/** Largest tabulated drop, Pa: beyond any system this engine is for. */
const LARGEST = 4e7;

/**
 * Where the curve bends, sqrt Pa: at the start of turbulent flow, or on the way there from where
 * the fittings begin to outweigh laminar friction.
 */
function bendAt(line: LineLoss): number {
  const turbulent = Math.sqrt(lineDrop(flowOf(TURBULENT_START, line), line));
  if (line.fittings === 0) return turbulent;
  const even = Math.min((64 * line.length) / (line.bore * line.fittings), TURBULENT_START);
  return Math.sqrt(turbulent * Math.sqrt(lineDrop(flowOf(even, line), line)));
}

/**
 * Writes the table into `k` from `at`: u0, width of an interval in w, largest u, then pairs of
 * g and dg/dw x width. Marches outwards in P = drop 2 d^3 / (rho nu^2 L) = (f + K d/L) Re^2,
 * each knot by Newton from its neighbour, because this runs for every line of every run.
 */
export function writeLineTable(k: Float64Array, at: number, line: LineLoss): void {
  const largest = Math.sqrt(LARGEST);
  const u0 = Math.min(bendAt(line), largest);
  const width = largest / (largest + u0) / LINE_INTERVALS;
  k[at] = u0;
  k[at + 1] = width;
  k[at + 2] = largest;
  k[at + 3] = laminarConductance(line);
  k[at + 4] = 0;

  const relative = line.roughness / line.bore;
  const fittings = (line.fittings * line.bore) / line.length;
  const scale = (2 * line.bore ** 3) / (line.density * line.viscosity ** 2 * line.length);
  const perReynolds = flowOf(1, line);
  const laminarEnd = (64 + fittings * LAMINAR_END) * LAMINAR_END;
  const point = { inverseRoot: 0, factor: 0, slope: 0 };
  let re = LAMINAR_END;
  let bend = 1;
  let before = laminarEnd;
  for (let i = 1; i <= LINE_INTERVALS; i++) {
    const w = i * width;
    const u = (u0 * w) / (1 - w);
    const p = u * u * scale;
    let rise: number;
    if (p <= laminarEnd) {
      re = (2 * p) / (64 + Math.sqrt(4096 + 4 * fittings * p));
      rise = 64 + 2 * fittings * re;
    } else {
      // From the last knot on its tangent in logarithms, where the law is nearly straight.
      re = Math.max(re, LAMINAR_END) * (p / before) ** bend;
      for (let turn = 0; ; turn++) {
        evaluateFriction(point, re, relative);
        const whole = point.factor + fittings;
        rise = re * (point.slope * re + 2 * whole);
        const step = Math.log((whole * re * re) / p) / (rise / (whole * re));
        if (Math.abs(step) < 1e-9 || turn === 30) break;
        re *= Math.exp(-Math.max(-1, Math.min(1, step)));
      }
      before = p;
      bend = p / (rise * re);
    }
    const g = (perReynolds * re) / (u * u);
    const slope = (2 * ((perReynolds * scale) / rise - g)) / u;
    k[at + 3 + 2 * i] = g;
    k[at + 4 + 2 * i] = (slope * u0 * width) / ((1 - w) * (1 - w));
  }
}
