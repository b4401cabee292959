import type { RuleDefinition } from '../define/index.js';
import { within } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { moves, units } from './reading/motion.js';
import { timings } from './timings.js';

/** A swing that takes too long. */
export const slowSwing: RuleDefinition = {
  name: 'slow-swing',
  title: 'Time up and time down',
  summary:
    'Every unit finishes going up or down within its time limit, from the selector to the last ' +
    'lock and door. Margin: limit less time, s.',
  source: "The limits are the scenario's; the way of timing is common practice, no source.",
  kind: 'within',
  limits: ['timeUp', 'timeDown'],
  judge: (e) => {
    const all = moves(e);
    return timings(e).flatMap((timing) => {
      const { direction } = timing;
      const limit = direction === 'up' ? e.scenario.limits.timeUp : e.scenario.limits.timeDown;
      const move = all.find((m) => m.start === timing.start);
      if (limit === undefined || move === undefined || move.by === 'gas') return [];
      const done = Number.isNaN(timing.total) ? undefined : timing.start + timing.total;
      const found = within(timing.start, done, limit, move.end);
      if (found === undefined) return [];
      const leg = units(e).find(({ name }) => name === timing.unit)?.unit.leg ?? timing.unit;
      const took = seconds(found.to - found.from);
      return [
        raise(slowSwing, found, {
          devices: [leg],
          severity: 'caution',
          bad:
            done === undefined
              ? `${timing.unit} had not finished going ${direction} ${took} after the selection; the limit is ${seconds(limit)}.`
              : `${timing.unit} took ${took} to go ${direction}; the limit is ${seconds(limit)}.`,
          good: `${timing.unit} took ${took} to go ${direction}; the limit is ${seconds(limit)}.`,
          suggestion:
            'If both sides are slow alike, look at supply and temperature; if one is, look at that side. Down is ruled by weight and restrictor more than by the pump.',
        }),
      ];
    });
  },
};
