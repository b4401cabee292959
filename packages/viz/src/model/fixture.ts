/** Where the small parts of the bay are: hooks on doors, plungers of sequence valves, braces, ramps. */
import { add, cross, dot, scaled, sub, unit } from '../drawing/vector.js';
import type { Vector } from '../drawing/projection.js';
import type { BraceFacts, CatchFacts, PlungerFacts, RampFacts } from '../worker/bay-message.js';
import type { OutlineSamples, Picture } from '../worker/message.js';
import { stateAt, stretches } from './history.js';
import { placeAt } from './place.js';
import type { Place } from './place.js';

/** Middle of an edge or a pivot. */
function middle(points: readonly Vector[]): Vector {
  const sum = points.reduce(add, { x: 0, y: 0, z: 0 });
  return scaled(1 / Math.max(points.length, 1), sum);
}

/** Pivot or middle of the hinge, and the way the part points from there. */
export function armOf(place: Place): { readonly pivot: Vector; readonly along: Vector } {
  const [first, second] = place.line;
  const panel = place.edge.length > 0;
  const pivot = panel ? middle(place.line) : (first ?? middle([]));
  const end = panel ? middle(place.edge) : (second ?? pivot);
  return { pivot, along: unit(sub(end, pivot)) };
}

/** Where a hook holds: at the free edge of a door, at the wheel of a leg. */
export function catchPoint(o: OutlineSamples, c: CatchFacts): Vector {
  const place = placeAt(o, c.at);
  return place.edge.length > 0 ? middle(place.edge) : (place.line.at(-1) ?? middle([]));
}

/** Turn over which the way a striker comes from is read, rad. */
const TURN = 0.05;

/** Where the striker meets the plunger, and the way it moves there. */
export function plungerPoint(
  o: OutlineSamples,
  p: PlungerFacts,
): { readonly at: Vector; readonly towards: Vector } {
  const point = (angle: number): Vector => {
    const { pivot, along } = armOf(placeAt(o, angle));
    return add(pivot, scaled(p.arm, along));
  };
  const at = point(p.touch);
  const before = point(p.touch + (p.high ? -TURN : TURN));
  return { at, towards: unit(sub(at, before)) };
}

/** free: not touched; pushed: touched, the valve still shut; then the valve partly or fully open. */
export type PlungerState = 'free' | 'pushed' | 'opening' | 'open';

export function plungerState(
  picture: Picture,
  p: PlungerFacts,
  angle: number,
  time: number,
): PlungerState {
  const mode = stateAt(stretches(picture, p.device, 'mode'), time);
  if (mode === 'opening' || mode === 'open') return mode;
  return (p.high ? angle > p.touch : angle < p.touch) ? 'pushed' : 'free';
}

export const PLUNGER_WORD: Readonly<Record<PlungerState, string>> = {
  free: 'plunger free, valve shut',
  pushed: 'plunger touched, valve shut',
  opening: 'tripped, valve opening',
  open: 'tripped, valve open',
};

/** Structure, knee, leg. Which way the knee folds is not in a scenario: upwards, into the well. */
export function braceLine(b: BraceFacts, place: Place): Vector[] {
  const { pivot, along } = armOf(place);
  const [x, y, z] = b.end;
  const end: Vector = { x, y, z };
  const foot = add(pivot, scaled(b.onLeg, along));
  const span = sub(foot, end);
  const c = Math.sqrt(dot(span, span)) || 1;
  const reach = (b.upper ** 2 - b.lower ** 2 + c * c) / (2 * c);
  const out = Math.sqrt(Math.max(b.upper ** 2 - reach * reach, 0));
  // In the plane of pivot, upper end and foot.
  const plane = unit(cross(sub(end, pivot), along));
  const across = unit(cross(plane, span));
  const up = across.z < 0 ? scaled(-1, across) : across;
  const knee = add(add(end, scaled(reach / c, span)), scaled(out, up));
  return [end, knee, foot];
}

export function rampLine(r: RampFacts): Vector[] {
  const out: Vector[] = [];
  for (let i = 0; i + 2 < r.face.length; i += 3)
    out.push({ x: r.face[i] ?? 0, y: r.face[i + 1] ?? 0, z: r.face[i + 2] ?? 0 });
  return out;
}

/** Length of a leg from its pivot to its foot, m: the strut's, as the drawing has it. */
export function strutLength(place: Place): number {
  const [pivot, foot] = place.line;
  if (pivot === undefined || foot === undefined) return 0;
  const d = sub(foot, pivot);
  return Math.sqrt(dot(d, d));
}

/** A strut is worth a dimension when its length changes on the way by more than this, m, or it has a ramp. */
const SHORTENS = 0.002;

export function isShortening(picture: Picture, o: OutlineSamples): boolean {
  if (o.shape !== 'leg') return false;
  if (picture.bay.ramps.some((r) => r.on === o.mechanism)) return true;
  const lengths = [0, 0.25, 0.5, 0.75, 1].map((f) =>
    strutLength(placeAt(o, o.low + f * (o.high - o.low))),
  );
  return Math.max(...lengths) - Math.min(...lengths) > SHORTENS;
}
