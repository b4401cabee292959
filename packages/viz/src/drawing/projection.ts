/** Views of the bay: aircraft axes (x aft, y right, z up, m) onto the paper (mm, right and down). */

import { dot } from './vector.js';

export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export type Flat = [number, number];

/** The three drawings of the bay. */
export const VIEWS = ['front', 'side', 'plan'] as const;
export type ViewName = (typeof VIEWS)[number];

export interface Projection {
  readonly name: 'ahead' | 'behind' | 'side' | 'above' | 'below';
  /** Where it stands among the drawings. */
  readonly view: ViewName;
  readonly title: string;
  /** Paper's rightward direction as an aircraft axis. */
  readonly right: Vector;
  /** Paper's upward direction. */
  readonly up: Vector;
  /** Direction towards the onlooker. */
  readonly near: Vector;
}

const UP: Vector = { x: 0, y: 0, z: 1 };
const NOSE_LEFT = { right: { x: 1, y: 0, z: 0 } } as const;

export const PROJECTIONS: Readonly<Record<Projection['name'], Projection>> = {
  ahead: {
    name: 'ahead',
    view: 'front',
    title: 'Seen from ahead',
    right: { x: 0, y: -1, z: 0 },
    up: UP,
    near: { x: -1, y: 0, z: 0 },
  },
  behind: {
    name: 'behind',
    view: 'front',
    title: 'Seen from behind',
    right: { x: 0, y: 1, z: 0 },
    up: UP,
    near: { x: 1, y: 0, z: 0 },
  },
  side: {
    ...NOSE_LEFT,
    name: 'side',
    view: 'side',
    title: 'From the left, right side faint',
    up: UP,
    near: { x: 0, y: -1, z: 0 },
  },
  above: {
    ...NOSE_LEFT,
    name: 'above',
    view: 'plan',
    title: 'From above, nose left',
    up: { x: 0, y: 1, z: 0 },
    near: { x: 0, y: 0, z: 1 },
  },
  below: {
    ...NOSE_LEFT,
    name: 'below',
    view: 'plan',
    title: 'From below, nose left',
    up: { x: 0, y: -1, z: 0 },
    near: { x: 0, y: 0, z: -1 },
  },
};

/** A point on the paper, mm. */
export function project(p: Vector, onto: Projection): Flat {
  return [dot(p, onto.right) * 1000, -dot(p, onto.up) * 1000];
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
