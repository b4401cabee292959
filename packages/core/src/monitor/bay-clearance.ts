import type { RuleDefinition } from '../define/index.js';
import { nearness } from './reading/nearness.js';
import { tyresAndWells } from './reading/pairs.js';

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
    const { limits } = e.scenario;
    if ((limits.bayClearance ?? limits.clearance) === undefined) return [];
    const found = tyresAndWells(e);
    // One flag for a leg: on what it came nearest to.
    return [...new Set(found.map(({ unit }) => unit))].map((unit) => {
      const { between, near, asked } = found
        .filter((pair) => pair.unit === unit)
        .reduce((p, q) => (q.near.distance < p.near.distance ? q : p));
      const [leg, what] = between;
      const one = `the tyre of ${leg}`;
      return nearness(bayClearance, near, asked, [leg], one, what, near.distance < 0);
    });
  },
};
