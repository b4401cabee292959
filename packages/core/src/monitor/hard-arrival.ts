import type { RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { units } from './reading/motion.js';

/** A leg or door that hits the end of its travel. */
export const hardArrival: RuleDefinition = {
  name: 'hard-arrival',
  title: 'Soft arrival at the ends of travel',
  summary:
    'Legs (and doors, where the scenario gives them a limit of their own) reach the ends of their ' +
    'travel no faster than the arrival limit. Margin: limit less the fastest arrival, rad/s.',
  source: 'Smooth operation without slamming; common practice, no source.',
  kind: 'limit',
  limits: ['arrivalSpeed', 'doorArrivalSpeed'],
  judge: (e) =>
    units(e)
      .flatMap(({ unit }) => [
        { part: unit.leg, limit: e.scenario.limits.arrivalSpeed },
        ...unit.doors.map((part) => ({ part, limit: e.scenario.limits.doorArrivalSpeed })),
      ])
      .flatMap(({ part, limit }) => {
        const arrivals = e.log.filter(
          (x) => x.device === part && x.kind === 'motion' && x.to.startsWith('at ') && x.speed > 0,
        );
        if (limit === undefined || arrivals.length === 0) return [];
        const worst = arrivals.reduce((a, b) => (b.speed > a.speed ? b : a));
        return [
          raise(hardArrival, limitValue(worst.speed, { high: limit }, 'angular-speed', worst.t), {
            devices: [part],
            severity: 'caution',
            bad: `${part} came to ${worst.to.slice(3)} at ${seconds(worst.t)} faster than the limit. A hard arrival loads the stops, the lock and the attachments.`,
            good: `The fastest arrival of ${part} (${worst.to.slice(3)}, at ${seconds(worst.t)}) was inside the limit.`,
            suggestion: 'Look at the restrictors, the end cushion, and air in the line.',
          }),
        ];
      }),
};
