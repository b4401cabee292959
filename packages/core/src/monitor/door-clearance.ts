import type { RuleDefinition } from '../define/index.js';
import { nearness } from './reading/nearness.js';
import { doorsAndDoors } from './reading/pairs.js';

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
    const { limits } = e.scenario;
    if ((limits.doorClearance ?? limits.clearance) === undefined) return [];
    return doorsAndDoors(e).map(({ between: [a, b], near, asked }) =>
      nearness(doorClearance, near, asked, [a, b], a, b, near.distance <= 0),
    );
  },
};
