/** A wheel at any attitude: silhouette, tread, rim, as paths on the paper. */
import { pathOf, project } from './projection.js';
import type { Flat, Projection, Vector } from './projection.js';
import { cross, dot, unit } from './vector.js';

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
  readonly tread: string;
  readonly rim: string;
  readonly hub: string;
}

/** Points around; a multiple of four, so that the uppermost one and its like are among them. */
const AROUND = 48;

/**
 * The outline of a disc with a round shoulder of half the tyre's width: the body that the rules on
 * clearance measure from. In each direction of the paper, the disc's farthest point and the shoulder.
 */
function silhouette(t: Tyre, onto: Projection): Flat[] {
  const round = Math.min(t.width / 2, t.radius);
  const disc = t.radius - round;
  const [u, v] = project(t.centre, onto);
  const [au, av] = [dot(t.axle, onto.right), -dot(t.axle, onto.up)];
  return Array.from({ length: AROUND }, (_, i): Flat => {
    const a = (2 * Math.PI * i) / AROUND;
    const [nu, nv] = [Math.cos(a), Math.sin(a)];
    const share = nu * au + nv * av;
    const square = Math.sqrt(Math.max(1 - share * share, 0));
    const reach = square < 1e-9 ? 0 : (1000 * disc) / square;
    return [
      u + reach * (nu - share * au) + 1000 * round * nu,
      v + reach * (nv - share * av) + 1000 * round * nv,
    ];
  });
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
  const side = dot(t.axle, onto.near) >= 0 ? half : -half;
  return {
    silhouette: pathOf(silhouette(t, onto), true),
    tread: [-0.3, 0, 0.3]
      .map((w) => pathOf(circle(t, w * half, t.radius * 0.99, onto, true)))
      .join(''),
    rim: pathOf(circle(t, side * 0.8, t.radius * 0.58, onto), true),
    hub: pathOf(circle(t, side * 0.8, t.radius * 0.16, onto), true),
  };
}
