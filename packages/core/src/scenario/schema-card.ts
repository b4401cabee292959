/** Schemas of rules and test cards: the parts that do not depend on the catalogues. */
import * as z from 'zod/mini';
import {
  choiceField,
  nameField,
  ownField,
  quantityField,
  switchField,
  textField,
  told,
} from './field.js';
import { CARD } from './own-parameters.js';
import { note } from './schema-part.js';
import { strict } from './strict.js';

const maybe = z.optional;

const event = strict({
  device: nameField('a device, mechanism or unit'),
  to: textField('the mode, motion or phase it enters', 60),
});
/** Conditions are told apart by their keys before zod sees them. */
export const CONDITIONS = {
  device: strict({
    device: nameField('a device, mechanism or unit'),
    in: textField('a mode, motion or phase', 60),
    not: maybe(switchField('the opposite')),
  }),
  channel: strict({
    channel: textField('a channel, e.g. left-leg.angle', 130),
    above: maybe(textField('a quantity')),
    below: maybe(textField('a quantity')),
  }),
};
export const EVENT = event;

const time = (about: string) => quantityField('time', [0, 3600], about);
const ruleFrame = {
  name: nameField('name of the rule'),
  text: textField('what it asks for, in words', 400),
  severity: maybe(choiceField(['caution', 'fail'], 'how bad it is when broken; default caution')),
};
// Read on their own, by their own schemas; what editors should know of them is said here.
const word = (description: string) => ({ type: 'string', description });
const pieceOf = (description: string, properties: Record<string, unknown>, required: string[]) =>
  told(z.unknown(), {
    type: 'object',
    description,
    properties,
    required,
    additionalProperties: false,
  });
const happening = (about: string) =>
  pieceOf(
    `${about}: a device, mechanism or unit enters a mode, motion or phase`,
    { device: word('a device, mechanism or unit'), to: word('a mode, motion or phase') },
    ['device', 'to'],
  );
const state = (about: string) =>
  pieceOf(
    `${about}: a device is in a mode, motion or phase, or a channel is above or below a figure`,
    {
      device: word('a device, mechanism or unit'),
      in: word('a mode, motion or phase'),
      not: { enum: [true, false, 'yes', 'no'], description: 'the opposite' },
      channel: word('a channel, e.g. left-leg.angle'),
      above: word('a quantity with its unit'),
      below: word('a quantity with its unit'),
    },
    [],
  );
const level = (about: string) =>
  maybe(told(z.unknown(), { type: ['string', 'number'], description: about }));
const levels = { low: level('lowest figure allowed'), high: level('highest figure allowed') };

/** Which parts each kind of rule has; events and conditions are read on their own. */
export const RULES = {
  order: {
    ...ruleFrame,
    first: happening('what comes first'),
    second: happening('what comes after'),
  },
  within: {
    ...ruleFrame,
    first: happening('from here'),
    second: happening('to here'),
    limit: time('longest time between them'),
  },
  together: {
    ...ruleFrame,
    first: happening('the one'),
    second: happening('the other'),
    limit: time('largest difference in time'),
  },
  never: { ...ruleFrame, condition: state('what must not be'), during: maybe(state('only while')) },
  holds: { ...ruleFrame, condition: state('what must stay'), from: happening('from here on') },
  limit: {
    ...ruleFrame,
    channel: textField('a channel, e.g. pressure-line.pressure', 130),
    ...levels,
    during: maybe(state('only while')),
  },
} as const;

/** Pieces that are read one by one are `unknown` here. */
export const cardFrame = {
  title: textField('title of the card', 200),
  note,
  duration: ownField(CARD.duration),
  temperature: maybe(ownField(CARD.temperature)),
  airspeed: maybe(ownField(CARD.airspeed)),
  sideslip: maybe(ownField(CARD.sideslip)),
  set: maybe(z.record(z.string(), z.unknown())),
  faults: maybe(z.array(z.unknown())),
  start: maybe(z.record(z.string(), z.unknown())),
  gas: maybe(z.record(z.string(), z.unknown())),
  steps: maybe(z.array(z.unknown())),
  expect: maybe(z.array(textField('name of a rule', 60))),
};

export const step = strict({
  at: maybe(quantityField('time', [0, 3600], 'when, or how long after the event')),
  after: maybe(event),
  device: nameField('the device the operator works'),
  input: maybe(nameField('which of its controls')),
  value: z.union([z.string(), z.number(), z.boolean()]),
});

export const names = maybe(z.array(nameField('a name')));
