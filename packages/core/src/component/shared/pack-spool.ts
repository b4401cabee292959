/**
 * The shuttle spool of a power pack: pushed by the pressure across the pump, centred by springs,
 * damped, so that it follows its goal in first order. Its place opens the surplus ways and pushes
 * the lock valve open (shared/pack-valves has its parameters).
 */
import type { Frame, Parameters } from '../../define/index.js';
import { number } from './parameters.js';
import { rise, riseSlope } from './smooth.js';

/** Numbers of {@link writeSpool}. */
export const SPOOL_SIZE = 7;
const UNDERLAP = 4;
const RATE = 6;

export function writeSpool(k: Float64Array, at: number, p: Parameters): void {
  const starts = number(p, 'spoolStarts');
  k[at] = starts;
  k[at + 1] = 1 / (number(p, 'spoolFull') - starts);
  k[at + 2] = number(p, 'spoolTravel');
  k[at + 3] = number(p, 'spoolRest');
  const underlap = number(p, 'spoolUnderlap');
  k[at + UNDERLAP] = underlap;
  k[at + UNDERLAP + 1] = 1 / (1 + underlap);
  k[at + RATE] = 1 / number(p, 'spoolTime');
}

/** Openings of lock and surplus ways from the spool's place; `first` is the path of the lock. */
export function spoolOpenings(d: Frame, first: number, spool: number, at: number): void {
  const place = d.state(spool);
  const lap = d.k[at + UNDERLAP];
  const per = d.k[at + UNDERLAP + 1];
  d.opening(first, rise(-place));
  d.openingSlope(first, -riseSlope(-place));
  d.opening(first + 1, rise((lap - place) * per));
  d.openingSlope(first + 1, -riseSlope((lap - place) * per) * per);
  d.opening(first + 2, rise((lap + place) * per));
  d.openingSlope(first + 2, riseSlope((lap + place) * per) * per);
}

/** Where the pressures of the two sides want the spool: -1 (down side presses) to 1 (up side presses). */
export function spoolGoal(d: Frame, at: number, up: number, down: number): number {
  const k = d.k;
  const dp = d.pressure(up) - d.pressure(down);
  const pushed = rise((dp - k[at]) * k[at + 1]) - rise((-dp - k[at]) * k[at + 1]);
  const moved = pushed * k[at + 2];
  return moved + k[at + 3] * (1 - Math.abs(moved));
}

/** Slope of {@link spoolGoal} against the drop from the up to the down side, 1/Pa. */
export function spoolGoalSlope(d: Frame, at: number, up: number, down: number): number {
  const k = d.k;
  const dp = d.pressure(up) - d.pressure(down);
  const slope = riseSlope((dp - k[at]) * k[at + 1]) + riseSlope((-dp - k[at]) * k[at + 1]);
  return slope * k[at + 1] * k[at + 2] * (1 - k[at + 3] * Math.sign(dp));
}

/** How fast the spool follows its goal, 1/s. */
export function spoolRate(d: Frame, at: number): number {
  return d.k[at + RATE];
}
