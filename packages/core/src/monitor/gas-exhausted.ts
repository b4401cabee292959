import type { Evidence, RuleDefinition, UnitEntry } from '../define/index.js';
import {
  blowDown,
  bottlesAt,
  fedBy,
  gaugesOf,
  legActuators,
  lockedDown,
} from './reading/blow-down.js';
import { raise } from './reading/flag.js';

/** Shares of the bottle's pressure that count as all of it, and as none. */
const WHOLE = 0.9;
const LITTLE = 0.35;
/** A bottle is empty below this share of its charge, or this gauge pressure, Pa: less than seals take. */
const EMPTY = 0.05;
const NEXT_TO_NONE = 2e5;

/** A bottle that has given all it has before the legs are locked. */
export const gasExhausted: RuleDefinition = {
  name: 'gas-exhausted',
  title: 'Gas enough for the last lock',
  summary:
    'No leg is left unlocked with all that the bottle has left on its actuators and its up side vented, ' +
    'or with the bottle empty. Margin: gauge pressure of the bottle at the last lock, or minus what it has lost, Pa.',
  source: 'Purpose of the emergency test; common practice, no source.',
  kind: 'limit',
  limits: [],
  judge: (e) => {
    const move = blowDown(e);
    if (move === undefined) return [];
    const legs = lockedDown(e, move);
    const hanging = legs.filter(({ at }) => at === undefined);
    const last = Math.max(move.start, ...legs.map(({ at }) => at ?? move.end));
    const before = bottlesAt(e, move.start);
    return bottlesAt(e, last).flatMap(({ name, gauge }) => {
      const charge = before.find((b) => b.name === name)?.gauge ?? gauge;
      const empty = gauge <= Math.max(EMPTY * charge, NEXT_TO_NONE);
      // A bottle whose line has parted feeds no leg any more: then it is every leg's.
      const adrift = !legs.some(({ unit }) => feeds(e, name, unit));
      const spent = hanging.filter(({ unit }) =>
        empty ? adrift || feeds(e, name, unit) : reached(e, unit, gauge, last),
      );
      if (hanging.length > 0 && spent.length === 0) return [];
      const margin = spent.length > 0 ? Math.min(gauge - charge, -1) : gauge;
      const found = { margin, quantity: 'gauge-pressure', from: move.start, to: last } as const;
      const names = spent.map((leg) => leg.name).join(', ');
      return [
        raise(gasExhausted, found, {
          devices: [name, ...spent.map(({ unit }) => unit.leg)],
          severity: 'fail',
          bad: empty
            ? `The bottle was empty before ${names} had locked: its gas went elsewhere, or there was next to none.`
            : `All that was left in the bottle stood on ${names} and did not lock it: the gas had nothing more to give.`,
          good: 'The bottle still had pressure when the last leg locked.',
          suggestion:
            'Look at charge and temperature, at leaks, and at what the legs had to push: a jam, a lock. Keep clear: what is stuck on gas lets go at once.',
        }),
      ];
    });
  },
};

/** Whether the bottle's whole pressure stands on one side of a leg's actuators and next to none on the other. */
function reached(e: Evidence, unit: UnitEntry, bottle: number, t: number): boolean {
  const gauges = legActuators(e, unit).flatMap((name) =>
    gaugesOf(e, name, t).map(({ gauge }) => gauge),
  );
  return Math.max(...gauges) > WHOLE * bottle && Math.min(...gauges) < LITTLE * bottle;
}

/** Whether a bottle is there for a leg. */
function feeds(e: Evidence, bottle: string, unit: UnitEntry): boolean {
  const fed = fedBy(e, bottle);
  return legActuators(e, unit).some((name) =>
    Object.values(e.scenario.components[name].ports).some((node) => fed.has(node)),
  );
}
