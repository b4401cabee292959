/** Times of an observation sheet in the words of the log, so that they can be laid over the run on show. */
import type { ObservedSwing, SwingDirection, TimedEvent } from '../worker/sheet-message.js';
import type { LogEntry, Picture } from '../worker/message.js';
import { timeable } from './measured.js';
import type { MeasuredTime } from './measured.js';
import { GEAR } from './observed.js';

/** The operator's deed that starts a swing, as `MeasuredTime` names it; undefined when the run has none. */
function deedOf(picture: Picture, direction: SwingDirection): string | undefined {
  const device = (name: string) => picture.devices.find((d) => d.name === name);
  const entry = picture.log.find((e) => {
    if (e.kind !== 'operator') return false;
    return direction === 'blow-down'
      ? device(e.device)?.role === 'blow-down' && e.to !== 'closed'
      : device(e.device)?.lever === true && e.to === direction;
  });
  return entry === undefined ? undefined : `${entry.device} ${entry.to}`;
}

/** Words of a unit's phase in which its lock holds, and of its way there. */
const HELD = {
  up: ['up and locked', 'up and closed', 'doors closing'],
  down: ['down and locked'],
} as const;

type Named = Pick<MeasuredTime, 'on' | 'event'>;

/** What a moment is called in the log; the usual word where the run on show does not have it. */
function named(
  log: readonly LogEntry[],
  picture: Picture,
  unit: string,
  moment: TimedEvent,
  way: 'up' | 'down',
): Named | undefined {
  const find = (on: string, words: readonly string[]): Named => {
    const entry = log.find((e) => e.device === on && words.includes(e.to));
    return { on, event: entry?.to ?? words[0] ?? '' };
  };
  if (unit === GEAR)
    return moment === 'total'
      ? find(GEAR, way === 'up' ? ['up and closed', 'up and locked'] : HELD.down)
      : undefined;
  if (moment === 'unlocked') return find(unit, ['unlocking']);
  if (moment === 'moving') return find(unit, [`travelling ${way}`]);
  if (moment === 'locked') return find(unit, HELD[way]);
  if (moment === 'total') return undefined;
  const { doors = [], lights } = picture.units.find((u) => u.name === unit) ?? {};
  if (moment === 'light') {
    const made = (lights?.[way] ?? []).map((on) => find(on, ['made']));
    const when = ({ on }: Named): number =>
      log.find((e) => e.device === on && e.to === 'made')?.t ?? Infinity;
    return made.sort((a, b) => when(b) - when(a))[0];
  }
  const ends = doors.map((door) => {
    const is = (end: string) => log.find((e) => e.device === door && e.to === end);
    return moment === 'opened' ? is('at open') : (is('at closed') ?? is('at open'));
  });
  const last = ends.reduce((a, b) => ((b?.t ?? -1) > (a?.t ?? -1) ? b : a), undefined);
  const door = last?.device ?? doors[0];
  if (door === undefined) return undefined;
  return { on: door, event: last?.to ?? (moment === 'opened' ? 'at open' : 'at closed') };
}

/** A swing's times as the order chart takes them; none when the run on show has no such movement. */
export function measuredOf(swing: ObservedSwing, picture: Picture): MeasuredTime[] {
  const since = deedOf(picture, swing.direction);
  if (since === undefined) return [];
  const way = swing.direction === 'up' ? 'up' : 'down';
  const log = timeable(picture, since);
  return Object.entries(swing.times).flatMap(([unit, times]) =>
    (Object.keys(times) as TimedEvent[]).flatMap((moment) => {
      const time = times[moment];
      const name = named(log, picture, unit, moment, way);
      return time === undefined || name === undefined
        ? []
        : [{ ...name, since, time: time.at, error: time.error }];
    }),
  );
}

/** Readings with others put in the place of those of the same. */
export function merged(
  before: readonly MeasuredTime[],
  put: readonly MeasuredTime[],
): readonly MeasuredTime[] {
  const key = (m: MeasuredTime): string => JSON.stringify([m.on, m.event, m.since]);
  const fresh = new Set(put.map(key));
  return [...before.filter((m) => !fresh.has(key(m))), ...put];
}
