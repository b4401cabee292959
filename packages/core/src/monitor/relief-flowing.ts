import type { RuleDefinition } from '../define/index.js';
import { never } from './kind/index.js';
import { raise, seconds, tightest } from './reading/flag.js';
import { channelsOf, devicesOf } from './reading/line.js';
import { travelling, units } from './reading/motion.js';
import { above, endOf, trace, union } from './reading/span.js';

/** Flow that counts, m3/s: 0.05 gal/min, own choice, far below any supply. */
const FLOWING = 3.2e-6;
/** Overlap that does not count, s: a blink as one part arrives while another moves; own choice. */
const GRACE = 0.1;

/** A relief valve that takes the flow while the gear still needs it. */
export const reliefFlowing: RuleDefinition = {
  name: 'relief-flowing',
  title: 'Relief valve shut while the gear travels',
  summary:
    'No relief valve passes oil while a leg or door still travels. Margin: minus the time it did, ' +
    'or the shortest time between the two, s.',
  source:
    'Relief set low or dirt-held open stalls the gear at its heavy point; common practice, no source.',
  kind: 'never',
  limits: [],
  judge: (e) => {
    const parts = units(e).flatMap(({ unit }) => [unit.leg, ...unit.doors]);
    const travel = union(travelling(e, parts));
    if (travel.length === 0) return [];
    return tightest(
      devicesOf(e, 'relief').flatMap((relief) => {
        const flows = channelsOf(e, relief, 'flow').flatMap((c) => trace(e, c) ?? []);
        if (flows.length === 0) return [];
        const flowing = union(flows.flatMap((s) => above(s, FLOWING)));
        const found = never(flowing, travel, endOf(e), GRACE);
        return [
          raise(reliefFlowing, found, {
            devices: [relief],
            severity: 'caution',
            bad: `${relief} passed oil while the gear still travelled, from ${seconds(found.from)}, for ${seconds(GRACE - found.margin)} in all. That oil is missing at the actuators.`,
            good:
              flowing.length === 0
                ? `${relief} stayed shut.`
                : `${relief} passed oil only while nothing travelled.`,
            suggestion:
              'Look at whether the relief opens too low, or the load is too high: dry bearings, a bound door, a blocked return, cold oil.',
          }),
        ];
      }),
    );
  },
};
