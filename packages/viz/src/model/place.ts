/** Where a mechanism is at an angle or a time, from its sampled outline. */
import type { Projection, Flat, Vector } from '../drawing/projection.js';
import { project } from '../drawing/projection.js';
import type { Tyre } from '../drawing/tyre.js';
import { dot, unit } from '../drawing/vector.js';
import type { OutlineSamples, Picture } from '../worker/message.js';
import { angleOf } from './history.js';

export interface Place {
  readonly line: readonly Vector[];
  readonly edge: readonly Vector[];
  readonly tyre: Tyre | undefined;
}

/** Between the two nearest samples; the angle is held to the mechanism's range. */
export function placeAt(o: OutlineSamples, angle: number): Place {
  const share = o.high > o.low ? (angle - o.low) / (o.high - o.low) : 0;
  const at = Math.min(Math.max(share, 0), 1) * (o.samples - 1);
  const i = Math.min(Math.floor(at), o.samples - 2);
  const f = at - i;
  const pick = (a: Float32Array, stride: number, k: number): number => {
    const low = a[i * stride + k] ?? 0;
    return low + ((a[(i + 1) * stride + k] ?? low) - low) * f;
  };
  const point = (a: Float32Array, stride: number, k: number): Vector => ({
    x: pick(a, stride, k),
    y: pick(a, stride, k + 1),
    z: pick(a, stride, k + 2),
  });
  const poly = (a: Float32Array): Vector[] =>
    a.length === 0 ? [] : Array.from({ length: o.points }, (_, j) => point(a, o.points * 3, j * 3));
  return {
    line: poly(o.line),
    edge: poly(o.edge),
    tyre:
      o.tyre.length === 0
        ? undefined
        : {
            centre: point(o.tyre, 8, 0),
            axle: unit(point(o.tyre, 8, 3)),
            radius: pick(o.tyre, 8, 6),
            width: pick(o.tyre, 8, 7),
          },
  };
}

/** A mechanism's angle at a time, rad; its low end when the run does not carry it. */
export function angleAt(picture: Picture, o: OutlineSamples, time: number): number {
  return angleOf(picture, o.mechanism, time) ?? o.low;
}

/** How far a tyre, as a cylinder, reaches from its centre along a direction, mm. */
function reachOf(tyre: Tyre, along: Vector): number {
  const a = dot(tyre.axle, along);
  return 1000 * (tyre.radius * Math.sqrt(Math.max(0, 1 - a * a)) + (tyre.width / 2) * Math.abs(a));
}

/** Every point the outlines reach, on the paper: for choosing what the drawing must hold. */
export function swept(outlines: readonly OutlineSamples[], onto: Projection): Flat[] {
  const out: Flat[] = [];
  for (const o of outlines) {
    for (let k = 0; k <= 12; k++) {
      const place = placeAt(o, o.low + ((o.high - o.low) * k) / 12);
      for (const p of [...place.line, ...place.edge]) out.push(project(p, onto));
      if (place.tyre !== undefined) {
        const [u, v] = project(place.tyre.centre, onto);
        const across = reachOf(place.tyre, onto.right);
        const up = reachOf(place.tyre, onto.up);
        out.push([u - across, v - up], [u + across, v + up]);
      }
    }
  }
  return out;
}
