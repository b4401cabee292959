import type { RuleDefinition } from '../define/index.js';
import { within } from './kind/index.js';
import { blowDown } from './reading/blow-down.js';
import { raise, seconds } from './reading/flag.js';
import { devicesOf } from './reading/line.js';
import { trace } from './reading/span.js';

/** Gas that must have come before a shuttle is judged, Pa above ambient. */
const GAS_CAME = 5e5;
/** Time it may take once gas is there, s. */
const LIMIT = 1;

/** A shuttle that stays on its normal side. */
export const shuttleNotShifted: RuleDefinition = {
  name: 'shuttle-not-shifted',
  title: 'Shuttles shifted',
  summary:
    'In a blow-down every shuttle that gas has reached goes to its emergency side within 1 s. Margin: ' +
    '1 s less the time it took, or minus the time it has not.',
  source:
    'One seized shuttle defeats the blow-down for one leg, and no normal swing shows it: field reports; common practice, no source.',
  kind: 'within',
  limits: [],
  judge: (e) => {
    const move = blowDown(e);
    if (move === undefined) return [];
    return devicesOf(e, 'shuttle').flatMap((name) => {
      const gas = trace(e, `${e.scenario.components[name].ports.emergency}.pressure`);
      if (gas === undefined) return [];
      const first = gas.v.findIndex(
        (p, i) => gas.t[i] >= move.start && p > e.scenario.ambient + GAS_CAME,
      );
      if (first < 0) return [];
      const came = gas.t[first];
      const shifted = e.log.find(
        (x) => x.device === name && x.to === 'emergency' && x.t >= move.start,
      )?.t;
      // It may have shifted before the gas stood at its full pressure.
      const done = shifted === undefined ? undefined : Math.max(shifted, came);
      const found = within(came, done, LIMIT, move.end);
      if (found === undefined) return [];
      return [
        raise(shuttleNotShifted, found, {
          devices: [name],
          severity: 'fail',
          bad:
            shifted === undefined
              ? `Gas stood at ${name} and it did not shift: what it feeds gets none.`
              : `${name} shifted ${seconds(found.to - found.from)} after the gas had come.`,
          good: `${name} shifted ${seconds(found.to - found.from)} after the gas had come.`,
          suggestion:
            'Strip the shuttle; look for water and corrosion. Vent the gas first and keep clear of the leg: it may go at any moment.',
        }),
      ];
    });
  },
};
