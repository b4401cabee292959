import type { RuleDefinition } from '../define/index.js';
import { order } from './kind/index.js';
import { firstSpell, lockTime, moves, units } from './reading/motion.js';
import { raise, seconds } from './reading/flag.js';
import { movesWithLeg } from './reading/linkage.js';

/** Doors that close on a leg which is not home yet. */
export const doorBeforeLeg: RuleDefinition = {
  name: 'door-before-leg',
  title: 'Doors wait for the gear',
  summary:
    'After a selection a door may start to close only when its leg is locked at the end of its ' +
    'travel, up or down. A door that its leg moves is not judged. Margin: from the lock to the ' +
    'first closing motion of the door, s.',
  source: 'Order of events of door and gear sequencing; common practice, no source.',
  kind: 'order',
  limits: [],
  judge: (e) =>
    moves(e).flatMap((move) =>
      units(e).flatMap(({ unit }) =>
        unit.doors.flatMap((door) => {
          if (movesWithLeg(e, unit, door)) return [];
          const span = { from: move.start, to: move.end };
          const closing = firstSpell(e, door, 'falling', span);
          const locked = lockTime(e, unit, move.direction, span);
          // Nothing of the leg happened: only a leg that set out and is not locked is in danger.
          const way = move.direction === 'up' ? 'rising' : 'falling';
          const leg = firstSpell(e, unit.leg, way, span);
          if (locked === undefined && leg === undefined) return [];
          const found = order(locked, closing?.from, move.end);
          if (found === undefined) return [];
          return [
            raise(doorBeforeLeg, found, {
              devices: [door, unit.leg],
              severity: 'fail',
              bad:
                locked === undefined
                  ? `${door} started to close, and ${unit.leg} was never locked ${move.direction} in this move. A door that closes on a leg or wheel bends or jams it.`
                  : `${door} started to close ${seconds(-found.margin)} before ${unit.leg} was locked ${move.direction}. A door that closes on a moving leg or wheel bends or jams it.`,
              good: `${door} started to close ${seconds(found.margin)} after ${unit.leg} was locked ${move.direction}.`,
              suggestion:
                'Look at what lets oil to the door too soon: the plunger setting of its sequence valve, a leaking or sticking valve, a slow leg or a late lock.',
            }),
          ];
        }),
      ),
    ),
};
