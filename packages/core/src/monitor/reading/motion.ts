import type { Evidence, LogEntry, UnitEntry } from '../../define/index.js';
import { endOf, isStart, once, trace, valueAt, type Span } from './span.js';

export type Direction = 'up' | 'down';

/** One selection of the gear: from the lever's move to the next opposite one or the end. */
export interface Move {
  readonly direction: Direction;
  /** What moves it: oil, by the lever, or gas, by the blow-down handle. */
  readonly by: 'oil' | 'gas';
  readonly start: number;
  readonly end: number;
}

/** A stretch in which a mechanism moves one way, pauses included. */
export interface Spell {
  readonly direction: 'rising' | 'falling';
  readonly from: number;
  readonly to: number;
  /** The motion word it ended with: `at up`, `held`, `falling` ...; empty when the run ended first. */
  readonly ending: string;
}

/** Less than this part of its range is a twitch (a bounce, a sag on the hook), not a motion. */
const TWITCH = 0.02;
/** Nearer than this to an end, rad, a mechanism without motion entries counts as resting there. */
const AT_END = 0.02;

/** Words for the two ends of travel by role, low end first. */
export function ends(e: Evidence, mechanism: string): readonly [string, string] {
  return e.role(mechanism) === 'door' ? ['closed', 'open'] : ['down', 'up'];
}

/** Units with their names. */
export function units(e: Evidence): readonly { readonly name: string; readonly unit: UnitEntry }[] {
  return Object.entries(e.scenario.units).map(([name, unit]) => ({ name, unit }));
}

/**
 * Gear selections, in order: the operator's actions with the words up and down (on a selector, a
 * controller's lever, a power pack), or the selector's own mode where no action is logged; and the
 * pull of a blow-down handle, which sends the gear down whatever was selected, until the lever
 * goes up.
 */
export function moves(e: Evidence): readonly Move[] {
  return once(e, 'moves', () => movesOf(e));
}

function movesOf(e: Evidence): readonly Move[] {
  const levers = e.log.filter((x) => x.to === 'up' || x.to === 'down');
  const actions = levers.filter((x) => x.kind === 'operator');
  const used =
    actions.length > 0
      ? actions
      : levers.filter((x) => x.kind === 'mode' && e.role(x.device) === 'selector');
  // The same way again (after neutral) carries on the same move.
  const selected = used.filter((x, i) => i === 0 || x.to !== used[i - 1].to);
  const pull = firstPull(e);
  const starts = [
    ...selected.map((x) => ({ direction: x.to as Direction, by: 'oil' as const, t: x.t })),
    ...(pull === undefined ? [] : [{ direction: 'down' as const, by: 'gas' as const, t: pull.t }]),
  ]
    .sort((a, b) => a.t - b.t)
    // DOWN selected after the handle is part of the same lowering: gas goes on moving the gear.
    .filter(({ direction, by }, i, all) => {
      return !(by === 'oil' && direction === 'down' && i > 0 && all[i - 1].by === 'gas');
    });
  return starts.map(({ direction, by, t }, i) => ({
    direction,
    by,
    start: t,
    end: i + 1 < starts.length ? starts[i + 1].t : endOf(e),
  }));
}

/** The first pull of a blow-down handle (half or fully). */
export function firstPull(e: Evidence): LogEntry | undefined {
  return e.log.find(
    (x) => x.kind === 'operator' && e.role(x.device) === 'blow-down' && x.to !== 'closed',
  );
}

/**
 * The run cut at every gear selection, `from` inclusive and `to` exclusive: from the start to
 * the first, from one to the next, and the last for good.
 */
export function stretches(e: Evidence): readonly Span[] {
  const cuts = moves(e).map((m) => m.start);
  return [0, ...cuts].map((from, i) => ({ from, to: i < cuts.length ? cuts[i] : Infinity }));
}

function motions(e: Evidence, mechanism: string): readonly LogEntry[] {
  return once(e, `motions ${mechanism}`, () =>
    e.log.filter((x) => x.device === mechanism && x.kind === 'motion'),
  );
}

/** Real motions of a mechanism, twitches left out (without an angle channel every motion counts). */
export function spells(e: Evidence, mechanism: string): readonly Spell[] {
  return once(e, `spells ${mechanism}`, () => spellsOf(e, mechanism));
}

function spellsOf(e: Evidence, mechanism: string): readonly Spell[] {
  const log = motions(e, mechanism);
  const angle = trace(e, `${mechanism}.angle`);
  let [low, high] = [Infinity, -Infinity];
  for (const v of angle?.v ?? []) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  const range = angle === undefined ? 0 : high - low;
  const out: Spell[] = [];
  let i = 0;
  while (i < log.length) {
    const way = log[i].to;
    if (way !== 'rising' && way !== 'falling') {
      i++;
      continue;
    }
    const origin = log[i].t;
    let from = NaN;
    let to = origin;
    // Stick-slip is one motion: go on while it is held or moves the same way.
    while (i < log.length && (log[i].to === way || log[i].to === 'held')) {
      const start = log[i].t;
      to = i + 1 < log.length ? log[i + 1].t : endOf(e);
      const travel =
        angle === undefined ? Infinity : Math.abs(valueAt(angle, to) - valueAt(angle, origin));
      if (Number.isNaN(from) && log[i].to === way && travel >= TWITCH * range) from = start;
      i++;
    }
    if (!Number.isNaN(from) && to > from) {
      out.push({ direction: way, from, to, ending: i < log.length ? log[i].to : '' });
    }
  }
  return out;
}

/** First real motion one way that begins in a span. */
export function firstSpell(
  e: Evidence,
  mechanism: string,
  direction: Spell['direction'],
  span: Span,
): Spell | undefined {
  return spells(e, mechanism).find(
    (s) => s.direction === direction && s.from >= span.from && s.from <= span.to,
  );
}

/** Since when a mechanism has rested at the named end at time `t`; undefined when it does not (or nobody knows). */
export function restingSince(
  e: Evidence,
  mechanism: string,
  end: string,
  t: number,
): number | undefined {
  const log = motions(e, mechanism);
  const word = `at ${end}`;
  const last = log.filter((x) => x.t <= t).pop();
  if (last !== undefined) return last.to === word ? last.t : undefined;
  if (log.length > 0) return log[0].from === word ? 0 : undefined;
  const angle = trace(e, `${mechanism}.angle`);
  if (angle === undefined || end !== ends(e, mechanism)[0]) return undefined;
  return Math.abs(valueAt(angle, t)) < AT_END ? 0 : undefined;
}

/** True when log or traces say anything about where a mechanism is. */
export function isWatched(e: Evidence, mechanism: string): boolean {
  return motions(e, mechanism).length > 0 || trace(e, `${mechanism}.angle`) !== undefined;
}

/** First arrival at the named end within a span. */
export function arrival(
  e: Evidence,
  mechanism: string,
  end: string,
  span: Span,
): number | undefined {
  return motions(e, mechanism).find(
    (x) => x.to === `at ${end}` && !isStart(x) && x.t >= span.from && x.t <= span.to,
  )?.t;
}

/** The lock that holds a unit's leg at the end a move goes to, if the unit has one. */
export function lockOf(unit: UnitEntry, direction: Direction): string | undefined {
  return direction === 'up' ? unit.uplock : unit.downlock;
}

/** Words of a lock that holds: `engaged`, or, of one inside an actuator, `locked extended` and the like. */
export function holding(word: string): boolean {
  return word === 'engaged' || word.startsWith('locked ');
}

/** First time within a span at which the leg is locked (or, without a lock, at its end). */
export function lockTime(
  e: Evidence,
  unit: UnitEntry,
  direction: Direction,
  span: Span,
): number | undefined {
  const lock = lockOf(unit, direction);
  if (lock === undefined) return arrival(e, unit.leg, direction, span);
  return e.log.find(
    (x) =>
      x.device === lock &&
      x.kind === 'mode' &&
      holding(x.to) &&
      !isStart(x) &&
      x.t >= span.from &&
      x.t <= span.to,
  )?.t;
}

/** Since when the leg has been locked at time `t`; undefined when it is not. */
export function lockedSince(
  e: Evidence,
  unit: UnitEntry,
  direction: Direction,
  t: number,
): number | undefined {
  const lock = lockOf(unit, direction);
  const log = lock === undefined ? [] : e.log.filter((x) => x.device === lock && x.kind === 'mode');
  if (log.length === 0) {
    // A lock that was never mentioned: where the leg rests tells, if it has rested there from the start.
    const since = restingSince(e, unit.leg, direction, t);
    return lock === undefined || since === 0 ? since : undefined;
  }
  const last = log.filter((x) => x.t <= t).pop();
  // One lock for both ends: where the leg rests tells which of them it holds.
  if (unit.uplock === unit.downlock && restingSince(e, unit.leg, direction, t) === undefined)
    return undefined;
  if (last !== undefined) return holding(last.to) ? last.t : undefined;
  return holding(log[0].from) ? 0 : undefined;
}

/** Spans in which any of the named mechanisms moves. */
export function travelling(e: Evidence, mechanisms: readonly string[]): readonly Span[] {
  return mechanisms.flatMap((m) => spells(e, m)).map(({ from, to }) => ({ from, to }));
}
