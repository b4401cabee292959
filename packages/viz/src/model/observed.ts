/** An observation sheet being filled in: pure changes of it, and how it compares with what is expected. */
import type {
  ExpectedSwing,
  Expectation,
  GaugeMoment,
  ObservationConditions,
  ObservationSheet,
  ObservedEvent,
  ObservedSwing,
  ObservedTime,
  Remark,
  SupplyReading,
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

export function withSupply(
  swing: ObservedSwing,
  device: string,
  reading: SupplyReading,
  value: number | undefined,
): ObservedSwing {
  const readings = put(swing.supply?.[device] ?? {}, reading, value);
  return { ...swing, supply: put(swing.supply ?? {}, device, readings) };
}

export const sameEvent =
  (a: ObservedEvent) =>
  (b: ObservedEvent): boolean =>
    a.unit === b.unit && a.event === b.event;

const without = (
  events: readonly ObservedEvent[] | undefined,
  event: ObservedEvent,
): readonly ObservedEvent[] => (events ?? []).filter((e) => !sameEvent(event)(e));

/** What never came has no time and stands in no order. */
export function withNever(swing: ObservedSwing, event: ObservedEvent, on: boolean): ObservedSwing {
  const never = without(swing.never, event);
  if (!on) return { ...swing, never };
  return { ...withTime(swing, event.unit, event.event, undefined), never: [...never, event] };
}

/** As the last so far, or in the order no more. */
export function withOrder(swing: ObservedSwing, event: ObservedEvent, on: boolean): ObservedSwing {
  const order = without(swing.order, event);
  if (!on) return { ...swing, order };
  return { ...swing, never: without(swing.never, event), order: [...order, event] };
}

/** Of the sheet, or of one row. */
export function withCondition<
  T extends { readonly conditions: ObservationConditions },
  K extends keyof ObservationConditions,
>(holder: T, key: K, value: ObservationConditions[K] | undefined): T {
  const conditions = put<unknown>(holder.conditions as Record<string, unknown>, key, value);
  return { ...holder, conditions };
}

/** The movement of the sound run that a swing is held against. */
export function expectedOf(
  expectation: Expectation | undefined,
  direction: SwingDirection,
): ExpectedSwing | undefined {
  return expectation?.swings.find((s) => s.direction === direction);
}

/**
 * The same for a row, which may have been made under other conditions than the rest of the sheet: nothing is
 * expected of it then. How long it was left afterwards does not matter to its times.
 */
export function dueOf(
  expectation: Expectation | undefined,
  { direction, conditions }: Pick<ObservedSwing, 'direction' | 'conditions'>,
): ExpectedSwing | undefined {
  const otherwise = Object.keys(conditions).some((key) => key !== 'leftFor');
  return otherwise ? undefined : expectedOf(expectation, direction);
}

/** The gauge's place where neither the row nor the sound run tells. */
const GAUGE = 'pressure';

/** Where the gauge of a row is that stands first. */
export function gaugeOf(swing: ObservedSwing, expectation: Expectation | undefined): string {
  const expected = expectedOf(expectation, swing.direction)?.gauges ?? {};
  const [usual] = Object.keys(expected);
  if (usual !== undefined && usual in swing.gauges) return usual;
  return Object.keys(swing.gauges)[0] ?? usual ?? GAUGE;
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
