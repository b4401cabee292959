import type { RuleDefinition } from '../define/index.js';
import { within } from './kind/index.js';
import { blowDown } from './reading/blow-down.js';
import { raise, seconds } from './reading/flag.js';
import { devicesOf } from './reading/line.js';
import { trace } from './reading/span.js';

/** Gas that must have come before a shuttle is judged, Pa above ambient. */
const GAS_CAME = 5e5;
/** Time it may take from the handle, s. */
const LIMIT = 5;

/** A shuttle that stays on its normal side. */
export const shuttleNotShifted: RuleDefinition = {
  name: 'shuttle-not-shifted',
  title: 'Shuttles shifted',
  summary:
    'After the blow-down handle every shuttle that gas has reached goes to its emergency side, within ' +
    '5 s. Margin: 5 s less the time it took, or minus the time since the handle.',
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
      const came = gas.v.some(
        (p, i) => gas.t[i] >= move.start && p > e.scenario.ambient + GAS_CAME,
      );
      if (!came) return [];
      const shifted = e.log.find(
        (x) => x.device === name && x.to === 'emergency' && x.t >= move.start,
      )?.t;
      const found = within(move.start, shifted, LIMIT, move.end);
      if (found === undefined) return [];
      return [
        raise(shuttleNotShifted, found, {
          devices: [name],
          severity: 'fail',
          bad:
            shifted === undefined
              ? `Gas stood at ${name} and it did not shift: what it feeds gets none.`
              : `${name} shifted ${seconds(found.to - found.from)} after the handle.`,
          good: `${name} shifted ${seconds(found.to - found.from)} after the handle.`,
          suggestion:
            'Strip the shuttle; look for water and corrosion. Vent the gas first and keep clear of the leg: it may go at any moment.',
        }),
      ];
    });
  },
};
