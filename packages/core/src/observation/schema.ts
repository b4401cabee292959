/** The fields of an observation sheet, keys as written in the file. */
import * as z from 'zod/mini';
import { fluids } from '../medium/index.js';
import {
  choiceField,
  complain,
  field,
  nameField,
  quantityField,
  readNumber,
  switchField,
  textField,
  told,
} from '../scenario/field.js';
import { jsonSchemaFrom } from '../scenario/json-schema.js';
import { LONGEST_NAME, NAME } from '../scenario/names.js';
import { strict } from '../scenario/strict.js';
import {
  GAUGE_MOMENTS,
  REMARKS,
  SWING_DIRECTIONS,
  TIMED,
  type ObservedEvent,
  type ObservedColumn,
  type Remark,
  type SupplyReading,
  type SwingDirection,
  type TimedEvent,
} from './sheet.js';

const maybe = z.optional;

/** No swing takes an hour, by hand pump neither; s. */
const TIMES = [0, 3600] as const;
/** A reading is never sharper than a millisecond nor worth having beyond a minute, s. */
const ERRORS = [0.001, 60] as const;
/** A blink to a day, s. */
const LEFT = [0.1, 86_400] as const;
/** From a vacuum to far above any gear system, Pa gauge. */
const PRESSURES = [-1.1e5, 1e8] as const;
/** As wide as the condition of that name, m3/s. */
const FLOWS = [0, 0.05] as const;
const gauge = (about: string) => quantityField('gauge-pressure', PRESSURES, about);

/** A time as written: its error may be its own. */
export interface WrittenTime {
  readonly at: number;
  readonly error?: number;
}

/** `7.2 s`, or `{ at: 7.2 s, error: 0.4 s }`. */
const time = field<WrittenTime>(
  (value, context) => {
    const whole = typeof value === 'object' && value !== null && !Array.isArray(value);
    const map = (whole ? value : { at: value }) as Record<string, unknown>;
    const strange = Object.keys(map).find((key) => key !== 'at' && key !== 'error');
    if (strange !== undefined)
      return complain(context, value, {
        problem: `"${strange.slice(0, 60)}" is not known here`,
        allowed: 'at, error',
      });
    const part = (key: 'at' | 'error', range: readonly [number, number]): number | undefined => {
      if (key === 'error' && map.error == null) return undefined;
      const read = readNumber(map[key], 'time', range);
      return 'problem' in read ? complain(context, map[key], read, whole ? [key] : []) : read.value;
    };
    const error = part('error', ERRORS);
    return { at: part('at', TIMES) ?? NaN, ...(error !== undefined && { error }) };
  },
  {
    anyOf: [
      { type: 'string' },
      {
        type: 'object',
        properties: { at: { type: 'string' }, error: { type: 'string' } },
        required: ['at'],
        additionalProperties: false,
      },
    ],
    description: 'a time from the selector, e.g. 7.2 s, or { at: 7.2 s, error: 0.4 s }',
  },
);

/** `left locked`: a unit and a moment. */
const event = field<ObservedEvent>(
  (value, context) => {
    const words = typeof value === 'string' ? value.trim().split(/\s+/) : [];
    const [unit = '', moment = ''] = words;
    const known = (TIMED as readonly string[]).includes(moment);
    if (words.length === 2 && known && unit.length <= LONGEST_NAME && NAME.test(unit))
      return { unit, event: moment as TimedEvent };
    return complain(context, value, {
      problem: 'a unit and what it did belong here',
      allowed: `a unit, then one of ${TIMED.join(', ')}`,
      hint: 'e.g. left locked',
    });
  },
  { type: 'string', description: 'a unit and a moment, e.g. left locked' },
);

/** A heading, or a heading and its unit. */
const column = field<ObservedColumn>(
  (value, context) => {
    const map = typeof value === 'string' ? { column: value } : value;
    if (typeof map === 'object' && map !== null && !Array.isArray(map)) {
      const { column: heading, unit, ...more } = map as Record<string, unknown>;
      const fits = typeof heading === 'string' && heading !== '' && heading.length <= 200;
      if (fits && Object.keys(more).length === 0 && unit == null) return { column: heading };
      if (fits && Object.keys(more).length === 0 && typeof unit === 'string' && unit.length <= 40)
        return { column: heading, unit };
    }
    return complain(context, value, {
      problem: 'the heading of a column belongs here',
      allowed: 'a heading, or { column: its heading, unit: its unit }',
    });
  },
  {
    anyOf: [
      { type: 'string' },
      {
        type: 'object',
        properties: { column: { type: 'string' }, unit: { type: 'string' } },
        required: ['column'],
        additionalProperties: false,
      },
    ],
    description: 'heading of a column, or { column: its heading, unit: its unit }',
  },
);

export const remark = choiceField(REMARKS, 'what it was seen to do') as z.ZodMiniType<Remark>;

export const conditions = {
  'supply-flow': quantityField('flow', [0, 0.05], 'what the supply is set to give'),
  'supply-pressure': gauge('what the supply is set to hold'),
  fluid: choiceField(Object.keys(fluids), 'which oil'),
  temperature: quantityField('temperature', [203.15, 423.15], 'of the oil'),
  attitude: quantityField('angle', [-1.6, 1.6], 'nose up positive'),
  doors: choiceField(['connected', 'disconnected'], 'whether the doors hang on') as z.ZodMiniType<
    'connected' | 'disconnected'
  >,
  'left-for': quantityField(
    'time',
    LEFT,
    'how long it was left after the swing, selector in neutral and supply off',
  ),
};
export const times = Object.fromEntries(TIMED.map((name) => [name, time])) as Record<
  TimedEvent,
  z.ZodMiniType<WrittenTime>
>;
export const gauges = Object.fromEntries(
  [...GAUGE_MOMENTS, 'error'].map((name) => [name, gauge(`${name} reading`)]),
) as Record<(typeof GAUGE_MOMENTS)[number] | 'error', z.ZodMiniType<number>>;
const flow = (about: string) => quantityField('flow', FLOWS, about);
const clock = (about: string) => quantityField('time', TIMES, about);
export const supply: Record<SupplyReading, z.ZodMiniType<number>> = {
  'moving-flow': flow('flow while the gear moves'),
  'dead-head-flow': flow('flow that goes on at dead-head'),
  strokes: quantityField('count', [0, 10_000], 'strokes of the hand pump until the gear is home'),
  'cut-out': clock('from cut-in until the regulator cuts out'),
  'cut-in': clock('from cut-out until it cuts in'),
};
export const recording = {
  file: textField('name of a CSV file', 200),
  time: column,
  offset: quantityField('time', [-1e5, 1e5], 'time of the file at which the selector moved'),
};
export const swing = {
  direction: choiceField(SWING_DIRECTIONS, 'which way') as z.ZodMiniType<SwingDirection>,
  note: textField('anything else'),
};
export const look = {
  /** Whether there is such a check is for the diagnosis to say: the page need not know them all. */
  check: nameField('which check'),
  on: nameField('what was looked at'),
  found: switchField('whether it was found'),
};
export const sheet = {
  'wheelwell-observations': told(z.literal(1), { description: 'version of the format' }),
  aircraft: textField('title of the scenario', 200),
  scenario: textField('its file', 200),
  card: textField('name of the test card', 200),
  date: textField('when, e.g. 2031-05-17', 60),
  by: textField('who read the watch', 200),
  'reading-error': quantityField(
    'time',
    ERRORS,
    'of a time that has none of its own; default 0.2 s',
  ),
  note: textField('anything else'),
};
export { column, event };

/** Parts of a map, each of which may be left out. */
export const optional = <T extends z.core.$ZodShape>(shape: T) =>
  Object.fromEntries(Object.entries(shape).map(([key, s]) => [key, maybe(s)]));

/** The JSON Schema (draft 2020-12) of observation sheets, for editors. */
export function observationSchema(): Record<string, unknown> {
  const named = (schema: z.ZodMiniType) =>
    z.record(z.string().check(z.regex(NAME), z.maxLength(LONGEST_NAME)), schema);
  const some = (shape: z.core.$ZodShape) => maybe(strict(optional(shape)));
  const { file, ...rest } = recording;
  const oneSwing = strict({
    direction: swing.direction,
    conditions: some(conditions),
    times: maybe(named(strict(optional(times)))),
    order: maybe(z.array(event)),
    never: maybe(z.array(event)),
    gauges: maybe(named(strict(optional(gauges)))),
    supply: maybe(named(strict(optional(supply)))),
    remarks: maybe(named(z.array(remark))),
    recordings: maybe(
      z.array(strict({ file, ...optional(rest), columns: maybe(z.record(z.string(), column)) })),
    ),
    note: maybe(swing.note),
  });
  const { 'wheelwell-observations': version, ...head } = sheet;
  const whole = strict({
    'wheelwell-observations': version,
    ...optional(head),
    conditions: some(conditions),
    swings: maybe(z.array(oneSwing)),
    looks: maybe(z.array(strict(look))),
  });
  return { ...jsonSchemaFrom(whole), title: 'wheelwell observation sheet' };
}
