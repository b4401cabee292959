import type { RuleDefinition } from '../define/index.js';
import { nearness } from './reading/nearness.js';
import { tyresAndDoors } from './reading/pairs.js';

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
    if (e.scenario.limits.clearance === undefined) return [];
    return tyresAndDoors(e).map(({ between: [leg, door], near, asked }) => {
      const what = `the tyre of ${leg}`;
      return nearness(clearance, near, asked, [leg, door], what, door, near.distance < 0);
    });
  },
};
