/**
 * Planar four-bar linkage in closed form: what angle the rocker has when the crank has turned.
 * Source: law of cosines in the two triangles that the line from the crank's end to the rocker's
 * pivot cuts the quadrilateral into; the angles obey Freudenstein's equation (1954), which the
 * tests hold them to.
 */
import type { Shape } from '../define/parameter.js';

/** Lengths in metres, angles in radians. */
export interface FourBar {
  /** Between the fixed pivots of crank and rocker. */
  readonly ground: number;
  /** From the crank's pivot to the coupler. */
  readonly crank: number;
  /** Between the moving ends of crank and rocker. */
  readonly coupler: number;
  /** From the rocker's pivot to the coupler. */
  readonly rocker: number;
  /** Angle of the crank from the line of the pivots (towards the rocker's) at the driver's low end. */
  readonly crankAtLow: number;
  /** The coupler crosses the line of the pivots at the driver's low end; it is assembled so for good. */
  readonly crossed: boolean;
}

/** Even points over the driver's travel: half a degree apart in a quarter turn. */
export const LINKAGE_SAMPLES = 181;
/** Cosine of the angle between line and rocker beyond which the bars count as stretched out. */
const STRETCHED = 1 - 1e-9;

export type Turned = { readonly shape: Shape } | { readonly stuckAt: number };

/**
 * Angle of the rocker, counted from its angle at `low`, rad, against the driver's angle over [low,
 * high], rad; the crank turns with the driver. Where the bars cannot close: the driver's angle at
 * which they first cannot.
 */
export function turnRocker(bars: FourBar, low: number, high: number): Turned {
  const x: number[] = [];
  const y: number[] = [];
  let turns = 0;
  let before = NaN;
  for (let i = 0; i < LINKAGE_SAMPLES; i++) {
    const angle =
      i === LINKAGE_SAMPLES - 1 ? high : low + ((high - low) * i) / (LINKAGE_SAMPLES - 1);
    const rocker = rockerAngle(bars, bars.crankAtLow + angle - low);
    if (Number.isNaN(rocker))
      return { stuckAt: i === 0 ? low : lastClosed(bars, low, x[i - 1], angle) };
    // The closed form answers within one turn; the rocker itself goes on.
    if (rocker - before > Math.PI) turns--;
    else if (before - rocker > Math.PI) turns++;
    before = rocker;
    x.push(angle);
    y.push(rocker + 2 * Math.PI * turns);
  }
  const start = y[0];
  return { shape: { x, y: y.map((rocker) => rocker - start) } };
}

/** Angle of the rocker from the line of the pivots, rad; NaN where the bars cannot close. */
export function rockerAngle(bars: FourBar, crank: number): number {
  const { ground, crank: c, coupler, rocker } = bars;
  // From the rocker's pivot to the crank's end.
  const across = c * Math.cos(crank) - ground;
  const up = c * Math.sin(crank);
  const line = Math.hypot(across, up);
  const cosine = (rocker ** 2 + line ** 2 - coupler ** 2) / (2 * rocker * line);
  if (!(Math.abs(cosine) < STRETCHED)) return NaN;
  const side = Math.sin(bars.crankAtLow) < 0 === bars.crossed ? -1 : 1;
  return Math.atan2(up, across) + side * Math.acos(cosine);
}

/** Between an angle where they close and one where they do not. */
function lastClosed(bars: FourBar, low: number, closed: number, open: number): number {
  let [good, bad] = [closed, open];
  for (let i = 0; i < 30; i++) {
    const middle = (good + bad) / 2;
    if (Number.isNaN(rockerAngle(bars, bars.crankAtLow + middle - low))) bad = middle;
    else good = middle;
  }
  return good;
}
