import type { Series } from '../../define/index.js';

/** A stop that everybody sees, s, and the travel beside it that is none, rad; common practice, no source. */
const SEEN = 0.3;
const STILL = 0.01;

/** How often an angle stands still for a while before it goes on, between two times; NaN times have none. */
export function pausesOf({ t, v }: Series, from: number, to: number): number {
  let count = 0;
  let since = NaN;
  let where = NaN;
  let counted = false;
  for (let i = 0; i < t.length; i++) {
    if (!(t[i] >= from && t[i] <= to) || Number.isNaN(v[i])) continue;
    if (Math.abs(v[i] - where) <= STILL) {
      counted ||= t[i] - since >= SEEN;
      continue;
    }
    // It has moved on: a stand before that was a pause.
    if (counted) count++;
    [since, where, counted] = [t[i], v[i], false];
  }
  return count;
}
