import { kept } from '../define/index.js';
import type { CoordinateData, MechanismDefinition, Parameters, Shape } from '../define/index.js';
import { hermite, sampled, spline } from './table.js';

/**
 * Mechanisms and coordinates. A mechanism that a linkage drives has no coordinate of its own: its
 * inertia, weight, friction and damping are reflected to its leader through the ratio g' of its
 * angle g(q) to the leader's angle q, so that the whole stays an ordinary differential equation:
 *
 *   I(q) = I_leader + sum I_m(g) g'^2      M(q) = M_leader + sum M_m(g) g'
 *   friction: sum F_m |g'|                 damping: sum c_m g'^2
 *
 * Source: virtual work and kinetic energy of a system with one coordinate (any text on
 * engineering mechanics).
 */
export interface MemberPlan {
  readonly name: string;
  readonly definition: MechanismDefinition;
  readonly parameters: Parameters;
  readonly data: CoordinateData;
  /** Index of the coordinate that moves it. */
  readonly coordinate: number;
  /** Its angle against that coordinate's; absent where they are the same. */
  readonly angle?: Shape;
}

/** Points over a leader's travel at which reflected quantities are sampled. */
const POINTS = 241;

/** Density of the standard atmosphere at sea level, kg/m3 (ISO 2533); equivalent airspeed refers to it. */
const SEA_LEVEL_DENSITY = 1.225;

/** Dynamic pressure of an equivalent airspeed in m/s, Pa. */
export function dynamicPressure(airspeed: number): number {
  return 0.5 * SEA_LEVEL_DENSITY * airspeed * airspeed;
}

/** Coordinate data in the wind: the airload worked into the static moment. */
export function inWind(data: CoordinateData, pressure: number, sideslip: number): CoordinateData {
  if (data.airload === undefined || pressure === 0) return data;
  const load = data.airload(sideslip);
  if (load.y.every((y) => y === 0)) return data;
  const air = spline(load);
  const still = spline(data.moment);
  return {
    ...data,
    moment: sampled(data.low, data.high, POINTS, (q) => still(q).value + pressure * air(q).value),
  };
}

/** A leader's coordinate data with all that it drives reflected to it. */
export function reflected(leader: CoordinateData, followers: readonly Follower[]): CoordinateData {
  if (followers.length === 0) return leader;
  const before = known.get(leader);
  const same =
    before?.followers.length === followers.length &&
    followers.every(({ data, angle }, i) => {
      const f = before.followers[i];
      return f.data === data && f.angle === angle;
    });
  if (same) return before.data;
  const data = reflect(leader, followers);
  known.set(leader, { followers, data });
  return data;
}

interface Follower {
  readonly data: CoordinateData;
  readonly angle: Shape;
}

/** As it was last asked for: most runs of a scenario change few mechanisms. */
const known = new WeakMap<
  CoordinateData,
  { readonly followers: readonly Follower[]; readonly data: CoordinateData }
>();

function reflect(leader: CoordinateData, followers: readonly Follower[]): CoordinateData {
  const { low, high } = leader;
  const parts = [{ data: leader, angle: { x: [low, high], y: [low, high] } }, ...followers].map(
    ({ data, angle }) => ({
      angle: spline(angle),
      inertia: spline(data.inertia),
      moment: spline(data.moment),
      friction: valueOf(data.friction),
      damping: valueOf(data.damping),
    }),
  );
  const sum = (of: (p: (typeof parts)[number], g: number, slope: number) => number): Shape =>
    sampled(low, high, POINTS, (q) =>
      parts.reduce((total, p) => {
        const g = p.angle(q);
        return total + of(p, g.value, g.slope);
      }, 0),
    );
  return {
    ...leader,
    inertia: sum((p, g, slope) => p.inertia(g).value * slope * slope),
    moment: sum((p, g, slope) => p.moment(g).value * slope),
    friction: sum((p, g, slope) => p.friction(g) * Math.abs(slope)),
    damping: sum((p, g, slope) => p.damping(g) * slope * slope),
  };
}

/** Tables with more points than this are taken as smooth. */
const SPARSE = 60;

/**
 * A driven angle over its leader's travel, without overshoot between the points of a table: a
 * linkage that dwells does not wobble there. Source: Fritsch and Carlson, Monotone piecewise cubic
 * interpolation, SIAM J. Numer. Anal. 17 (1980), with Butland's weighted harmonic mean.
 */
export const withoutOvershoot = kept(({ x, y }: Shape): Shape => {
  const n = x.length;
  if (n > SPARSE || n < 3) return { x, y };
  const width = x.slice(1).map((b, i) => b - x[i]);
  const slope = width.map((h, i) => (y[i + 1] - y[i]) / h);
  const m = x.map((_, i) => {
    if (i === 0 || i === n - 1) return slope[i === 0 ? 0 : n - 2];
    if (slope[i - 1] * slope[i] <= 0) return 0;
    const before = 2 * width[i] + width[i - 1];
    const after = width[i] + 2 * width[i - 1];
    return (before + after) / (before / slope[i - 1] + after / slope[i]);
  });
  const curve = hermite({ x, y }, m);
  return sampled(x[0], x[n - 1], POINTS, (at) => curve(at).value);
});

/** The second function of the first: y(inner(x)) over [low, high]. */
export const composed = kept((outer: Shape, inner: Shape, low: number, high: number): Shape => {
  const f = spline(outer);
  const g = spline(inner);
  return sampled(low, high, POINTS, (x) => f(g(x).value).value);
});

function valueOf(v: number | Shape): (angle: number) => number {
  if (typeof v === 'number') return () => v;
  const f = spline(v);
  return (angle) => f(angle).value;
}
