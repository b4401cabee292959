/** A stopwatch with several hands: started at the selector, tapped at each event. Knows no clock. */
import type { ObservedSwing, SwingDirection, TimedEvent } from '../worker/sheet-message.js';

/** Seconds that never jump, from any start that survives a reload. */
export type Clock = () => number;

export interface Tap {
  readonly unit: string;
  readonly event: TimedEvent;
  /** s from the selector. */
  readonly at: number;
}

export interface Watch {
  readonly direction: SwingDirection;
  /** The clock when the selector moved, s. */
  readonly started: number;
  /** In the order they were made. */
  readonly taps: readonly Tap[];
}

/** A watch left running is forgotten; no swing takes as long, s. */
export const LONGEST = 3600;

export function startWatch(direction: SwingDirection, now: number): Watch {
  return { direction, started: now, taps: [] };
}

/** No hand is sharper than this, s. */
const hundredths = (t: number): number => Math.round(t * 100) / 100;

export function tapOf(watch: Watch, unit: string, event: TimedEvent): Tap | undefined {
  return watch.taps.find((t) => t.unit === unit && t.event === event);
}

/** The first tap counts; to correct it, undo it. */
export function tap(watch: Watch, unit: string, event: TimedEvent, now: number): Watch {
  if (tapOf(watch, unit, event) !== undefined) return watch;
  const at = hundredths(Math.max(now - watch.started, 0));
  return { ...watch, taps: [...watch.taps, { unit, event, at }] };
}

export function undoTap(watch: Watch): Watch {
  return { ...watch, taps: watch.taps.slice(0, -1) };
}

/** What was tapped, as a row of the sheet. */
export function swingOf({ direction, taps }: Watch, error: number): ObservedSwing {
  const times: Record<string, Partial<Record<TimedEvent, { at: number; error: number }>>> = {};
  for (const { unit, event, at } of taps) (times[unit] ??= {})[event] = { at, error };
  return {
    direction,
    conditions: {},
    times,
    order: taps.filter((t) => t.event !== 'total').map(({ unit, event }) => ({ unit, event })),
    gauges: {},
    remarks: {},
    recordings: [],
    note: '',
  };
}
