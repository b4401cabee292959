import type { RuleDefinition } from '../define/index.js';
import { order } from './kind/index.js';
import { arrival, firstSpell, isWatched, moves, restingSince, units } from './reading/motion.js';
import { raise, seconds } from './reading/flag.js';
import { movesWithLeg } from './reading/linkage.js';

/** A leg that sets out while a door is still in its way. */
export const legBeforeDoor: RuleDefinition = {
  name: 'leg-before-door',
  title: 'Gear waits for the doors',
  summary:
    'After a selection a leg may start to move only when the doors of its unit are fully open. ' +
    'Margin: from the door at open to the first motion of the leg, s. Doors already open, and ' +
    'doors that the leg moves, are not judged.',
  source: 'Order of events of door and gear sequencing; common practice, no source.',
  kind: 'order',
  limits: [],
  judge: (e) =>
    moves(e).flatMap((move) =>
      units(e).flatMap(({ unit }) =>
        unit.doors.flatMap((door) => {
          const span = { from: move.start, to: move.end };
          if (movesWithLeg(e, unit, door)) return [];
          if (!isWatched(e, door) || restingSince(e, door, 'open', move.start) !== undefined)
            return [];
          const leg = firstSpell(e, unit.leg, move.direction === 'up' ? 'rising' : 'falling', span);
          const open = arrival(e, door, 'open', span);
          const found = order(open, leg?.from, move.end);
          if (found === undefined) return [];
          return [
            raise(legBeforeDoor, found, {
              devices: [unit.leg, door],
              severity: 'fail',
              bad:
                open === undefined
                  ? `${unit.leg} started to move ${move.direction}, and ${door} never came fully open. The leg or wheel can strike the door.`
                  : `${unit.leg} started to move ${move.direction} ${seconds(-found.margin)} before ${door} was fully open. The leg or wheel can strike the door.`,
              good: `${unit.leg} started to move ${move.direction} ${seconds(found.margin)} after ${door} was fully open.`,
              suggestion:
                'Look at what holds the leg back until the door is open: the plunger setting of its sequence valve, its leak, the lock, and what slows the door.',
            }),
          ];
        }),
      ),
    ),
};
