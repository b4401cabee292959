/** An observation sheet being filled in: pure changes of it, and how it compares with what is expected. */
import type {
  ExpectedSwing,
  Expectation,
  GaugeMoment,
  ObservationConditions,
  ObservationSheet,
  ObservedSwing,
  ObservedTime,
  Remark,
  SwingDirection,
  TimedEvent,
} from '../worker/sheet-message.js';

/** The whole gear among the units, as core calls it. */
export const GEAR = 'gear';

export function blankSheet(
  head: Pick<ObservationSheet, 'aircraft' | 'scenario' | 'card' | 'date'>,
): ObservationSheet {
  return { ...head, by: '', readingError: 0.2, conditions: {}, swings: [], note: '' };
}

export function blankSwing(direction: SwingDirection): ObservedSwing {
  return {
    direction,
    conditions: {},
    times: {},
    order: [],
    gauges: {},
    remarks: {},
    recordings: [],
    note: '',
  };
}

/** A map without the key for undefined; parts that become empty go. */
function put<T>(
  map: Readonly<Record<string, T>>,
  key: string,
  value: T | undefined,
): Record<string, T> {
  const { [key]: _, ...rest } = map;
  const empty =
    value === undefined || (typeof value === 'object' && Object.keys(value as object).length === 0);
  return empty ? rest : { ...map, [key]: value };
}

export function changeSwing(
  sheet: ObservationSheet,
  row: number,
  change: (swing: ObservedSwing) => ObservedSwing,
): ObservationSheet {
  return { ...sheet, swings: sheet.swings.map((s, i) => (i === row ? change(s) : s)) };
}

/** `at` undefined: not timed. What was written by hand is in no order of events. */
export function withTime(
  swing: ObservedSwing,
  unit: string,
  event: TimedEvent,
  time: ObservedTime | undefined,
): ObservedSwing {
  const of = put(swing.times[unit] ?? {}, event, time);
  const order =
    time === undefined
      ? swing.order.filter((e) => e.unit !== unit || e.event !== event)
      : swing.order;
  return { ...swing, times: put(swing.times, unit, of), order };
}

export function withRemark(
  swing: ObservedSwing,
  unit: string,
  remark: Remark,
  on: boolean,
): ObservedSwing {
  const others = (swing.remarks[unit] ?? []).filter((r) => r !== remark);
  return { ...swing, remarks: put(swing.remarks, unit, on ? [...others, remark] : others) };
}

export function withGauge(
  swing: ObservedSwing,
  node: string,
  moment: GaugeMoment,
  value: number | undefined,
): ObservedSwing {
  const readings = put(swing.gauges[node] ?? {}, moment, value);
  return { ...swing, gauges: put(swing.gauges, node, readings) };
}

export function withCondition<K extends keyof ObservationConditions>(
  sheet: ObservationSheet,
  key: K,
  value: ObservationConditions[K] | undefined,
): ObservationSheet {
  const conditions = put<unknown>(sheet.conditions as Record<string, unknown>, key, value);
  return { ...sheet, conditions };
}

/** The movement of the sound run that a swing is held against. */
export function expectedOf(
  expectation: Expectation | undefined,
  direction: SwingDirection,
): ExpectedSwing | undefined {
  return expectation?.swings.find((s) => s.direction === direction);
}

export function limitOf(
  expectation: Expectation | undefined,
  direction: SwingDirection,
): number | undefined {
  return expectation?.limits[direction === 'blow-down' ? 'blowDown' : direction];
}

/** Measured less expected, s. */
export interface Comparison {
  readonly seconds: number;
  readonly is: 'as expected' | 'later' | 'earlier';
}

export function compare(measured: ObservedTime, expected: number): Comparison {
  const seconds = measured.at - expected;
  const is =
    Math.abs(seconds) <= measured.error ? 'as expected' : seconds > 0 ? 'later' : 'earlier';
  return { seconds, is };
}

/** `0.4 s later than expected`. */
export function comparisonWords({ seconds, is }: Comparison): string {
  return is === 'as expected' ? is : `${Math.abs(seconds).toFixed(2)}\u00a0s ${is} than expected`;
}
