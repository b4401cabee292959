import type { Series } from '../define/index.js';

/** A signal as recorded, and the same as simulated, in one unit. */
export interface OffsetPair {
  readonly recorded: Series;
  readonly simulated: Series;
}

export interface Offset {
  /** To be added to the times of the recording, s. */
  readonly offset: number;
  /** How alike the two are then: correlation over the time both cover, up to 1. */
  readonly likeness: number;
}

/** Steps into which the longer of the two is divided for the first search. */
const COARSE = 400;
/** Steps of each closer search to either side of the best place, and how many searches there are. */
const NEAR = 8;
const SEARCHES = 5;
/** Points at which the two are compared. */
const POINTS = 1500;
/** At least this share of the shorter one must lie within the longer: a few samples fit anywhere. */
const LEAST_OVERLAP = 0.5;

/**
 * By how much a recording has to be moved in time to lie on the run: the place of the greatest
 * correlation of all signals together, each weighed by how much it varies in the run. Gauges that
 * read too high or too low by a constant or a share change nothing. Undefined when nothing varies.
 */
export function findOffset(pairs: readonly OffsetPair[]): Offset | undefined {
  const signals = pairs.flatMap(prepared);
  if (signals.length === 0) return undefined;
  const first = Math.min(...signals.map((s) => s.t[0]));
  const last = Math.max(...signals.map((s) => s.t[s.t.length - 1]));
  const start = Math.min(...signals.map((s) => s.simulated.t[0]));
  const end = Math.max(...signals.map((s) => s.simulated.t[s.simulated.t.length - 1]));
  const shortest = Math.min(last - first, end - start);
  if (!(shortest > 0)) return undefined;
  const [from, to] = [start - first, end - last].sort((a, b) => a - b);
  const reach = (1 - LEAST_OVERLAP) * shortest;
  let step = Math.max(last - first, end - start) / COARSE;
  let best: Offset | undefined;
  const look = (offset: number): void => {
    const likeness = likenessAt(signals, offset);
    if (likeness > (best?.likeness ?? 0)) best = { offset, likeness };
  };
  for (let o = from - reach; o <= to + reach; o += step) look(o);
  for (let search = 0; search < SEARCHES && best !== undefined; search++) {
    const centre: number = best.offset;
    step /= NEAR;
    for (let k = -NEAR; k <= NEAR; k++) look(centre + k * step);
  }
  return best;
}

interface Signal {
  /** Of the recording, without gaps. */
  readonly t: Float64Array;
  readonly v: Float64Array;
  readonly simulated: Series;
  readonly weight: number;
}

/** Gaps left out, thinned to what is worth comparing; none when either does not vary. */
function prepared({ recorded, simulated }: OffsetPair): Signal[] {
  const there = Array.from(recorded.v.keys()).filter((i) => Number.isFinite(recorded.v[i]));
  const stride = Math.max(1, Math.ceil(there.length / POINTS));
  const kept = there.filter((_, i) => i % stride === 0);
  const v = Float64Array.from(kept, (i) => recorded.v[i]);
  const range = spread(simulated.v);
  if (kept.length < 3 || spread(v) === 0 || range === 0) return [];
  return [{ t: Float64Array.from(kept, (i) => recorded.t[i]), v, simulated, weight: 1 / range }];
}

function spread(v: Float64Array): number {
  let low = Infinity;
  let high = -Infinity;
  for (const x of v) {
    if (x < low) low = x;
    if (x > high) high = x;
  }
  return high > low ? high - low : 0;
}

/** Correlation of all signals where both are known; 0 where they overlap too little. */
function likenessAt(signals: readonly Signal[], offset: number): number {
  let together = 0;
  let ofRecorded = 0;
  let ofSimulated = 0;
  for (const { t, v, simulated, weight } of signals) {
    const { t: ts, v: vs } = simulated;
    let n = 0;
    let [a, b, aa, bb, ab] = [0, 0, 0, 0, 0];
    // From the first value on, so that sums of squares do not cancel.
    const [a0, b0] = [v[0], vs[0]];
    for (let i = 0, j = 0; i < t.length; i++) {
      const at = t[i] + offset;
      if (at < ts[0] || at > ts[ts.length - 1]) continue;
      while (j < ts.length - 2 && ts[j + 1] < at) j++;
      const s = ts[j + 1] > ts[j] ? (at - ts[j]) / (ts[j + 1] - ts[j]) : 1;
      const x = (v[i] - a0) * weight;
      const y = (vs[j] + s * (vs[j + 1] - vs[j]) - b0) * weight;
      n += 1;
      a += x;
      b += y;
      aa += x * x;
      bb += y * y;
      ab += x * y;
    }
    const whole = ts[ts.length - 1] - ts[0];
    const covered = t.length * Math.min(1, whole / (t[t.length - 1] - t[0]));
    if (n < LEAST_OVERLAP * covered || n < 3) continue;
    together += ab - (a * b) / n;
    ofRecorded += aa - (a * a) / n;
    ofSimulated += bb - (b * b) / n;
  }
  return ofRecorded > 0 && ofSimulated > 0 ? together / Math.sqrt(ofRecorded * ofSimulated) : 0;
}
