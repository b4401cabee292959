import type { Evidence, Timing, UnitEntry } from '../define/index.js';
import { closedWhenDown, movesWithLeg } from './reading/linkage.js';
import {
  arrival,
  firstSpell,
  isWatched,
  lockedSince,
  moves,
  restingSince,
  spells,
  units,
  type Move,
} from './reading/motion.js';
import { trace, valueAt } from './reading/span.js';

/**
 * Times of every selector move for every unit, in log order; NaN for what was not reached
 * before the next move or the end. A selection that a unit already meets has no timing; without
 * a selector move in the log there is none.
 *
 * Up is finished when the leg is locked up and every door rests closed; down when the leg is
 * locked down and every door rests at one of its ends, or closed where it stood closed with the
 * gear down at the start.
 */
export function timings(e: Evidence): readonly Timing[] {
  return moves(e)
    .flatMap((move) => units(e).map(({ name, unit }) => timing(e, name, unit, move)))
    .filter((t) => t.total !== 0);
}

/** A moment at which something sets out counts as this much earlier, s: before it does. */
const BEFORE = 1e-6;

function timing(e: Evidence, name: string, unit: UnitEntry, move: Move): Timing {
  const since = lockedSince(e, unit, move.direction, move.end);
  const locked = since === undefined ? NaN : Math.max(since, move.start);
  const doors = Math.max(locked, doorsHome(e, unit, move) ?? locked);
  return {
    unit: name,
    side: unit.side,
    direction: move.direction,
    start: move.start,
    moving: setOut(e, name, unit, move),
    locked,
    doors: unit.doors.length === 0 ? locked : doors,
    total: Math.max(locked, doors) - move.start,
  };
}

/**
 * When a leg set out; NaN when it did not. One that leant on its lock before the selector was moved (a
 * leaking selector) sets out when the lock lets go, one that was under way at once.
 */
function setOut(e: Evidence, name: string, { leg }: UnitEntry, move: Move): number {
  const { direction, start, end } = move;
  const way = direction === 'up' ? 'rising' : 'falling';
  const spell = firstSpell(e, leg, way, { from: start, to: end });
  if (spell !== undefined) return spell.from;
  if (!spells(e, leg).some((s) => s.direction === way && s.from < start && s.to > start))
    return NaN;
  const goes = `travelling ${direction}`;
  const phases = e.log.filter((x) => x.kind === 'phase' && x.device === name);
  return phases.find((x) => x.to === goes && x.t >= start && x.t <= end)?.t ?? start;
}

/** When the last door of a unit was at its end; NaN when one was not, undefined without doors. */
export function doorsHome(e: Evidence, unit: UnitEntry, move: Move): number | undefined {
  const watched = unit.doors.filter((door) => isWatched(e, door));
  if (watched.length === 0) return undefined;
  return Math.max(...watched.map((door) => doorEnd(e, unit, door, move)));
}

/**
 * Doors that were home behind their locked leg and had come away again by the end of the move (their hook
 * did not hold, and nothing presses them shut any more): since when they were home, and when the first of
 * them set out again; undefined where none did.
 */
export function doorsStrayed(
  e: Evidence,
  unit: UnitEntry,
  move: Move,
): { readonly home: number; readonly gone: number } | undefined {
  const locked = lockedSince(e, unit, move.direction, move.end);
  if (locked === undefined || !Number.isNaN(doorsHome(e, unit, move) ?? 0)) return undefined;
  const away = unit.doors
    .flatMap((door) => spells(e, door).map((s) => s.from))
    .filter((t) => t > Math.max(locked, move.start) && t <= move.end)
    .sort((a, b) => a - b);
  for (const gone of away) {
    const home = doorsHome(e, unit, { ...move, end: gone - BEFORE }) ?? NaN;
    if (Number.isFinite(home)) return { home, gone };
  }
  return undefined;
}

/**
 * When the last of a unit's doors stood open for its leg to pass; NaN when one never did, undefined without
 * doors that stood about closed at the selector's move, open by themselves and close behind the leg: of those
 * that stay open, open is home.
 */
export function doorsOpened(e: Evidence, unit: UnitEntry, move: Move): number | undefined {
  const shut = unit.doors.filter(
    (door) =>
      isWatched(e, door) &&
      !movesWithLeg(e, unit, door) &&
      !mayStayOpen(e, unit, door, move) &&
      shutAt(e, door, move.start),
  );
  if (shut.length === 0) return undefined;
  const span = { from: move.start, to: move.end };
  return Math.max(...shut.map((door) => arrival(e, door, 'open', span) ?? NaN));
}

/** At rest closed, or sagging a little with nothing to hold it: nearer closed than open. */
function shutAt(e: Evidence, door: string, t: number): boolean {
  if (restingSince(e, door, 'closed', t) !== undefined) return true;
  const angle = trace(e, `${door}.angle`);
  const { travel } = e.scenario.mechanisms[door].parameters;
  return angle !== undefined && typeof travel === 'number' && valueAt(angle, t) < travel / 2;
}

/**
 * Since when a door has been at the named end, twitches left out: a leg that gives within the play
 * of its lock moves the door that hangs on it, one that nothing holds any more creeps by a hair, and
 * the swing is over all the same.
 */
function homeSince(e: Evidence, door: string, end: string, t: number): number | undefined {
  const last = spells(e, door).findLast((s) => s.from <= t);
  return last?.ending === `at ${end}` ? last.to : restingSince(e, door, end, t);
}

const mayStayOpen = (e: Evidence, unit: UnitEntry, door: string, { direction }: Move): boolean =>
  direction === 'down' && !closedWhenDown(e, unit, door);

/** Math.max passes NaN on, so one door that is not home leaves the whole unit unfinished. */
function doorEnd(e: Evidence, unit: UnitEntry, door: string, move: Move): number {
  const closed = homeSince(e, door, 'closed', move.end);
  const since =
    closed ?? (mayStayOpen(e, unit, door, move) ? homeSince(e, door, 'open', move.end) : undefined);
  return since === undefined ? NaN : Math.max(since, move.start);
}
