import type { BayEntry, Evidence, Flag, RuleDefinition, UnitEntry } from '../define/index.js';
import { outlined, panelOutline, tyreOutline, type Flat, type Plane } from './reading/geometry.js';
import { units } from './reading/motion.js';
import { nearness } from './reading/nearness.js';
import { approach, fixed, sweepOf } from './reading/sweep.js';

/** Swept geometry: tyres against the wells they go into. */
export const bayClearance: RuleDefinition = {
  name: 'bay-clearance',
  title: 'Clearance of tyres in their wells',
  summary:
    'Along the whole run no tyre comes nearer to the roof, the side walls (seen along the aircraft) ' +
    'or the end walls (seen from the side) of its well than the limit. The walls reach down to the ' +
    "highest point of the unit's closed doors, or, without doors, to the middle of the tyre when " +
    'up. Margin: smallest distance less the limit, m; a wall that cuts the tyre counts as minus ' +
    "half the tyre's width. The limit is bayClearance, or clearance without it.",
  source: "Plane geometry of the outlines; the limit is the scenario's.",
  kind: 'limit',
  limits: ['bayClearance', 'clearance'],
  judge: (e) => {
    const limit = e.scenario.limits.bayClearance ?? e.scenario.limits.clearance;
    if (limit === undefined) return [];
    return units(e).flatMap(({ unit }) =>
      unit.bay === undefined ? [] : judgeBay(e, unit, unit.bay, limit),
    );
  },
};

/** One flag for a leg: on what it came nearest to. */
function judgeBay(e: Evidence, unit: UnitEntry, bay: BayEntry, limit: number): readonly Flag[] {
  const { times, tyre } = sweepOf(e);
  const mouth = mouthOf(e, unit);
  if (mouth === undefined) return [];
  const found = sides(bay, mouth).flatMap(({ what, plane, flat }) => {
    const track = tyre(unit.leg, plane);
    const near = track && approach(times, track, fixed(flat), limit);
    return near === undefined ? [] : [{ what, near }];
  });
  if (found.length === 0) return [];
  const { what, near } = found.reduce((p, q) => (q.near.distance < p.near.distance ? q : p));
  const one = `the tyre of ${unit.leg}`;
  return [nearness(bayClearance, near, limit, [unit.leg], one, what, near.distance < 0)];
}

/** The well's lower edge, m. */
function mouthOf(e: Evidence, unit: UnitEntry): number | undefined {
  const doors = unit.doors
    .map((door) => e.outline(door, 0))
    .filter((p) => p !== undefined)
    .map((p) => panelOutline(p).high);
  if (doors.length > 0) return Math.max(...doors);
  const { travel } = e.scenario.mechanisms[unit.leg]?.parameters ?? {};
  const angles = sweepOf(e).tyre(unit.leg, 'transverse')?.angles ?? new Float64Array(1);
  const up = typeof travel === 'number' ? travel : angles.reduce((a, b) => Math.max(a, b));
  const placement = e.outline(unit.leg, up);
  const high = placement && tyreOutline(placement, 'transverse');
  return high && (high.low + high.high) / 2;
}

function sides(
  { roof, walls, ends }: BayEntry,
  mouth: number,
): readonly { readonly what: string; readonly plane: Plane; readonly flat: Flat }[] {
  const [front, rear] = ends ?? [-Infinity, Infinity];
  const [left, right] = [Math.min(...walls), Math.max(...walls)];
  const upright = (u: number): readonly number[] => [u, Math.min(mouth, roof), u, roof];
  const across = (what: string, pieces: readonly number[]) =>
    ({ what, plane: 'transverse', flat: outlined(pieces, front, rear) }) as const;
  const list: { readonly what: string; readonly plane: Plane; readonly flat: Flat }[] = [
    across('the roof of the well', [left, roof, right, roof]),
    across('a side wall of the well', [...upright(left), ...upright(right)]),
  ];
  if (ends !== undefined) {
    const flat = outlined([...upright(front), ...upright(rear)], left, right);
    list.push({ what: 'an end wall of the well', plane: 'lengthwise', flat });
  }
  return list;
}
