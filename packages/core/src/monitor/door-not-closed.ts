import type { RuleDefinition } from '../define/index.js';
import { holds } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { isWatched, moves, restingSince, units } from './reading/motion.js';

/** A door left open after the gear went up. */
export const doorNotClosed: RuleDefinition = {
  name: 'door-not-closed',
  title: 'Doors closed after gear up',
  summary:
    'After the gear was last sent up, and before it is sent down again, every door comes to rest ' +
    'closed. Margin: for how long it has been closed, or minus the time since the selection, s.',
  source: 'Purpose of the test; common practice, no source.',
  kind: 'holds',
  limits: [],
  judge: (e) => {
    const move = moves(e)
      .filter((m) => m.direction === 'up')
      .at(-1);
    if (move === undefined) return [];
    return units(e).flatMap(({ unit }) =>
      unit.doors
        .filter((door) => isWatched(e, door))
        .flatMap((door) => {
          const since = restingSince(e, door, 'closed', move.end);
          const from = since === undefined ? move.start : Math.max(since, move.start);
          const truth = since === undefined ? [] : [{ from, to: move.end }];
          // Sent down the instant it closed: closed all the same.
          const found =
            since === move.end
              ? ({ margin: 0, quantity: 'time', from, to: from } as const)
              : holds(truth, { from, to: move.end });
          if (found === undefined) return [];
          return [
            raise(doorNotClosed, found, {
              devices: [door],
              severity: 'fail',
              bad: `${door} was not closed ${seconds(-found.margin)} after the gear was sent up, when that move ended.`,
              good: `${door} was closed for the last ${seconds(found.margin)} of the move up.`,
              suggestion:
                "Look at whether its sequence valve tripped, then at the door's own load, seal and actuator.",
            }),
          ];
        }),
    );
  },
};
