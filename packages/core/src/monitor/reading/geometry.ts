import type { Placement, Point3 } from '../../define/index.js';

/** The two planes clearances are measured in: seen along x (y, z) and seen along y (x, z). */
export type Plane = 'transverse' | 'lengthwise';

/** Outline of a part seen along one axis. */
export interface Flat {
  /** Straight pieces, four numbers each: from (u, z) to (u, z), m. */
  readonly pieces: Float64Array;
  /** What is rounded off around them, m: the shoulder of a tyre. */
  readonly round: number;
  /** The pieces close a convex figure with an inside. */
  readonly closed: boolean;
  /** Outside edges, m: along u, along z, and along the line of sight. */
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
  readonly near: number;
  readonly far: number;
}

/** Corners that stand for a disc seen askew: 1 % of its radius off at most. */
const CORNERS = 24;
/** Where the answer is decided: a fifth of a thousandth off at most. */
export const FINE_CORNERS = 160;

/**
 * The tyre of a placement: a disc with round shoulders of half its width. Seen along an axis its
 * outline is exact but for the corners that stand for an ellipse. Undefined without a tyre.
 */
export function tyreOutline(p: Placement, plane: Plane, corners = CORNERS): Flat | undefined {
  const { tyre } = p;
  if (tyre === undefined) return undefined;
  const round = Math.min(tyre.width / 2, tyre.radius);
  const disc = tyre.radius - round;
  const { axle, centre } = tyre;
  const across = plane === 'transverse';
  const u = across ? centre.y : centre.x;
  const depth = across ? centre.x : centre.y;
  const au = across ? axle.y : axle.x;
  const ad = across ? axle.x : axle.y;
  // How far a disc reaches along an axis: radius times the sine of the angle to its axle.
  const reach = (a: number): number => disc * Math.sqrt(Math.max(0, 1 - a * a)) + round;
  let pieces: Float64Array | undefined;
  return {
    // Most outlines stay far from everything: their boxes are enough.
    get pieces() {
      pieces ??= discPieces(u, centre.z, au, axle.z, Math.min(1, Math.abs(ad)), disc, corners);
      return pieces;
    },
    round,
    closed: Math.abs(ad) >= EDGE_ON,
    left: u - reach(au),
    right: u + reach(au),
    low: centre.z - reach(axle.z),
    high: centre.z + reach(axle.z),
    near: depth - reach(ad),
    far: depth + reach(ad),
  };
}

/** Flatter than this part of its length an ellipse is a line: the disc is seen edge-on. */
const EDGE_ON = 1e-3;

function discPieces(
  u: number,
  z: number,
  au: number,
  az: number,
  flat: number,
  disc: number,
  corners: number,
): Float64Array {
  const inPlane = Math.sqrt(au * au + az * az);
  // Long axis across the axle, short axis along it.
  const su = inPlane > 0 ? au / inPlane : 1;
  const sz = inPlane > 0 ? az / inPlane : 0;
  if (flat < EDGE_ON)
    return Float64Array.of(u + sz * disc, z - su * disc, u - sz * disc, z + su * disc);
  const out = new Float64Array(4 * corners);
  for (let i = 0; i < corners; i++) {
    const turn = (2 * Math.PI * i) / corners;
    const long = disc * Math.cos(turn);
    const short = flat * disc * Math.sin(turn);
    const before = 4 * ((i + corners - 1) % corners);
    out[4 * i] = out[before + 2] = u - sz * long + su * short;
    out[4 * i + 1] = out[before + 3] = z + su * long + sz * short;
  }
  return out;
}

/** A panel (line and edge), or the line of a part alone, seen along the aircraft. */
export function panelOutline(p: Placement): Flat {
  const pieces: number[] = [];
  const { line, edge = [] } = p;
  // Chords first: they swallow the points that a fore-and-aft hinge line and free edge shrink to.
  for (let i = 0; i < Math.min(edge.length, line.length); i++) addPiece(pieces, line[i], edge[i]);
  for (let i = 1; i < line.length; i++) addPiece(pieces, line[i - 1], line[i]);
  for (let i = 1; i < edge.length; i++) addPiece(pieces, edge[i - 1], edge[i]);
  let [near, far] = [Infinity, -Infinity];
  for (const side of [line, edge]) {
    for (const { x } of side) {
      near = Math.min(near, x);
      far = Math.max(far, x);
    }
  }
  return outlined(pieces, near, far);
}

/** Front and rear edge of an even panel lie behind each other, and so do the ends of its hinge: once is enough. */
function addPiece(pieces: number[], a: Point3, b: Point3): void {
  const point = a.y === b.y && a.z === b.z;
  for (let i = 0; i < pieces.length; i += 4) {
    const starts = pieces[i] === a.y && pieces[i + 1] === a.z;
    const ends = pieces[i + 2] === b.y && pieces[i + 3] === b.z;
    if (point ? starts || ends : starts && ends) return;
  }
  pieces.push(a.y, a.z, b.y, b.z);
}

/** Sharp pieces (panels, fixed walls), four numbers each, from `near` to `far` along the line of sight. */
export function outlined(pieces: readonly number[], near: number, far: number): Flat {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < pieces.length; i += 2) {
    left = Math.min(left, pieces[i]);
    right = Math.max(right, pieces[i]);
    low = Math.min(low, pieces[i + 1]);
    high = Math.max(high, pieces[i + 1]);
  }
  const box = { left, right, low, high, near, far };
  return { pieces: Float64Array.from(pieces), round: 0, closed: false, ...box };
}

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
  const du = p[i + 2] - p[i];
  const dz = p[i + 3] - p[i + 1];
  const l2 = du * du + dz * dz;
  const f = l2 === 0 ? 0 : ((u - p[i]) * du + (z - p[i + 1]) * dz) / l2;
  const c = f < 0 ? 0 : f > 1 ? 1 : f;
  const eu = u - p[i] - c * du;
  const ez = z - p[i + 1] - c * dz;
  return eu * eu + ez * ez;
}
