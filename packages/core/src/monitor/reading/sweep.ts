import type { Evidence, Placement, Series } from '../../define/index.js';
import { abreast, boxGap, gap } from './gap.js';
import { FINE_CORNERS, panelOutline, tyreOutline, type Flat, type Plane } from './geometry.js';
import { units } from './motion.js';
import { once, trace, valueAt } from './span.js';

/** Largest turn between two looks at moving parts, rad (half a degree). */
const STEP = 0.0087;
/** Turned by less than this, rad, a part is taken to be where it was: 0.2 mm a metre from its pivot. */
const STILL = 2e-4;
/** Times looked at around the nearest approach, twice over: 1/256 of two looks, hundredths of a degree. */
const FINE = 16;

/** A part's outline at every look of a run; neighbours share one where the part stands still. */
export interface Track {
  readonly flats: readonly Flat[];
  /** Its angle at every look, rad; empty for what never moves. */
  readonly angles: Float64Array;
  /** Around everything it sweeps through. */
  readonly whole: Pick<Flat, 'left' | 'right' | 'low' | 'high' | 'near' | 'far'>;
  /** Outline and angle at any time, with so many corners for a round. */
  readonly at: (t: number, corners?: number) => { readonly flat: Flat; readonly angle: number };
}

/** Nearest two parts come to each other along a run. */
export interface Approach {
  /** Smallest distance, m; negative when they overlap. */
  readonly distance: number;
  readonly t: number;
  /** Time around it in which they were nearer than asked, s. */
  readonly from: number;
  readonly to: number;
}

/** When the moving parts of a run are looked at, and how each sweeps through its plane. */
export interface Sweep {
  readonly times: Float64Array;
  readonly tyre: (leg: string, plane: Plane) => Track | undefined;
  readonly panel: (door: string) => Track | undefined;
}

/** The sweep of the legs and doors of all units, worked out once for all rules that need it. */
export function sweepOf(e: Evidence): Sweep {
  return once(e, 'sweep', () => sweepAnew(e));
}

function sweepAnew(e: Evidence): Sweep {
  const parts = [...new Set(units(e).flatMap(({ unit }) => [unit.leg, ...unit.doors]))];
  const angles = new Map<string, Series>();
  for (const name of parts) {
    const series = trace(e, `${name}.angle`);
    if (series !== undefined && e.outline(name, series.v[0]) !== undefined) {
      angles.set(name, series);
    }
  }
  const times = looks([...angles.values()]);
  const tracks = new Map<string, Track | undefined>();
  const track = (
    key: string,
    name: string,
    flatten: (p: Placement, corners?: number) => Flat | undefined,
  ): Track | undefined => {
    if (!tracks.has(key)) tracks.set(key, trackOf(e, name, angles.get(name), times, flatten));
    return tracks.get(key);
  };
  return {
    times,
    tyre: (leg, plane) => track(`${plane} ${leg}`, leg, (p, n) => tyreOutline(p, plane, n)),
    panel: (door) => track(`panel ${door}`, door, panelOutline),
  };
}

/** Times at which at least one part has turned by a step since the last look, ends included. */
function looks(angles: readonly Series[]): Float64Array {
  if (angles.length === 0) return new Float64Array(0);
  // Channels of one run share their times; those of recordings may not.
  const shared = angles.every((s) => s.t === angles[0].t);
  const times = shared
    ? angles[0].t
    : Float64Array.from(new Set(angles.flatMap((s) => [...s.t]))).sort();
  const columns = shared
    ? angles.map((s) => s.v)
    : angles.map((s) => times.map((t) => valueAt(s, t)));
  const out = [times[0]];
  let last = 0;
  for (let i = 1; i < times.length; i++) {
    let turn = 0;
    let jump = 0;
    for (const v of columns) {
      turn = Math.max(turn, Math.abs(v[i] - v[last]));
      jump = Math.max(jump, Math.abs(v[i] - v[i - 1]));
    }
    if (turn < STEP && i < times.length - 1) continue;
    const pieces = Math.max(1, Math.ceil(jump / (2 * STEP)));
    for (let k = 1; k <= pieces; k++)
      out.push(times[i - 1] + ((times[i] - times[i - 1]) * k) / pieces);
    last = i;
  }
  return Float64Array.from(out);
}

function trackOf(
  e: Evidence,
  name: string,
  series: Series | undefined,
  times: Float64Array,
  flatten: (p: Placement, corners?: number) => Flat | undefined,
): Track | undefined {
  if (series === undefined) return undefined;
  const flatAt = (angle: number, corners?: number): Flat | undefined => {
    const placement = e.outline(name, angle);
    return placement && flatten(placement, corners);
  };
  const angles = new Float64Array(times.length);
  const flats: Flat[] = [];
  const whole = { left: 0, right: 0, low: 0, high: 0, near: 0, far: 0 };
  let drawn = NaN;
  for (let i = 0, k = 0; i < times.length; i++) {
    while (k < series.t.length - 2 && series.t[k + 1] < times[i]) k++;
    const angle = between(series, k, times[i]);
    angles[i] = angle;
    if (Math.abs(angle - drawn) < STILL) {
      flats.push(flats[i - 1]);
      continue;
    }
    const flat = flatAt(angle);
    if (flat === undefined) return undefined;
    flats.push(flat);
    drawn = angle;
    widen(whole, flat, i === 0);
  }
  return {
    flats,
    angles,
    whole,
    at: (t, corners) => {
      const angle = valueAt(series, t);
      return { flat: flatAt(angle, corners)!, angle };
    },
  };
}

function between({ t, v }: Series, k: number, at: number): number {
  if (t.length === 1 || at <= t[k]) return v[k];
  if (at >= t[k + 1]) return v[k + 1];
  return v[k] + ((at - t[k]) / (t[k + 1] - t[k])) * (v[k + 1] - v[k]);
}

function widen(
  whole: { left: number; right: number; low: number; high: number; near: number; far: number },
  f: Flat,
  first: boolean,
): void {
  whole.left = first ? f.left : Math.min(whole.left, f.left);
  whole.right = first ? f.right : Math.max(whole.right, f.right);
  whole.low = first ? f.low : Math.min(whole.low, f.low);
  whole.high = first ? f.high : Math.max(whole.high, f.high);
  whole.near = first ? f.near : Math.min(whole.near, f.near);
  whole.far = first ? f.far : Math.max(whole.far, f.far);
}

/** What stands still all through, as a track. */
export function fixed(flat: Flat): Track {
  return {
    flats: [flat],
    angles: new Float64Array(0),
    whole: flat,
    at: () => ({ flat, angle: 0 }),
  };
}

/**
 * How near two parts come along the looks of a run. Undefined when they are never side by side
 * (or never judged: `judged` tells by their two angles). Farther apart than `limit` and than
 * the nearest so far, the boxes around them answer.
 */
export function approach(
  times: Float64Array,
  a: Track,
  b: Track,
  limit: number,
  judged: (angleA: number, angleB: number) => boolean = () => true,
): Approach | undefined {
  if (times.length === 0 || !abreast(a.whole, b.whole)) return undefined;
  const n = times.length;
  const seen = new Float64Array(n).fill(Infinity);
  let k = -1;
  let nearest = Infinity;
  let [lastA, lastB]: (Flat | undefined)[] = [];
  for (let i = 0; i < n; i++) {
    const fa = a.flats[Math.min(i, a.flats.length - 1)];
    const fb = b.flats[Math.min(i, b.flats.length - 1)];
    const same = fa === lastA && fb === lastB;
    lastA = fa;
    lastB = fb;
    if (!judged(a.angles[i] ?? 0, b.angles[i] ?? 0) || !abreast(fa, fb)) continue;
    if (same && seen[i - 1] < Infinity) {
      seen[i] = seen[i - 1];
      continue;
    }
    const bound = boxGap(fa, fb);
    seen[i] = bound > limit && bound > nearest ? bound : gap(fa, fb);
    if (seen[i] < nearest) {
      nearest = seen[i];
      k = i;
    }
  }
  if (k < 0) return undefined;
  let best = { t: times[k], d: Infinity };
  const look = (t: number, corners?: number): void => {
    const pa = a.at(t, corners);
    const pb = b.at(t, corners);
    if (!judged(pa.angle, pb.angle) || !abreast(pa.flat, pb.flat)) return;
    const d = gap(pa.flat, pb.flat);
    if (d < best.d) best = { t, d };
  };
  let left = times[Math.max(0, k - 1)];
  let right = times[Math.min(n - 1, k + 1)];
  // First where, then how near.
  for (const corners of [undefined, FINE_CORNERS]) {
    const { t } = best;
    const width = (right - left) / FINE;
    const start = left;
    best = { t, d: Infinity };
    look(t, corners);
    for (let j = 0; j <= FINE; j++) look(start + width * j, corners);
    left = Math.max(left, best.t - width);
    right = Math.min(right, best.t + width);
  }
  if (best.d === Infinity) best = { t: times[k], d: nearest };
  let from = best.t;
  let to = best.t;
  for (let i = k; i >= 0 && seen[i] < limit; i--) from = Math.min(from, times[i]);
  for (let i = k; i < n && seen[i] < limit; i++) to = Math.max(to, times[i]);
  return { distance: best.d, t: best.t, from, to };
}
