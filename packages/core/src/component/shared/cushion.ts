/**
 * The way between an actuator's port and its chamber: an orifice whose way out of the chamber
 * narrows smoothly (C1) as the piston nears that end, with a check valve that leaves the way in
 * free. Common practice, no source.
 */
import type { Frame } from '../../define/index.js';
import { orificeFlow, orificeSlope } from '../../medium/index.js';
import { rise, riseSlope } from './smooth.js';

/** Numbers a way needs in `k`: orifice constant, transition drop (Pa), share left open at the end, 1 / cushion length (1/m). */
export const WAY_SIZE = 4;

/** The check valve opens over this drop, Pa. */
const CHECK_CRACK = 10_000;
const CHECK_BAND = 150_000;

/**
 * Declares flow `path` from `port` to `chamber`, whose first `also` is the travel. `clear`: way
 * left to that end, m; `sense`: the sign of `clear`'s growth with travel.
 */
export function cushionedWay(
  d: Frame,
  path: number,
  port: number,
  chamber: number,
  at: number,
  clear: number,
  sense: number,
): void {
  if (d.joined(path)) return;
  const k = d.k;
  const narrow = k[at + 2];
  const dp = d.pressure(port) - d.pressure(chamber);
  const full = orificeFlow(k[at], dp, k[at + 1]);
  const x = clear * k[at + 3];
  const out = narrow + (1 - narrow) * rise(x);
  // The check valve adds what the cushion takes away.
  const y = (dp - CHECK_CRACK) / CHECK_BAND;
  const lifted = rise(y);
  const open = out + (1 - out) * lifted;
  if (!d.partials) {
    d.flow(path, open * full, 0, 0);
    return;
  }
  const slope =
    open * orificeSlope(k[at], dp, k[at + 1]) + ((1 - out) * riseSlope(y) * full) / CHECK_BAND;
  d.flow(path, open * full, slope, -slope);
  d.flowAlso(path, 0, sense * (1 - lifted) * (1 - narrow) * riseSlope(x) * k[at + 3] * full);
}
