/** What the lights of the gear say: they show switches, and switches look at legs and doors, not at locks. */
import type { Evidence, Scenario, UnitEntry } from '../../define/index.js';
import { closedWhenDown } from './linkage.js';
import type { Direction, Move } from './motion.js';

/** Switches by where they are made: what has an angle and a side of it, and watches one mechanism. */
function madeAt({ components }: Scenario, mechanism: string, angle: number): readonly string[] {
  return Object.keys(components).filter((name) => {
    const { links, parameters } = components[name];
    const { at, side } = parameters;
    if (links.mechanism?.to !== mechanism || typeof at !== 'number') return false;
    return side === 'below' ? angle < at : side === 'above' && angle > at;
  });
}

/** The switches that a unit's leg makes at one end; none where no light tells of that end. */
export function legSwitches(
  scenario: Scenario,
  { leg }: UnitEntry,
  direction: Direction,
): readonly string[] {
  const { travel } = scenario.mechanisms[leg].parameters;
  return madeAt(scenario, leg, direction === 'up' ? Number(travel) : 0);
}

/** What a unit's light for one end is fed by: its leg's switches there, and those of doors that belong closed then. */
export function lightSwitches(
  e: Evidence,
  unit: UnitEntry,
  direction: Direction,
): readonly string[] {
  const own = legSwitches(e.scenario, unit, direction);
  if (own.length === 0) return [];
  const shut = unit.doors.filter((door) => direction === 'up' || closedWhenDown(e, unit, door));
  return [...own, ...shut.flatMap((door) => madeAt(e.scenario, door, 0))];
}

/** When the light of a unit came on for good in a move; NaN when it did not, undefined without one for that end. */
export const lightOn = (e: Evidence, unit: UnitEntry, move: Move): number | undefined =>
  allMade(e, lightSwitches(e, unit, move.direction), move);

/** When the last of some switches was made for good in a move; NaN when one was not, undefined without any. */
export function allMade(e: Evidence, switches: readonly string[], move: Move): number | undefined {
  if (switches.length === 0) return undefined;
  return Math.max(...switches.map((name) => madeSince(e, name, move)));
}

function madeSince(e: Evidence, name: string, { start, end }: Move): number {
  const last = e.log.findLast((x) => x.device === name && x.kind === 'mode' && x.t <= end);
  // A contact that never changes is open, unless it is stuck.
  if (last === undefined)
    return e.scenario.components[name].parameters.stuck === 'made' ? start : NaN;
  return last.to === 'made' ? Math.max(last.t, start) : NaN;
}
