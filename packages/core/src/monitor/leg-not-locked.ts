import type { RuleDefinition } from '../define/index.js';
import { holds } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { isWatched, lockedSince, lockOf, moves, units } from './reading/motion.js';

/** A leg that is not locked where it was last sent. */
export const legNotLocked: RuleDefinition = {
  name: 'leg-not-locked',
  title: 'Legs locked at the end',
  summary:
    'At the end of the run every leg is locked at the end it was last sent to (at its end stop ' +
    'where it has no lock). Margin: for how long it has been locked, or minus the time since the selection, s.',
  source: 'Purpose of the test; common practice, no source.',
  kind: 'holds',
  limits: [],
  judge: (e) => {
    const move = moves(e).at(-1);
    if (move === undefined) return [];
    return units(e).flatMap(({ unit }) => {
      const lock = lockOf(unit, move.direction);
      const known = lock !== undefined && e.log.some((x) => x.device === lock);
      if (!known && !isWatched(e, unit.leg)) return [];
      const since = lockedSince(e, unit, move.direction, move.end);
      const from = since === undefined ? move.start : Math.max(since, move.start);
      const truth = since === undefined ? [] : [{ from, to: move.end }];
      const found = holds(truth, { from, to: move.end });
      if (found === undefined) return [];
      return [
        raise(legNotLocked, found, {
          devices: lock === undefined ? [unit.leg] : [unit.leg, lock],
          severity: 'fail',
          bad: `${unit.leg} was sent ${move.direction} and was not locked ${move.direction} at the end, ${seconds(-found.margin)} after the selection. A leg that is not locked can fold or fall.`,
          good: `${unit.leg} was locked ${move.direction} for the last ${seconds(found.margin)}.`,
          suggestion:
            'Look at whether the leg reached its end at all (supply, load, leak), then at the lock and its rigging. Keep clear of a leg that is not locked.',
        }),
      ];
    });
  },
};
