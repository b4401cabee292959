/** How far apart two outlines are in their plane, and where they come nearest. */
import type { Flat } from './geometry.js';

/** True when two outlines are side by side: neither lies wholly before the other along the line of sight. */
export function abreast(a: Pick<Flat, 'near' | 'far'>, b: Pick<Flat, 'near' | 'far'>): boolean {
  return a.near <= b.far && b.near <= a.far;
}

/** The boxes around two outlines are at least this far apart, m; 0 when they overlap. */
export function boxGap(a: Box, b: Box): number {
  const u = Math.max(a.left - b.right, b.left - a.right, 0);
  const z = Math.max(a.low - b.high, b.low - a.high, 0);
  return Math.sqrt(u * u + z * z);
}

export type Box = Pick<Flat, 'left' | 'right' | 'low' | 'high'>;

/**
 * Distance between two outlines in their plane, m. Where the bare pieces meet it is minus the
 * rounding (a panel that cuts a tyre: down to minus half the tyre's width).
 */
export function gap(a: Flat, b: Flat): number {
  const p = a.pieces;
  const q = b.pieces;
  const rounds = a.round + b.round;
  if (a.closed && inside(q[0], q[1], p)) return -rounds;
  if (b.closed && inside(p[0], p[1], q)) return -rounds;
  let least = Infinity;
  for (let i = 0; i < p.length; i += 4) {
    for (let j = 0; j < q.length; j += 4) {
      const d = between(p, i, q, j);
      if (d === 0) return -rounds;
      if (d < least) least = d;
    }
  }
  return Math.sqrt(least) - rounds;
}

function inside(u: number, z: number, p: Float64Array): boolean {
  let sign = 0;
  for (let i = 0; i < p.length; i += 4) {
    const c = side(p, i, u, z);
    if (sign * c < 0) return false;
    if (c !== 0) sign = c;
  }
  return true;
}

/** Twice the area of the triangle of a piece and a point: its sign tells the side. */
function side(p: Float64Array, i: number, u: number, z: number): number {
  return (p[i + 2] - p[i]) * (z - p[i + 1]) - (p[i + 3] - p[i + 1]) * (u - p[i]);
}

/** Squared distance of two pieces, m2; 0 when they cross. */
function between(p: Float64Array, i: number, q: Float64Array, j: number): number {
  if (
    side(p, i, q[j], q[j + 1]) * side(p, i, q[j + 2], q[j + 3]) < 0 &&
    side(q, j, p[i], p[i + 1]) * side(q, j, p[i + 2], p[i + 3]) < 0
  )
    return 0;
  return Math.min(
    toPiece(q[j], q[j + 1], p, i),
    toPiece(q[j + 2], q[j + 3], p, i),
    toPiece(p[i], p[i + 1], q, j),
    toPiece(p[i + 2], p[i + 3], q, j),
  );
}

function toPiece(u: number, z: number, p: Float64Array, i: number): number {
  const c = share(u, z, p, i);
  const eu = u - p[i] - c * (p[i + 2] - p[i]);
  const ez = z - p[i + 1] - c * (p[i + 3] - p[i + 1]);
  return eu * eu + ez * ez;
}

/** How far along a piece, 0..1, it is nearest to a point. */
function share(u: number, z: number, p: Float64Array, i: number): number {
  const du = p[i + 2] - p[i];
  const dz = p[i + 3] - p[i + 1];
  const l2 = du * du + dz * dz;
  const f = l2 === 0 ? 0 : ((u - p[i]) * du + (z - p[i + 1]) * dz) / l2;
  return f < 0 ? 0 : f > 1 ? 1 : f;
}

/** Where two outlines come nearest: a point on each, as (u, z), m. */
export interface Gap {
  /** As {@link gap} has it. */
  readonly distance: number;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** As {@link gap}, with the places; where the bare pieces meet, both are where they do. */
export function nearest(a: Flat, b: Flat): Gap {
  const p = a.pieces;
  const q = b.pieces;
  const rounds = a.round + b.round;
  const meeting = (u: number, z: number): Gap => ({ distance: -rounds, from: [u, z], to: [u, z] });
  if (a.closed && inside(q[0], q[1], p)) return meeting(q[0], q[1]);
  if (b.closed && inside(p[0], p[1], q)) return meeting(p[0], p[1]);
  let least = Infinity;
  let [fu, fz, tu, tz] = [0, 0, 0, 0];
  const look = (u: number, z: number, s: Float64Array, i: number, swap: boolean): void => {
    const d = toPiece(u, z, s, i);
    if (d >= least) return;
    const f = share(u, z, s, i);
    const v = s[i] + f * (s[i + 2] - s[i]);
    const w = s[i + 1] + f * (s[i + 3] - s[i + 1]);
    least = d;
    [fu, fz, tu, tz] = swap ? [v, w, u, z] : [u, z, v, w];
  };
  for (let i = 0; i < p.length; i += 4) {
    for (let j = 0; j < q.length; j += 4) {
      if (between(p, i, q, j) === 0) {
        const at = crossing(p, i, q, j);
        return meeting(at[0], at[1]);
      }
      for (let end = 0; end < 4; end += 2) {
        look(p[i + end], p[i + end + 1], q, j, false);
        look(q[j + end], q[j + end + 1], p, i, true);
      }
    }
  }
  const bare = Math.sqrt(least);
  const [nu, nz] = [(tu - fu) / bare, (tz - fz) / bare];
  return {
    distance: bare - rounds,
    from: [fu + nu * a.round, fz + nz * a.round],
    to: [tu - nu * b.round, tz - nz * b.round],
  };
}

/** Where two pieces cross, or the end at which they touch. */
function crossing(p: Float64Array, i: number, q: Float64Array, j: number): [number, number] {
  const s = side(q, j, p[i], p[i + 1]);
  const t = side(q, j, p[i + 2], p[i + 3]);
  const f = s === t ? 0 : Math.min(Math.max(s / (s - t), 0), 1);
  return [p[i] + f * (p[i + 2] - p[i]), p[i + 1] + f * (p[i + 3] - p[i + 1])];
}
