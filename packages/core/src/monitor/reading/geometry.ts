import type { Evidence, Placement, Point3 } from '../../define/index.js';
import { trace, valueAt } from './span.js';

/** A point of the transverse plane: y right, z up, m. */
interface Point2 {
  readonly y: number;
  readonly z: number;
}
type Segment = readonly [Point2, Point2];

/** Largest turn between two looks at a pair of moving parts, rad (half a degree). */
const STEP = 0.0087;
/** Corners that stand for the outline of a tyre seen askew. */
const CORNERS = 24;

/** Nearest two parts come to each other along a run. */
export interface Approach {
  /** Smallest distance, m; negative when they overlap. */
  readonly distance: number;
  readonly t: number;
  /** Time around it in which they were nearer than asked, s. */
  readonly from: number;
  readonly to: number;
}

/**
 * Follows two mechanisms along the run and finds how near they come. Undefined when an angle or
 * an outline is missing, or when the distance is undefined all along (not side by side).
 */
export function approach(
  e: Evidence,
  a: string,
  b: string,
  limit: number,
  distance: (a: Placement, b: Placement, enough: number) => number | undefined,
): Approach | undefined {
  const sa = trace(e, `${a}.angle`);
  const sb = trace(e, `${b}.angle`);
  if (sa === undefined || sb === undefined) return undefined;
  // Farther than the nearest yet (and than the limit) need not be known exactly.
  let nearest = Infinity;
  const at = (t: number): number | undefined => {
    const pa = e.outline(a, valueAt(sa, t));
    const pb = e.outline(b, valueAt(sb, t));
    if (pa === undefined || pb === undefined) return undefined;
    const d = distance(pa, pb, Math.max(nearest, limit));
    if (d !== undefined && d < nearest) nearest = d;
    return d;
  };
  const looks: { t: number; d: number }[] = [];
  const look = (t: number): void => {
    const d = at(t);
    if (d !== undefined) looks.push({ t, d });
  };
  const times = sa.t.length >= sb.t.length ? sa.t : sb.t;
  // Channels of one run share their times: then there is nothing to look up.
  const shared = sa.t === sb.t;
  let before = times[0];
  let atA = sa.v[0];
  let atB = sb.v[0];
  look(before);
  for (let i = 1; i < times.length; i++) {
    const t = times[i];
    const va = shared ? sa.v[i] : valueAt(sa, t);
    const vb = shared ? sb.v[i] : valueAt(sb, t);
    const turn = Math.max(Math.abs(va - atA), Math.abs(vb - atB));
    if (turn < STEP) continue;
    const parts = Math.ceil(turn / (2 * STEP));
    for (let k = 1; k <= parts; k++) look(before + ((t - before) * k) / parts);
    before = t;
    atA = va;
    atB = vb;
  }
  look(times[times.length - 1]);
  if (looks.length === 0) return undefined;
  let k = looks.reduce((best, x, i) => (x.d < looks[best].d ? i : best), 0);
  const left = looks[Math.max(0, k - 1)].t;
  const right = looks[Math.min(looks.length - 1, k + 1)].t;
  const fine = Array.from({ length: 15 }, (_, i) => left + ((right - left) * (i + 1)) / 16);
  let best = looks[k];
  for (const t of fine) {
    const d = at(t);
    if (d !== undefined && d < best.d) best = { t, d };
  }
  let from = best.t;
  let to = best.t;
  for (let i = k; i >= 0 && looks[i].d < limit; i--) from = Math.min(from, looks[i].t);
  for (; k < looks.length && looks[k].d < limit; k++) to = Math.max(to, looks[k].t);
  return { distance: best.d, t: best.t, from, to };
}

/**
 * Distance, m, in the transverse plane from a tyre to a panel. The tyre is a disc with round
 * shoulders of half its width; seen along x its outline is exact. Negative (down to minus half
 * the width) when the panel cuts it; undefined when the two are not side by side along x. Farther
 * than `enough`, a lower bound above `enough` will do.
 */
export function tyreToPanel(
  leg: Placement,
  panel: Placement,
  enough = Infinity,
): number | undefined {
  const tyre = leg.tyre;
  if (tyre === undefined) return undefined;
  const shoulder = Math.min(tyre.width / 2, tyre.radius);
  const disc = tyre.radius - shoulder;
  const { axle, centre } = tyre;
  const reach = disc * Math.sqrt(Math.max(0, 1 - axle.x * axle.x)) + shoulder;
  const [front, rear] = extent(panel);
  if (centre.x + reach < front || centre.x - reach > rear) return undefined;
  const sides = segments(panel);
  let bound = Infinity;
  for (const s of sides) bound = Math.min(bound, toSegment(centre, s));
  bound -= disc + shoulder;
  if (bound > enough) return bound;
  const outline = discOutline(centre, axle, disc);
  let least = Infinity;
  for (const s of sides) least = Math.min(least, toOutline(s, outline));
  return least - shoulder;
}

/** Distance, m, in the transverse plane between two panels (0 when they cross); undefined when not side by side along x. */
export function panelToPanel(a: Placement, b: Placement): number | undefined {
  const [a0, a1] = extent(a);
  const [b0, b1] = extent(b);
  if (a1 < b0 || b1 < a0) return undefined;
  let least = Infinity;
  for (const s of segments(a)) for (const r of segments(b)) least = Math.min(least, between(s, r));
  return least;
}

function points(p: Placement): readonly Point3[] {
  return p.edge === undefined ? p.line : [...p.line, ...p.edge];
}

function extent(p: Placement): readonly [number, number] {
  const xs = points(p).map((q) => q.x);
  return [Math.min(...xs), Math.max(...xs)];
}

function segments(p: Placement): readonly Segment[] {
  const out: Segment[] = [];
  for (let i = 1; i < p.line.length; i++) out.push([p.line[i - 1], p.line[i]]);
  const edge = p.edge;
  if (edge === undefined) return out;
  for (let i = 1; i < edge.length; i++) out.push([edge[i - 1], edge[i]]);
  for (let i = 0; i < Math.min(edge.length, p.line.length); i++) out.push([p.line[i], edge[i]]);
  return out;
}

/** Corners of a disc's outline seen along x: two for a disc edge-on, else an ellipse in order. */
function discOutline(centre: Point3, axle: Point3, radius: number): readonly Point2[] {
  const inPlane = Math.hypot(axle.y, axle.z);
  // Long axis across the axle, short axis along it.
  const ay = inPlane > 0 ? axle.y / inPlane : 1;
  const az = inPlane > 0 ? axle.z / inPlane : 0;
  const short = radius * Math.min(1, Math.abs(axle.x));
  const at = (long: number, along: number): Point2 => ({
    y: centre.y - az * long + ay * along,
    z: centre.z + ay * long + az * along,
  });
  if (short < 1e-3 * radius) return [at(-radius, 0), at(radius, 0)];
  return Array.from({ length: CORNERS }, (_, i) => {
    const turn = (2 * Math.PI * i) / CORNERS;
    return at(radius * Math.cos(turn), short * Math.sin(turn));
  });
}

/** Distance from a segment to a convex outline; 0 inside it. */
function toOutline(s: Segment, outline: readonly Point2[]): number {
  if (outline.length > 2 && inside(s[0], outline)) return 0;
  let least = Infinity;
  const n = outline.length;
  for (let i = 0; i < (n > 2 ? n : 1); i++) {
    least = Math.min(least, between(s, [outline[i], outline[(i + 1) % n]]));
  }
  return least;
}

function inside(p: Point2, outline: readonly Point2[]): boolean {
  let sign = 0;
  for (let i = 0; i < outline.length; i++) {
    const c = cross(outline[i], outline[(i + 1) % outline.length], p);
    if (sign * c < 0) return false;
    if (c !== 0) sign = Math.sign(c);
  }
  return true;
}

function between(s: Segment, r: Segment): number {
  if (
    cross(s[0], s[1], r[0]) * cross(s[0], s[1], r[1]) < 0 &&
    cross(r[0], r[1], s[0]) * cross(r[0], r[1], s[1]) < 0
  )
    return 0;
  return Math.min(toSegment(s[0], r), toSegment(s[1], r), toSegment(r[0], s), toSegment(r[1], s));
}

function cross(a: Point2, b: Point2, p: Point2): number {
  return (b.y - a.y) * (p.z - a.z) - (b.z - a.z) * (p.y - a.y);
}

function toSegment(p: Point2, s: Segment): number {
  const y = s[1].y - s[0].y;
  const z = s[1].z - s[0].z;
  const l2 = y * y + z * z;
  const f = l2 === 0 ? 0 : ((p.y - s[0].y) * y + (p.z - s[0].z) * z) / l2;
  const c = Math.max(0, Math.min(1, f));
  const dy = p.y - s[0].y - c * y;
  const dz = p.z - s[0].z - c * z;
  // Far cheaper than Math.hypot, whose care for overflow metres do not need.
  return Math.sqrt(dy * dy + dz * dz);
}
