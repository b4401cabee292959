import type { RuleDefinition } from '../define/index.js';
import { holds } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { closedWhenDown } from './reading/linkage.js';
import { isWatched, moves, restingSince, units } from './reading/motion.js';

/** A door left open after the gear went up (or down, where it belongs closed then). */
export const doorNotClosed: RuleDefinition = {
  name: 'door-not-closed',
  title: 'Doors closed after the gear moved',
  summary:
    'After the gear was last sent up, and before it is sent down again, every door comes to rest ' +
    'closed; after it was last sent down, every door that stood closed with the gear down at the ' +
    'start. Margin: for how long it has been closed, or minus the time since the selection, s.',
  source: 'Purpose of the test; common practice, no source.',
  kind: 'holds',
  limits: [],
  judge: (e) => {
    const all = moves(e);
    const last = (['up', 'down'] as const).flatMap(
      (way) => all.filter((m) => m.direction === way).at(-1) ?? [],
    );
    return last.flatMap((move) =>
      units(e).flatMap(({ unit }) =>
        unit.doors.flatMap((door) => {
          if (!isWatched(e, door)) return [];
          if (move.direction === 'down' && !closedWhenDown(e, unit, door)) return [];
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
              bad: `${door} was not closed ${seconds(-found.margin)} after the gear was sent ${move.direction}, when that move ended.`,
              good: `${door} was closed for the last ${seconds(found.margin)} of the move ${move.direction}.`,
              suggestion:
                "Look at what should send oil to close it (sequence valve, switch, controller), then at the door's own load, seal and actuator.",
            }),
          ];
        }),
      ),
    );
  },
};
