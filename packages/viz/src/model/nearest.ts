/** Where parts come nearest to each other at a time, from the looks that the worker took. */
import type { ClearanceFacts, GapFacts } from '../worker/bay-message.js';
import { GAP_SIZE } from '../worker/bay-message.js';
import type { Picture } from '../worker/message.js';

/** Between two looks the nearest place may jump to another corner: farther than this is a jump, m. */
const JUMP = 0.05;

/** Undefined where the parts are far apart or not judged. */
export function gapAt(picture: Picture, c: ClearanceFacts, time: number): GapFacts | undefined {
  const { looks } = picture.approaches;
  const i = lookBefore(looks, time);
  const [t0 = 0, t1 = 0] = [looks[i], looks[i + 1]];
  const f = t1 > t0 ? Math.min(Math.max((time - t0) / (t1 - t0), 0), 1) : 0;
  const a = i * GAP_SIZE;
  const b = Math.min(a + GAP_SIZE, c.gaps.length - GAP_SIZE);
  const jump = Math.max(...[1, 2, 3, 4].map((k) => Math.abs(at(c, b + k) - at(c, a + k))));
  const read = (k: number): number =>
    jump <= JUMP ? at(c, a + k) + (at(c, b + k) - at(c, a + k)) * f : at(c, (f < 0.5 ? a : b) + k);
  const distance = read(0);
  if (!Number.isFinite(distance)) return undefined;
  return { distance, from: [read(1), read(2)], to: [read(3), read(4)] };
}

const at = (c: ClearanceFacts, k: number): number => c.gaps[k] ?? NaN;

/** Index of the last look at or before a time, with one after it. */
function lookBefore(looks: Float64Array, time: number): number {
  let [low, high] = [0, Math.max(looks.length - 2, 0)];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((looks[middle] ?? 0) <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

export interface Nearness {
  readonly of: ClearanceFacts;
  readonly gap: GapFacts;
}

/** The smallest clearance at a time of those that `fits`, doors that meet only where they clash; undefined when all are far apart. */
export function nearestAt(
  picture: Picture,
  time: number,
  fits: (c: ClearanceFacts) => boolean = () => true,
): Nearness | undefined {
  let best: Nearness | undefined;
  for (const of of picture.approaches.clearances) {
    if (!fits(of)) continue;
    const gap = gapAt(picture, of, time);
    if (gap === undefined || (of.meets && gap.distance >= of.asked)) continue;
    if (gap.distance < (best?.gap.distance ?? Infinity)) best = { of, gap };
  }
  return best;
}

/** The one that comes nearest to its limit, or farthest below it, over the whole run. */
export function leastOf(
  picture: Picture,
  fits: (c: ClearanceFacts) => boolean = () => true,
): ClearanceFacts | undefined {
  const left = (c: ClearanceFacts): number => c.least.gap.distance - c.asked;
  const all = picture.approaches.clearances.filter((c) => fits(c) && (!c.meets || left(c) < 0));
  return all.length === 0 ? undefined : all.reduce((a, b) => (left(b) < left(a) ? b : a));
}
