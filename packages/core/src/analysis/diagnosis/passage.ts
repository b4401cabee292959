/** When an angle leaves where it was and comes home, read the same way off a run and off a recording. */
import type { Series } from '../../define/index.js';

/** Less travel than this nobody calls a movement, rad; common practice, no source. */
export const GLIMPSE = 0.035;
/** Within this of its end it is home, rad: a lock holds with some play. */
export const HOME = 0.05;

/** A moment between two samples, s. */
export interface Moment {
  readonly at: number;
  /** How far apart the samples are. */
  readonly within: number;
}

export interface Passage {
  /** Undefined when it never does. */
  readonly leaves: Moment | undefined;
  readonly arrives: Moment | undefined;
}

/** The first way of an angle to its home, from a time on; samples that are NaN are left out. */
export function passageOf({ t, v }: Series, from: number, home: number): Passage {
  let start = NaN;
  let last = -1;
  let leaves: Moment | undefined;
  for (let i = 0; i < t.length; i++) {
    if (t[i] < from || Number.isNaN(v[i])) continue;
    if (Number.isNaN(start)) start = v[i];
    if (leaves === undefined && Math.abs(v[i] - start) > GLIMPSE) {
      const edge = start + Math.sign(v[i] - start) * GLIMPSE;
      leaves = crossing(t, v, last, i, edge);
    }
    if (leaves !== undefined && Math.abs(v[i] - home) <= HOME) {
      const edge = home + Math.sign(start - home) * HOME;
      return { leaves, arrives: crossing(t, v, last, i, edge) };
    }
    last = i;
  }
  return { leaves, arrives: undefined };
}

/** Where an angle ends, and since when it has been there; undefined without samples. */
export function restOf({ t, v }: Series): { where: number; since: number } | undefined {
  const there = Array.from(t.keys()).filter((i) => Number.isFinite(v[i]));
  const last = there.at(-1);
  if (last === undefined) return undefined;
  const first = there.findLastIndex((i) => Math.abs(v[i] - v[last]) > GLIMPSE) + 1;
  return { where: v[last], since: t[there[Math.min(first, there.length - 1)]] };
}

function crossing(
  t: Float64Array,
  v: Float64Array,
  before: number,
  after: number,
  edge: number,
): Moment {
  if (before < 0) return { at: t[after], within: 0 };
  const share = v[after] === v[before] ? 1 : (edge - v[before]) / (v[after] - v[before]);
  const within = t[after] - t[before];
  return { at: t[before] + Math.min(1, Math.max(0, share)) * within, within };
}
