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
