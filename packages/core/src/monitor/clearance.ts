import type { RuleDefinition } from '../define/index.js';
import { abreast, boxGap } from './reading/geometry.js';
import { units } from './reading/motion.js';
import { nearness } from './reading/nearness.js';
import { approach, sweepOf } from './reading/sweep.js';

/** Swept geometry: tyres against doors. */
export const clearance: RuleDefinition = {
  name: 'clearance',
  title: 'Clearance of tyres and doors',
  summary:
    'Along the whole run no tyre comes nearer to a door than the clearance limit, seen in the ' +
    'transverse plane. Margin: smallest distance less the limit, m; a door that cuts the tyre ' +
    "counts as minus half the tyre's width. Judged only with known geometry.",
  source: "Plane geometry of the outlines; the limit is the scenario's.",
  kind: 'limit',
  limits: ['clearance'],
  judge: (e) => {
    const limit = e.scenario.limits.clearance;
    if (limit === undefined) return [];
    const { times, tyre, panel } = sweepOf(e);
    return units(e).flatMap(({ name, unit }) =>
      units(e).flatMap((other) =>
        other.unit.doors.flatMap((door) => {
          const a = tyre(unit.leg, 'transverse');
          const b = panel(door);
          if (a === undefined || b === undefined) return [];
          // A far unit's door is worth a word only when it is in the way.
          const own = other.name === name;
          if (!own && (!abreast(a.whole, b.whole) || boxGap(a.whole, b.whole) >= limit)) return [];
          const near = approach(times, a, b, limit);
          if (near === undefined || (!own && near.distance >= limit)) return [];
          const what = `the tyre of ${unit.leg}`;
          return [
            nearness(clearance, near, limit, [unit.leg, door], what, door, near.distance < 0),
          ];
        }),
      ),
    );
  },
};
