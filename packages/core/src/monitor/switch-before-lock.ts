import type { RuleDefinition } from '../define/index.js';
import { order } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { allMade, legSwitches } from './reading/light.js';
import { lockedSince, lockOf, moves, units } from './reading/motion.js';

/** A lock may drop in so long after its leg has come to rest on its switch, s: nobody sees it; own choice. */
const DROPS_IN = 0.2;

/** A switch that says a leg is home before its lock is. */
export const switchBeforeLock: RuleDefinition = {
  name: 'switch-before-lock',
  title: 'Lights wait for the lock',
  summary:
    'The switches that a leg makes at the end it was sent to are made only when its lock holds: what ' +
    'they light tells of a lock, and what waits for them may go on. Margin: from a fifth of a second ' +
    'before the lock (it drops in as the leg comes to rest) to the last of these switches, s.',
  source:
    'New Zealand TAIC inquiry into a nose leg, 30 September 2010; UK AAIB Bulletin 7/2017: lights that told of no lock.',
  kind: 'order',
  limits: [],
  judge: (e) =>
    moves(e).flatMap((move) =>
      units(e).flatMap(({ unit }) => {
        const { leg } = unit;
        const lock = lockOf(unit, move.direction);
        const switches = legSwitches(e.scenario, unit, move.direction);
        if (lock === undefined) return [];
        const made = allMade(e, switches, move);
        const locked = lockedSince(e, unit, move.direction, move.end);
        const found = order(
          locked === undefined ? undefined : locked - DROPS_IN,
          Number.isNaN(made) ? undefined : made,
          move.end,
        );
        if (found === undefined) return [];
        const names = switches.join(' and ');
        return [
          raise(switchBeforeLock, found, {
            devices: [...switches, lock],
            severity: locked === undefined ? 'fail' : 'caution',
            bad:
              locked === undefined
                ? `${names} said that ${leg} was ${move.direction}, and ${lock} did not hold it. The light tells of a lock that is not made; the leg can fold or fall.`
                : `${names} said that ${leg} was ${move.direction} ${seconds(DROPS_IN - found.margin)} before ${lock} held it: for so long the light told of a lock that was not made.`,
            good: `${names} said that ${leg} was ${move.direction} only when ${lock} held it, or just about to.`,
            suggestion:
              'Look at the lock itself, never at its light alone: is it home and over centre? Then set the switch by the approved procedure. Keep clear of a leg that is not locked.',
          }),
        ];
      }),
    ),
};
