import type { Quantity, Timing } from '../define/index.js';
import { toDisplay, type DisplaySystem } from '../quantity/index.js';

/** A difference of two figures, signed, in the user's units: `+0.40 s`, `-1.2 mm`. */
export function signed(value: number, quantity: Quantity, system: DisplaySystem): string {
  // Events are located to the millisecond, and seconds that keep their decimals line up.
  if (quantity === 'time') return `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(3)} s`;
  const { text } = toDisplay(value, differenceOf(quantity), system);
  if (quantity === 'temperature') return temperatureStep(value, system);
  return value < 0 ? text : `+${text}`;
}

/** A difference of absolute pressures is a plain pressure. */
function differenceOf(quantity: Quantity): Quantity {
  return quantity === 'pressure' ? 'gauge-pressure' : quantity;
}

/** A step of temperature has no zero point to add. */
function temperatureStep(value: number, system: DisplaySystem): string {
  const zero = toDisplay(0, 'temperature', system);
  const step = toDisplay(value, 'temperature', system).value - zero.value;
  return `${step < 0 ? '-' : '+'}${Math.abs(step).toFixed(1)} ${zero.unit}`;
}

/** Seconds with a fixed number of decimals; a dash for what was not reached. */
export function time(t: number, decimals = 2): string {
  return Number.isFinite(t) ? t.toFixed(decimals) : '-';
}

/** How far left and right are apart for one move; NaN when either did not finish. */
export interface Difference {
  readonly direction: Timing['direction'];
  /** Selector moved, s. */
  readonly start: number;
  readonly left: string;
  readonly right: string;
  /** Right less left total, s. */
  readonly seconds: number;
}

/** Left against right for every move in which both took part. */
export function differences(timings: readonly Timing[]): readonly Difference[] {
  return timings
    .filter((l) => l.side === 'left')
    .flatMap((l) =>
      timings
        .filter((r) => r.side === 'right' && r.start === l.start)
        .map((r) => ({
          direction: l.direction,
          start: l.start,
          left: l.unit,
          right: r.unit,
          seconds: r.total - l.total,
        })),
    );
}
