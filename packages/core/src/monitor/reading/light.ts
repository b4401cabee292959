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

/** So long a light must stay on to be seen as on, s (common practice, no source). */
const SEEN = 2;

/**
 * When the light of a unit came on in a move for good or, where doors creep and it goes out again, for long enough to
 * be seen; NaN when it did not, undefined without one for that end.
 */
export function lightOn(e: Evidence, unit: UnitEntry, move: Move): number | undefined {
  const switches = lightSwitches(e, unit, move.direction);
  const forGood = allMade(e, switches, move);
  if (forGood === undefined || !Number.isNaN(forGood)) return forGood;
  const made = switches.map((name) => spansMade(e, name, move));
  const stays = (from: number): boolean =>
    made.every((spans) =>
      spans.some(([a, b]) => a <= from && b >= Math.min(from + SEEN, move.end)),
    );
  const starts = made.flatMap((spans) => spans.map(([a]) => a));
  return starts.sort((a, b) => a - b).find(stays) ?? NaN;
}

/** From when to when a contact was made in a move; without end where it stays so. */
function spansMade(e: Evidence, name: string, { start, end }: Move): [number, number][] {
  const changes = e.log.filter((x) => x.device === name && x.kind === 'mode' && x.t <= end);
  const before = changes.findLast((x) => x.t <= start);
  // A contact that never changes is open, unless it is stuck.
  const stuck = changes.length === 0 && e.scenario.components[name].parameters.stuck === 'made';
  const spans: [number, number][] = stuck || before?.to === 'made' ? [[start, Infinity]] : [];
  for (const { t, to } of changes.filter((x) => x.t > start)) {
    if (to === 'made') spans.push([t, Infinity]);
    else if (spans.length > 0) spans[spans.length - 1][1] = t;
  }
  return spans;
}

/** When the last of some switches was made for good in a move; NaN when one was not, undefined without any. */
export function allMade(e: Evidence, switches: readonly string[], move: Move): number | undefined {
  if (switches.length === 0) return undefined;
  return Math.max(...switches.map((name) => madeSince(e, name, move)));
}

function madeSince(e: Evidence, name: string, move: Move): number {
  const [from, to] = spansMade(e, name, move).at(-1) ?? [NaN, NaN];
  return to === Infinity ? from : NaN;
}
