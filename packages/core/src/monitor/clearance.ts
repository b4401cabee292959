import type { Evidence, Flag, RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { approach, panelToPanel, tyreToPanel } from './reading/geometry.js';
import { units } from './reading/motion.js';

/** Swept geometry: tyres against doors, doors against doors. */
export const clearance: RuleDefinition = {
  name: 'clearance',
  title: 'Clearance of tyres and doors',
  summary:
    'Along the whole run no tyre comes nearer to a door, and no door nearer to another, than the ' +
    'clearance limit, seen in the transverse plane. Doors that meet when closed may come as near ' +
    'as they are then. Margin: smallest distance less the limit, m. Judged only with known geometry.',
  source: "Plane geometry of the outlines; the limit is the scenario's.",
  kind: 'limit',
  limits: ['clearance'],
  judge: (e) => {
    const limit = e.scenario.limits.clearance;
    if (limit === undefined) return [];
    return [...tyres(e, limit), ...doors(e, limit)];
  },
};

function tyres(e: Evidence, limit: number): readonly Flag[] {
  return units(e).flatMap(({ name, unit }) =>
    units(e).flatMap((other) =>
      other.unit.doors.flatMap((door) => {
        const near = approach(e, unit.leg, door, limit, tyreToPanel);
        if (near === undefined) return [];
        // A far unit's door is worth a word only when it is in the way.
        if (other.name !== name && near.distance >= limit) return [];
        return [flag(limit, near, unit.leg, door, `the tyre of ${unit.leg}`, near.distance < 0)];
      }),
    ),
  );
}

function doors(e: Evidence, limit: number): readonly Flag[] {
  const all = units(e).flatMap(({ unit }) => unit.doors);
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => {
      const pa = e.outline(a, 0);
      const pb = e.outline(b, 0);
      const shut = pa === undefined || pb === undefined ? undefined : panelToPanel(pa, pb);
      const allowed = Math.min(limit, shut ?? limit);
      const near = approach(e, a, b, allowed, panelToPanel);
      if (near === undefined || near.distance >= limit) return [];
      return [flag(allowed, near, a, b, a, near.distance <= 0)];
    }),
  );
}

function flag(
  limit: number,
  near: {
    readonly distance: number;
    readonly t: number;
    readonly from: number;
    readonly to: number;
  },
  a: string,
  b: string,
  what: string,
  touch: boolean,
): Flag {
  const found = limitValue(near.distance, { low: limit }, 'length', near.t);
  return raise(
    clearance,
    { ...found, from: near.from, to: near.to },
    {
      devices: [a, b],
      severity: 'fail',
      bad: touch
        ? `${b} and ${what} ran into each other at ${seconds(near.t)}.`
        : `${what} and ${b} came nearer than the clearance limit at ${seconds(near.t)}.`,
      good: `${what} and ${b} came nearest at ${seconds(near.t)} and stayed clear.`,
      suggestion:
        'Look at the order of leg and door around that time, then at the rigging of the door. Never rely on this drawing for a gap: measure it, slowly, by hand pump.',
    },
  );
}
