/** Views of the bay: aircraft axes (x aft, y right, z up, m) onto the paper (mm, right and down). */

export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export type Flat = [number, number];

export interface Projection {
  readonly name: 'ahead' | 'behind' | 'side';
  readonly title: string;
  /** What else the onlooker must know. */
  readonly note: string;
  /** Paper's rightward direction as an aircraft axis. */
  readonly right: Vector;
  /** Direction towards the onlooker. */
  readonly near: Vector;
}

const LOCKS = 'Locks: D downlock, U uplock';

export const PROJECTIONS: Readonly<Record<Projection['name'], Projection>> = {
  ahead: {
    name: 'ahead',
    title: 'Seen from ahead',
    note: LOCKS,
    right: { x: 0, y: -1, z: 0 },
    near: { x: -1, y: 0, z: 0 },
  },
  behind: {
    name: 'behind',
    title: 'Seen from behind',
    note: LOCKS,
    right: { x: 0, y: 1, z: 0 },
    near: { x: 1, y: 0, z: 0 },
  },
  side: {
    name: 'side',
    title: 'Seen from the left, nose to the left',
    note: 'Right side faint, behind',
    right: { x: 1, y: 0, z: 0 },
    near: { x: 0, y: -1, z: 0 },
  },
};

export const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** A point on the paper, mm. */
export function project(p: Vector, onto: Projection): Flat {
  return [dot(p, onto.right) * 1000, -p.z * 1000];
}

/** Points as an SVG path. */
export function pathOf(points: readonly (readonly [number, number])[], closed = false): string {
  if (points.length === 0) return '';
  return `M${points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}${closed ? 'Z' : ''}`;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Smallest box around points; undefined for none. */
export function boxOf(points: readonly Flat[]): Box | undefined {
  if (points.length === 0) return undefined;
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}
