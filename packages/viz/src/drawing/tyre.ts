/** A wheel at any attitude: silhouette, tread, rim, as paths on the paper. */
import { polygonHull } from 'd3-polygon';
import { dot, pathOf, project } from './projection.js';
import type { Flat, Projection, Vector } from './projection.js';

export interface Tyre {
  readonly centre: Vector;
  /** Unit vector along the axle. */
  readonly axle: Vector;
  /** Outside radius and width, m. */
  readonly radius: number;
  readonly width: number;
}

export interface TyrePaths {
  readonly silhouette: string;
  readonly tread: readonly string[];
  readonly rim: string;
  readonly hub: string;
}

const AROUND = 36;
/** Share of the half width, and of the radius there: a plain rounded shoulder. */
const SECTION: readonly (readonly [number, number])[] = [
  [-1, 0.86],
  [-0.85, 0.95],
  [-0.45, 1],
  [0.45, 1],
  [0.85, 0.95],
  [1, 0.86],
];

function cross(a: Vector, b: Vector): Vector {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

function unit(a: Vector): Vector {
  const n = Math.hypot(a.x, a.y, a.z) || 1;
  return { x: a.x / n, y: a.y / n, z: a.z / n };
}

/** A circle around the axle, `along` m from the centre; `visible` keeps the half that faces the onlooker. */
function circle(t: Tyre, along: number, radius: number, onto: Projection, visible = false): Flat[] {
  const aside = Math.abs(t.axle.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  const e1 = unit(cross(t.axle, aside));
  const e2 = cross(t.axle, e1);
  // Starting opposite the onlooker keeps the visible half in one piece.
  const facing = Math.atan2(dot(e2, onto.near), dot(e1, onto.near));
  const out: Flat[] = [];
  for (let i = 0; i <= AROUND; i++) {
    const a = facing - Math.PI + (2 * Math.PI * i) / AROUND;
    if (visible && Math.cos(a - facing) < 0) continue;
    const c = Math.cos(a) * radius;
    const s = Math.sin(a) * radius;
    out.push(
      project(
        {
          x: t.centre.x + t.axle.x * along + e1.x * c + e2.x * s,
          y: t.centre.y + t.axle.y * along + e1.y * c + e2.y * s,
          z: t.centre.z + t.axle.z * along + e1.z * c + e2.z * s,
        },
        onto,
      ),
    );
  }
  return out;
}

export function tyrePaths(t: Tyre, onto: Projection): TyrePaths {
  const half = t.width / 2;
  const rings = SECTION.flatMap(([w, r]) => circle(t, w * half, r * t.radius, onto));
  const side = dot(t.axle, onto.near) >= 0 ? half : -half;
  return {
    silhouette: pathOf(polygonHull(rings) ?? rings, true),
    tread: [-0.3, 0, 0.3].map((w) => pathOf(circle(t, w * half, t.radius, onto, true))),
    rim: pathOf(circle(t, side, t.radius * 0.58, onto), true),
    hub: pathOf(circle(t, side, t.radius * 0.16, onto), true),
  };
}
