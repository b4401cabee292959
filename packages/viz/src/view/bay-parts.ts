/** A leg and a door of the bay, as SVG in millimetres of paper. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { pathOf, project } from '../drawing/projection.js';
import type { Flat, Projection } from '../drawing/projection.js';
import { tyrePaths } from '../drawing/tyre.js';
import type { Place } from '../model/place.js';
import type { BayEntry } from '../worker/message.js';

/** The outer cylinder covers this share of the leg at its longest; the rest is the sliding part. */
const CYLINDER = 0.6;

export const length = (points: readonly Flat[]): number =>
  points
    .slice(1)
    .reduce(
      (sum, p, i) => sum + Math.hypot(p[0] - (points[i]?.[0] ?? 0), p[1] - (points[i]?.[1] ?? 0)),
      0,
    );

/** The first `reach` mm of a polyline. */
function start(points: readonly Flat[], reach: number): Flat[] {
  const out: Flat[] = points.slice(0, 1);
  let left = reach;
  for (let i = 1; i < points.length && left > 0; i++) {
    const [a, b] = [points[i - 1], points[i]];
    const step = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const f = step > 0 ? Math.min(1, left / step) : 1;
    out.push([a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f]);
    left -= step;
  }
  return out;
}

/** A leg with its wheel. `reach` is its longest length, m. */
export function leg(
  place: Place,
  onto: Projection,
  reach: number,
  mark: string,
): SVGTemplateResult {
  const line = place.line.map((p) => project(p, onto));
  const span = place.line.slice(1).reduce((sum, p, i) => {
    const a = place.line[i];
    return a === undefined ? sum : sum + Math.hypot(p.x - a.x, p.y - a.y, p.z - a.z);
  }, 0);
  const thick = Math.max(22, (place.tyre?.radius ?? 0.15) * 200);
  // Seen along its length the cylinder is foreshortened with the rest.
  const share = span > 0 ? Math.min(1, (reach * CYLINDER) / span) : 1;
  const wheel = place.tyre === undefined ? undefined : tyrePaths(place.tyre, onto);
  const pivot = line[0] ?? [0, 0];
  return svg`
    <path class="slider" d=${pathOf(line)} stroke-width=${thick * 0.55}></path>
    <path class="cylinder" d=${pathOf(start(line, length(line) * share))} stroke-width=${thick}></path>
    ${
      wheel === undefined
        ? nothing
        : svg`<path class="tyre ${mark}" data-part="tyre" d=${wheel.silhouette}></path>
            ${wheel.tread.map((d) => svg`<path class="tread" d=${d}></path>`)}
            <path class="rim" d=${wheel.rim}></path><path class="hub" d=${wheel.hub}></path>`
    }
    <circle class="pivot ${mark}" cx=${pivot[0]} cy=${pivot[1]} r=${thick * 0.75}></circle>`;
}

export function door(place: Place, onto: Projection, mark: string): SVGTemplateResult {
  const line = place.line.map((p) => project(p, onto));
  const edge = place.edge.map((p) => project(p, onto));
  const hinge = line[0] ?? [0, 0];
  return svg`
    <path class="door ${mark}" data-part="door" d=${pathOf([...line, ...edge.reverse()], edge.length > 0)}></path>
    <circle class="hinge" cx=${hinge[0]} cy=${hinge[1]} r="16"></circle>`;
}

/** Where a mechanism rests at an end of travel, as a faint outline. */
export function ghost(place: Place, onto: Projection): SVGTemplateResult {
  const line = place.line.map((p) => project(p, onto));
  const edge = place.edge.map((p) => project(p, onto));
  const wheel = place.tyre === undefined ? undefined : tyrePaths(place.tyre, onto);
  return svg`
    <path class="ghost" d=${pathOf([...line, ...edge.reverse()], edge.length > 0)}></path>
    ${wheel === undefined ? nothing : svg`<path class="ghost" d=${wheel.silhouette}></path>`}`;
}

/** A well: roof and the two walls that this view shows edge on, down to `floor`, m. */
export function well(bay: BayEntry, floor: number, onto: Projection): SVGTemplateResult {
  const ends = onto.name === 'side' ? bay.ends : bay.walls;
  if (ends === undefined) return svg``;
  const at = (along: number, z: number): Flat => project({ x: along, y: along, z }, onto);
  const [a, b] = ends;
  return svg`<path class="well" d=${pathOf([at(a, floor), at(a, bay.roof), at(b, bay.roof), at(b, floor)])}></path>`;
}
