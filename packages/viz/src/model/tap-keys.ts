/** What can be timed of a swing, in words; what can be tapped while it runs, and the key that does the same. */
import type { ObservedEvent, TimedEvent } from '../worker/sheet-message.js';
import type { Picture } from '../worker/message.js';
import { GEAR } from './observed.js';
import { plain } from './sentence.js';

export const EVENT_WORD: Readonly<Record<TimedEvent, string>> = {
  unlocked: 'unlocked',
  moving: 'moves',
  locked: 'locked',
  doors: 'doors home',
  total: 'all home',
};

export const wordOf = ({ unit, event }: ObservedEvent): string =>
  unit === GEAR ? 'whole gear home' : `${plain(unit)} ${EVENT_WORD[event]}`;

const WRITTEN = ['unlocked', 'moving', 'locked', 'doors'] as const;

/** All that a row can have a time of: unit by unit, the whole gear last. */
export function timedEvents({ units }: Picture): readonly ObservedEvent[] {
  return [
    ...units.flatMap(({ name: unit, doors }) =>
      WRITTEN.filter((e) => e !== 'doors' || doors.length > 0).map((event) => ({ unit, event })),
    ),
    { unit: GEAR, event: 'total' },
  ];
}

export interface TapKey {
  readonly unit: string;
  readonly event: TimedEvent;
  /** Empty where the keys 1 to 9 are used up. */
  readonly key: string;
}

/** Row by row, as on a keypad: all units move, all lock, all doors. */
const TAPPED = ['moving', 'locked', 'doors'] as const;

export function tapKeys(picture: Picture): readonly TapKey[] {
  const { units } = picture;
  return TAPPED.flatMap((event, row) =>
    units.flatMap((u, column) => {
      const number = row * units.length + column + 1;
      if (event === 'doors' && u.doors.length === 0) return [];
      return [{ unit: u.name, event, key: number <= 9 ? String(number) : '' }];
    }),
  );
}
