import type { Evidence, Flag, RuleDefinition } from '../define/index.js';
import { abreast, boxGap, gap, panelOutline } from './reading/geometry.js';
import { units } from './reading/motion.js';
import { nearness } from './reading/nearness.js';
import { approach, sweepOf } from './reading/sweep.js';

/** Doors that meet may come this much nearer than they are when both are closed, m: less than rigging can tell; own choice. */
const MEETING = 0.5e-3;
/** Doors that touch when closed are judged only while one is farther from closed than this, rad: 10 degrees, own choice. */
const CLOSING = (10 * Math.PI) / 180;

/** Swept geometry: doors against doors. */
export const doorClearance: RuleDefinition = {
  name: 'door-clearance',
  title: 'Clearance of doors',
  summary:
    'Along the whole run no door comes nearer to another than the limit, seen in the transverse ' +
    'plane. Doors that meet by design may come as near as they are with both closed; where they ' +
    'touch or lap then, they must not touch while either is more than 10 degrees open. Margin: ' +
    'smallest distance less what is asked, m. The limit is doorClearance, or clearance without it.',
  source: "Plane geometry of the outlines; the limit is the scenario's.",
  kind: 'limit',
  limits: ['doorClearance', 'clearance'],
  judge: (e) => {
    const limit = e.scenario.limits.doorClearance ?? e.scenario.limits.clearance;
    if (limit === undefined) return [];
    const doors = units(e).flatMap(({ name, unit }) => unit.doors.map((door) => ({ door, name })));
    return doors.flatMap((a, i) =>
      doors.slice(i + 1).flatMap((b) => judgePair(e, a.door, b.door, limit, a.name === b.name)),
    );
  },
};

function judgePair(
  e: Evidence,
  a: string,
  b: string,
  limit: number,
  oneUnit: boolean,
): readonly Flag[] {
  if (a === b) return [];
  const { times, panel } = sweepOf(e);
  const pa = panel(a);
  const pb = panel(b);
  if (pa === undefined || pb === undefined || !abreast(pa.whole, pb.whole)) return [];
  if (!oneUnit && boxGap(pa.whole, pb.whole) >= limit) return [];
  const shut = gap(panelOutline(e.outline(a, 0)!), panelOutline(e.outline(b, 0)!));
  const lapped = shut < MEETING;
  const asked = lapped ? Math.min(limit, MEETING) : Math.min(limit, shut - MEETING);
  const near = lapped
    ? approach(times, pa, pb, asked, (u, v) => u > CLOSING || v > CLOSING)
    : approach(times, pa, pb, asked);
  // Doors of different units are worth a word only when they are in each other's way.
  if (near === undefined || (!oneUnit && near.distance >= limit)) return [];
  return [nearness(doorClearance, near, asked, [a, b], a, b, near.distance <= 0)];
}
