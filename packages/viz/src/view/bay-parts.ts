/**
 * Legs, doors and what hangs on them, as SVG in millimetres of paper: once as a frame that stays, and
 * then moved from frame to frame by their attributes alone.
 */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { pathOf, project } from '../drawing/projection.js';
import type { Flat, Projection } from '../drawing/projection.js';
import { tyrePaths } from '../drawing/tyre.js';
import type { Place } from '../model/place.js';
import type { BayEntry } from '../worker/message.js';
import { setter } from './setter.js';

/** The outer cylinder covers this share of the leg at its longest; the rest is the sliding part. */
const CYLINDER = 0.6;

/** Draws a part where it is. */
export type PartMover = (place: Place, mark: string) => void;

const length = (points: readonly Flat[]): number =>
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

/** Width of a leg's strokes, mm. */
const thickness = (place: Place): number => Math.max(22, (place.tyre?.radius ?? 0.15) * 200);

/** The frame of a leg with its wheel. */
export function leg(place: Place): SVGTemplateResult {
  const thick = thickness(place);
  return svg`
    <path class="slider" stroke-width=${thick * 0.55}></path>
    <path class="cylinder" stroke-width=${thick}></path>
    ${
      place.tyre === undefined
        ? nothing
        : svg`<path class="tyre" data-part="tyre"></path><path class="tread"></path>
            <path class="rim"></path><path class="hub"></path>`
    }
    <circle class="pivot" r=${thick * 0.75}></circle>`;
}

/** `reach` is its longest length, m. */
export function legMover(group: Element, onto: Projection, reach: number): PartMover {
  const set = setter(group);
  return (place, mark) => {
    const line = place.line.map((p) => project(p, onto));
    const span = spanOf(place);
    // Seen along its length the cylinder is foreshortened with the rest.
    const share = span > 0 ? Math.min(1, (reach * CYLINDER) / span) : 1;
    const pivot = line[0] ?? [0, 0];
    set('.slider', 'd', pathOf(line));
    set('.cylinder', 'd', pathOf(start(line, length(line) * share)));
    set('.pivot', 'cx', pivot[0].toFixed(1));
    set('.pivot', 'cy', pivot[1].toFixed(1));
    set('.pivot', 'class', `pivot ${mark}`);
    if (place.tyre === undefined) return;
    const wheel = tyrePaths(place.tyre, onto);
    set('.tyre', 'd', wheel.silhouette);
    set('.tyre', 'class', `tyre ${mark}`);
    set('.tread', 'd', wheel.tread);
    set('.rim', 'd', wheel.rim);
    set('.hub', 'd', wheel.hub);
  };
}

/** A leg's length over its polyline, m. */
export function spanOf(place: Place): number {
  return place.line.slice(1).reduce((sum, p, i) => {
    const a = place.line[i] ?? p;
    return sum + Math.hypot(p.x - a.x, p.y - a.y, p.z - a.z);
  }, 0);
}

function panel(place: Place, onto: Projection): string {
  const line = place.line.map((p) => project(p, onto));
  const edge = place.edge.map((p) => project(p, onto));
  return pathOf([...line, ...edge.reverse()], edge.length > 0);
}

/** The frame of a door or another member that is a panel. */
export function door(place: Place, onto: Projection): SVGTemplateResult {
  const [x, y] = project(place.line[0] ?? ORIGIN, onto);
  return svg`
    <path class="door" data-part="door"></path>
    <circle class="hinge" cx=${x} cy=${y} r="16"></circle>`;
}

const ORIGIN = { x: 0, y: 0, z: 0 };

export function doorMover(group: Element, onto: Projection): PartMover {
  const set = setter(group);
  return (place, mark) => {
    set('.door', 'd', panel(place, onto));
    set('.door', 'class', `door ${mark}`);
  };
}

/** Where a mechanism rests at an end of travel, as a faint outline. */
export function ghost(place: Place, onto: Projection): SVGTemplateResult {
  const wheel = place.tyre === undefined ? undefined : tyrePaths(place.tyre, onto);
  return svg`
    <path class="ghost" d=${panel(place, onto)}></path>
    ${wheel === undefined ? nothing : svg`<path class="ghost" d=${wheel.silhouette}></path>`}`;
}

/** A well: roof and the walls that this view shows edge on, down to `floor`, m; its outline in plan. */
export function well(bay: BayEntry, floor: number, onto: Projection): SVGTemplateResult {
  const { roof, walls, ends } = bay;
  const upright = onto.view === 'side' ? ends : walls;
  if (upright === undefined || (onto.view === 'plan' && ends === undefined)) return svg``;
  const [a, b] = upright;
  const at = (along: number, z: number): Flat => project({ x: along, y: along, z }, onto);
  const corner = (x: number, y: number): Flat => project({ x, y, z: roof }, onto);
  const [front, rear] = ends ?? [0, 0];
  const [left, right] = walls;
  const path =
    onto.view === 'plan'
      ? pathOf(
          [corner(front, left), corner(rear, left), corner(rear, right), corner(front, right)],
          true,
        )
      : pathOf([at(a, floor), at(a, roof), at(b, roof), at(b, floor)]);
  return svg`<path class="well" d=${path}></path>`;
}
