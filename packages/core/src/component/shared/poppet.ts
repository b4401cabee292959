/**
 * A spring-loaded poppet: shut below its crack drop, open above its full drop, between them
 * opening smoothly (C1); behind it an orifice of full area, beside it a laminar leak.
 *
 * Quasi-static balance of pressure and spring (Merritt, Hydraulic Control Systems; from memory);
 * the inertia of the poppet is left out, it settles within a millisecond.
 */
import type { Frame } from '../../define/index.js';
import { orificeFlow, orificeSlope } from '../../medium/index.js';
import { rise, riseSlope } from './smooth.js';

/** Numbers a poppet needs in `k`, in this order from its first index. */
export const POPPET_SIZE = 5;

/** Writes a poppet's constants: crack and full drop (Pa), orifice constant, transition drop (Pa), leak (m3/(s Pa)). */
export function writePoppet(
  k: Float64Array,
  at: number,
  crack: number,
  full: number,
  constant: number,
  transition: number,
  leak: number,
): void {
  k[at] = crack;
  k[at + 1] = 1 / (full - crack);
  k[at + 2] = constant;
  k[at + 3] = transition;
  k[at + 4] = leak;
}

/**
 * Declares flow `path` through the poppet at `at` in `k` from port `from` to port `to`. (Only
 * whole numbers are handed over: a fraction would be put on the heap at every call.)
 */
export function poppetFlow(d: Frame, path: number, at: number, from: number, to: number): void {
  const k = d.k;
  const dp = d.pressure(from) - d.pressure(to);
  const x = (dp - k[at]) * k[at + 1];
  const leak = k[at + 4];
  if (x <= 0) {
    d.flow(path, leak * dp, leak, -leak);
    return;
  }
  const open = rise(x);
  const through = orificeFlow(k[at + 2], dp, k[at + 3]);
  if (!d.partials) {
    d.flow(path, open * through + leak * dp, 0, 0);
    return;
  }
  const slope =
    open * orificeSlope(k[at + 2], dp, k[at + 3]) + riseSlope(x) * k[at + 1] * through + leak;
  d.flow(path, open * through + leak * dp, slope, -slope);
}
