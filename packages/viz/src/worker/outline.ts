/** Samples a mechanism's outline against its angle, so that the page can draw any moment without the core. */
import { kept } from '@wheelwell/core';
import type { MechanismDefinition, Parameters, Placement, Point3 } from '@wheelwell/core';
import type { OutlineSamples } from './message.js';

/** Enough that straight lines between samples stay within a millimetre on a leg of two metres. */
const SAMPLES = 121;

function put(into: Float32Array, at: number, p: Point3): void {
  into[at] = p.x;
  into[at + 1] = p.y;
  into[at + 2] = p.z;
}

export const sampleOutline = kept(sampled);

function sampled(
  parameters: Parameters,
  kind: MechanismDefinition,
): Omit<OutlineSamples, 'mechanism'> {
  const { low, high } = kind.coordinate(parameters);
  const outline = kind.outline(parameters);
  const at = (i: number): Placement => outline.at(low + ((high - low) * i) / (SAMPLES - 1));
  const first = at(0);
  const points = first.line.length;
  const line = new Float32Array(SAMPLES * points * 3);
  const edge = new Float32Array(first.edge === undefined ? 0 : line.length);
  const tyre = new Float32Array(first.tyre === undefined ? 0 : SAMPLES * 8);
  for (let i = 0; i < SAMPLES; i++) {
    const place = i === 0 ? first : at(i);
    place.line.forEach((p, j) => put(line, (i * points + j) * 3, p));
    if (edge.length > 0) place.edge?.forEach((p, j) => put(edge, (i * points + j) * 3, p));
    if (tyre.length > 0 && place.tyre !== undefined) {
      put(tyre, i * 8, place.tyre.centre);
      put(tyre, i * 8 + 3, place.tyre.axle);
      tyre[i * 8 + 6] = place.tyre.radius;
      tyre[i * 8 + 7] = place.tyre.width;
    }
  }
  return {
    shape: outline.shape,
    ends: kind.ends,
    low,
    high,
    samples: SAMPLES,
    points,
    line,
    edge,
    tyre,
  };
}
