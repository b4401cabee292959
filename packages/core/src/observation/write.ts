import { stringify } from 'yaml';
import type { Quantity } from '../define/parameter.js';
import { displayUnit, inUnit, parseQuantity, type DisplaySystem } from '../quantity/index.js';
import { kebab } from '../scenario/names.js';
import { si } from '../scenario/write-figure.js';
import type {
  ObservationConditions,
  ObservationSheet,
  ObservedSwing,
  ObservedTime,
  ObservedColumn,
  SupplyReading,
} from './sheet.js';

export interface ObservationWriting {
  /** Units people read, where a figure is the same to nine digits; SI with all digits when absent. */
  readonly units?: DisplaySystem;
  readonly format?: 'yaml' | 'json';
}

const QUANTITY = {
  supplyFlow: 'flow',
  supplyPressure: 'gauge-pressure',
  leftFor: 'time',
  temperature: 'temperature',
  attitude: 'angle',
} as const satisfies Partial<Record<keyof ObservationConditions, Quantity>>;

const READ_AS: Readonly<Record<SupplyReading, Quantity>> = {
  'moving-flow': 'flow',
  'dead-head-flow': 'flow',
  strokes: 'count',
  'cut-out': 'time',
  'cut-in': 'time',
};

/** How close a figure in the user's unit has to come to the one it stands for. */
const SAME = 1e-9;

/** Writes a sheet as text that reads back the same. What is missing is left out. */
export function writeObservations(
  sheet: ObservationSheet,
  { units, format = 'yaml' }: ObservationWriting = {},
): string {
  const figure: Figure = (value, quantity) => shown(value, quantity, units);
  const { readingError } = sheet;
  const file = {
    'wheelwell-observations': 1,
    ...texts({ aircraft: sheet.aircraft, scenario: sheet.scenario, card: sheet.card }),
    ...texts({ date: sheet.date, by: sheet.by }),
    'reading-error': figure(readingError, 'time'),
    ...some('conditions', conditions(sheet.conditions, figure)),
    swings: sheet.swings.map((swing) => swingText(swing, readingError, figure)),
    ...some('looks', sheet.looks ?? []),
    ...texts({ note: sheet.note }),
  };
  if (format === 'json') return `${JSON.stringify(file, null, 2)}\n`;
  // No aliases where the same object stands twice; long texts stay on their line.
  return stringify(file, { aliasDuplicateObjects: false, lineWidth: 0 });
}

type Figure = (value: number, quantity: Quantity) => string | number;

function shown(
  value: number,
  quantity: Quantity,
  units: DisplaySystem | undefined,
): string | number {
  if (units === undefined) return si(value, quantity);
  const unit = displayUnit(quantity, units);
  const text = inUnit(value, unit, 9);
  const read = parseQuantity(text, quantity);
  const close = 'value' in read && Math.abs(read.value - value) <= SAME * Math.abs(value);
  return close ? text : si(value, quantity);
}

function swingText(swing: ObservedSwing, error: number, figure: Figure): Record<string, unknown> {
  const time = ({ at, error: own }: ObservedTime): unknown =>
    own === error ? figure(at, 'time') : { at: figure(at, 'time'), error: figure(own, 'time') };
  return {
    direction: swing.direction,
    ...some('conditions', conditions(swing.conditions, figure)),
    ...some(
      'times',
      each(swing.times, (times) => each(times, (t) => t && time(t))),
    ),
    ...some(
      'order',
      swing.order.map(({ unit, event }) => `${unit} ${event}`),
    ),
    ...some(
      'never',
      (swing.never ?? []).map(({ unit, event }) => `${unit} ${event}`),
    ),
    ...some(
      'gauges',
      each(swing.gauges, (gauge) =>
        each(gauge, (p) => p !== undefined && figure(p, 'gauge-pressure')),
      ),
    ),
    ...some(
      'supply',
      each(swing.supply ?? {}, (readings) =>
        Object.fromEntries(
          Object.entries(readings).map(([key, value]) => [
            key,
            figure(value, READ_AS[key as SupplyReading]),
          ]),
        ),
      ),
    ),
    ...some('remarks', swing.remarks),
    ...some(
      'recordings',
      swing.recordings.map((r) => ({
        file: r.file,
        ...(r.time && { time: column(r.time) }),
        ...some('columns', each(r.columns, column)),
        ...(r.offset !== undefined && { offset: figure(r.offset, 'time') }),
      })),
    ),
    ...texts({ note: swing.note }),
  };
}

function conditions(of: ObservationConditions, figure: Figure): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(of).map(([key, value]) => [
      kebab(key),
      typeof value === 'number' ? figure(value, QUANTITY[key as keyof typeof QUANTITY]) : value,
    ]),
  );
}

const column = ({ column: heading, unit }: ObservedColumn): unknown =>
  unit === undefined ? heading : { column: heading, unit };

function each<T>(
  map: Readonly<Record<string, T>>,
  write: (value: T) => unknown,
): Record<string, unknown> {
  return Object.fromEntries(Object.entries(map).map(([key, value]) => [key, write(value)]));
}

/** A part of the file, left out when there is nothing in it. */
function some(key: string, part: object): Record<string, unknown> {
  return Object.keys(part).length > 0 ? { [key]: part } : {};
}

function texts(map: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(map).filter(([, text]) => text !== ''));
}
