/** What can be timed of a swing, in words; what can be tapped while it runs, and the key that does the same. */
import type {
  ExpectedSwing,
  ObservedEvent,
  ObservedSwing,
  TimedEvent,
} from '../worker/sheet-message.js';
import type { Picture, UnitFacts } from '../worker/message.js';
import { GEAR, sameEvent } from './observed.js';
import { plain } from './sentence.js';

export const EVENT_WORD: Readonly<Record<TimedEvent, string>> = {
  unlocked: 'unlocked',
  opened: 'doors open',
  moving: 'moves',
  locked: 'locked',
  doors: 'doors home',
  light: 'light on',
  total: 'all home',
};

export const wordOf = ({ unit, event }: ObservedEvent): string =>
  unit === GEAR ? 'whole gear home' : `${plain(unit)} ${EVENT_WORD[event]}`;

/** Only where a sound swing comes to them on this way. */
const RARE: readonly TimedEvent[] = ['opened', 'light'];

/** Moments of one unit that a sound swing is known by. */
export function momentsOf<E extends TimedEvent>(
  events: readonly E[],
  { name, doors }: Pick<UnitFacts, 'name' | 'doors'>,
  expected: ExpectedSwing | undefined,
): readonly E[] {
  return events.filter((event) => {
    if (event === 'doors') return doors.length > 0;
    return !RARE.includes(event) || expected?.times[name]?.[event] !== undefined;
  });
}

const WRITTEN = ['unlocked', 'opened', 'moving', 'locked', 'doors', 'light'] as const;

/** All that a row can have a time of, and what it has: unit by unit, the whole gear last. */
export function timedEvents(
  { units }: Picture,
  expected: ExpectedSwing | undefined,
  { times, never = [], order }: ObservedSwing,
): readonly ObservedEvent[] {
  return [
    ...units.flatMap((unit) => {
      const own = momentsOf(WRITTEN, unit, expected);
      const noted = (e: ObservedEvent): boolean =>
        times[e.unit]?.[e.event] !== undefined || [...never, ...order].some(sameEvent(e));
      return WRITTEN.map((event) => ({ unit: unit.name, event })).filter(
        (e) => own.includes(e.event) || noted(e),
      );
    }),
    { unit: GEAR, event: 'total' },
  ];
}

export interface TapKey {
  readonly unit: string;
  readonly event: TimedEvent;
  /** Empty where there are more units than keys. */
  readonly key: string;
}

/** Row by row, as on a keypad: all units move, all lock, all doors; the others on the letters beneath. */
const TAPPED = ['opened', 'moving', 'locked', 'doors', 'light'] as const;
const LETTERS: Readonly<Partial<Record<TimedEvent, string>>> = {
  opened: 'qwertyuiop',
  light: 'asdfghjkl',
};

export function tapKeys(
  { units }: Picture,
  expected: ExpectedSwing | undefined,
): readonly TapKey[] {
  return TAPPED.flatMap((event, row) =>
    units.flatMap((unit, column) => {
      if (momentsOf([event], unit, expected).length === 0) return [];
      const number = (row - 1) * units.length + column + 1;
      const key = event in LETTERS ? LETTERS[event]?.[column] : number <= 9 ? String(number) : '';
      return [{ unit: unit.name, event, key: key ?? '' }];
    }),
  );
}
