import type { RuleDefinition } from '../define/index.js';
import { within } from './kind/index.js';
import { blowDown, lockedDown } from './reading/blow-down.js';
import { raise, seconds } from './reading/flag.js';

/** A blow-down that takes too long, or does not bring a leg down. */
export const blowDownTime: RuleDefinition = {
  name: 'blow-down-time',
  title: 'Time of the emergency lowering',
  summary:
    'Every leg is locked down within its limit from the pull of the blow-down handle. Margin: limit ' +
    'less time, s.',
  source: "The limit is the scenario's; the way of timing is common practice, no source.",
  kind: 'within',
  limits: ['timeBlowDown'],
  judge: (e) => {
    const limit = e.scenario.limits.timeBlowDown;
    const move = blowDown(e);
    if (limit === undefined || move === undefined) return [];
    return lockedDown(e, move).flatMap(({ name, unit, at }) => {
      const found = within(move.start, at, limit, move.end);
      if (found === undefined) return [];
      const took = seconds(found.to - found.from);
      return [
        raise(blowDownTime, found, {
          devices: [unit.leg],
          severity: 'fail',
          bad:
            at === undefined
              ? `${name} was not locked down ${took} after the handle; the limit is ${seconds(limit)}.`
              : `${name} took ${took} from the handle to its lock; the limit is ${seconds(limit)}.`,
          good: `${name} took ${took} from the handle to its lock; the limit is ${seconds(limit)}.`,
          suggestion:
            'If all legs are slow, look at charge and temperature, the valve, and the way out of the up side; if one is, at its shuttle and its friction. Keep clear of legs that hang: gas stores energy and lets go at once.',
        }),
      ];
    });
  },
};
