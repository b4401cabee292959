/** The zod schemas of a scenario file, drawn from the catalogues. Keys are as written in the file. */
import * as z from 'zod';
import type { DeviceDefinition, MechanismDefinition } from '../define/device.js';
import type { ParameterDefinitions } from '../define/parameter.js';
import type { Catalogues } from '../define/catalogue.js';
import { choiceField, complain, field, nameField, parameterField, quantityField, readTable, switchField, textField } from './field.js';
import { LIMITS, limitField } from './limit.js';
import { kebab } from './names.js';

/** An object that refuses unknown keys; their zod message carries the keys allowed instead. */
export function strict<T extends z.ZodRawShape>(shape: T, alsoAllowed: readonly string[] = []): z.ZodObject<T, z.core.$strict> {
  const keys = [...Object.keys(shape), ...alsoAllowed].join(',');
  return z.strictObject(shape, { error: (issue) => (issue.code === 'unrecognized_keys' ? keys : undefined) });
}

const maybe = z.optional;
const note = maybe(textField('why these figures'));

/** Distances of a jack's two ends from the pivot of what it moves, and the angle between them. */
const pivots = strict({
  fixed: quantityField('length', [1e-3, 20], 'from the pivot to the fixed end'),
  moving: quantityField('length', [1e-3, 20], 'from the pivot to the moving end'),
  'at-low': quantityField('angle', [0, Math.PI], 'angle between the two at the low end of travel'),
  sense: choiceField(['opening', 'closing'], 'whether that angle grows or shrinks as the mechanism rises'),
  shortest: maybe(quantityField('length', [0, 40], 'closed length of the jack; its shortest in this travel when absent')),
});
export type Pivots = z.infer<typeof pivots>;

const travelTable = field(
  (value, context) =>
    readTable(value, 'angle', 'length', [0, 20], (path, input, wrong) => void complain(context, input, wrong, path)) ?? z.NEVER,
  { type: 'array', description: 'travel of the link against the angle: [[0 deg, 0 mm], [90 deg, 140 mm]]' },
);

const to = nameField('the mechanism it hangs on');
const plainLink = strict({ to });
const travelLink = strict({
  to,
  pivots: maybe(pivots),
  table: maybe(travelTable),
  expression: maybe(textField('travel in m as an expression in angle (rad)', 400)),
});
export type WrittenLink = z.infer<typeof travelLink>;

/** A map of named pieces that must all be there unless optional; missing ones are told by name. */
function pieces<T>(
  names: readonly { readonly name: string; readonly optional: boolean; readonly schema: z.ZodType<T> }[],
): z.ZodType<Record<string, T>> {
  const shape = Object.fromEntries(names.map(({ name, optional, schema }) => [name, optional ? maybe(schema) : schema]));
  const whole = strict(shape) as unknown as z.ZodType<Record<string, T>>;
  return names.every((n) => n.optional) ? (maybe(whole) as unknown as z.ZodType<Record<string, T>>) : whole;
}

const place = field(
  (value, context): readonly [number, number] => {
    if (Array.isArray(value) && value.length === 2 && value.every((n) => typeof n === 'number' && Math.abs(n) <= 1000)) {
      return [value[0] as number, value[1] as number];
    }
    return complain(context, value, { problem: 'a place in the drawing belongs here', allowed: 'two plain numbers, e.g. [3, 2]' });
  },
  { type: 'array', items: { type: 'number' }, minItems: 2, maxItems: 2, description: 'place in the circuit drawing, grid units' },
);

/** The keys of a component that are not parameters of its kind. */
export const COMPONENT_KEYS = ['is', 'note', 'ports', 'links', 'place'];
export const MECHANISM_KEYS = ['is', 'note'];

function componentShape(definition: DeviceDefinition) {
  const ports = Object.entries(definition.ports).map(([name, port]) => ({
    name: kebab(name),
    optional: port.optional === true,
    schema: nameField(`${port.title}: the node it joins, or blanked`),
  }));
  const links = Object.entries(definition.links ?? {}).map(([name, link]) => ({
    name: kebab(name),
    optional: link.optional === true,
    schema: (link.shape === 'travel' ? travelLink : plainLink) as z.ZodType<WrittenLink>,
  }));
  return { is: z.literal(definition.kind), note, ports: pieces(ports), links: pieces(links), place: maybe(place) };
}

function parameterShape(parameters: ParameterDefinitions): Record<string, z.ZodType> {
  return Object.fromEntries(Object.entries(parameters).map(([name, p]) => [kebab(name), parameterField(p)]));
}

/** Schemas of the two halves of a component or mechanism, so that a fault in one hides none in the other. */
export interface KindSchema {
  readonly frame: z.ZodType<{ note?: string; ports?: Record<string, string>; links?: Record<string, WrittenLink>; place?: readonly [number, number] }>;
  readonly parameters: z.ZodType<Record<string, unknown>>;
  /** Both together, for the JSON Schema. */
  readonly whole: z.ZodType;
}

function kindSchema(frame: z.ZodRawShape, parameters: Record<string, z.ZodType>, keys: readonly string[], about: DeviceDefinition | MechanismDefinition): KindSchema {
  return {
    frame: strict(frame) as unknown as KindSchema['frame'],
    parameters: strict(parameters, keys),
    whole: strict({ ...frame, ...parameters }).meta({ description: `${about.title}. ${about.summary}` }),
  };
}

const event = strict({
  device: nameField('a device, mechanism or unit'),
  to: textField('the mode, motion or phase it enters', 60),
});
const condition = z.union([
  strict({ device: nameField('a device, mechanism or unit'), in: textField('a mode, motion or phase', 60), not: maybe(switchField('the opposite')) }),
  strict({ channel: textField('a channel, e.g. left-leg.angle', 130), above: maybe(textField('a quantity')), below: maybe(textField('a quantity')) }),
]);
/** Conditions are told apart by their keys before zod sees them. */
export const CONDITIONS = { device: condition.options[0], channel: condition.options[1] };
export const EVENT = event;

const time = (about: string) => quantityField('time', [0, 3600], about);
const ruleFrame = {
  name: nameField('name of the rule'),
  text: textField('what it asks for, in words', 400),
  severity: maybe(choiceField(['caution', 'fail'], 'how bad it is when broken; default caution')),
};
const anything = z.unknown();
const levels = { low: maybe(anything), high: maybe(anything) };

/** Which parts each kind of rule has; events and conditions are read on their own. */
export const RULES = {
  order: { ...ruleFrame, first: anything, second: anything },
  within: { ...ruleFrame, first: anything, second: anything, limit: time('longest time between them') },
  together: { ...ruleFrame, first: anything, second: anything, limit: time('largest difference in time') },
  never: { ...ruleFrame, condition: anything, during: maybe(anything) },
  holds: { ...ruleFrame, condition: anything, from: anything },
  limit: { ...ruleFrame, channel: textField('a channel, e.g. pressure-line.pressure', 130), ...levels, during: maybe(anything) },
} as const;

const cardFrame = {
  title: textField('title of the card', 200),
  note,
  duration: quantityField('time', [1e-3, 3600], 'how long the run lasts'),
  temperature: maybe(quantityField('temperature', [203.15, 423.15], 'oil temperature for this card')),
  set: maybe(z.record(z.string(), z.unknown())),
  faults: maybe(z.array(z.unknown())),
  start: maybe(z.record(z.string(), z.unknown())),
  steps: maybe(z.array(z.unknown())),
  expect: maybe(z.array(textField('name of a rule', 60))),
};

const step = strict({
  at: maybe(quantityField('time', [0, 3600], 'when, or how long after the event')),
  after: maybe(event),
  device: nameField('the device the operator works'),
  input: maybe(nameField('which of its controls')),
  value: z.union([z.string(), z.number(), z.boolean()]),
});

const names = maybe(z.array(nameField('a name')));

/** Everything that reading checks a piece of the file against. */
export function drawSchemas(catalogues: Catalogues) {
  const { components, mechanisms, faults, fluids, rules } = catalogues;
  const fault = strict({
    fault: choiceField(Object.keys(faults), 'name of the fault'),
    on: nameField('the device or mechanism it befalls'),
    severity: quantityField('ratio', [0, 1], 'how bad, 0 to 1'),
  });
  const limits = Object.fromEntries(
    [...new Set([...Object.keys(LIMITS), ...Object.values(rules).flatMap((rule) => rule.limits)])].map((name) => [kebab(name), maybe(limitField(name))]),
  );
  return {
    fluid: strict({
      kind: choiceField(Object.keys(fluids), 'which oil'),
      temperature: maybe(quantityField('temperature', [203.15, 423.15], 'oil temperature; default 20 degC')),
      'free-air': maybe(quantityField('ratio', [0, 0.2], 'free air by volume at ambient pressure; default 0.5 %')),
    }),
    ambient: quantityField('pressure', [1e4, 1.2e5], 'pressure of the surrounding air; default 101325 Pa'),
    title: textField('title of the scenario', 200),
    note,
    components: new Map(Object.values(components).map((d) => [d.kind, kindSchema(componentShape(d), parameterShape(d.parameters), COMPONENT_KEYS, d)])),
    mechanisms: new Map(Object.values(mechanisms).map((d) => [d.kind, kindSchema({ is: z.literal(d.kind), note }, parameterShape(d.parameters), MECHANISM_KEYS, d)])),
    node: strict({
      volume: maybe(quantityField('volume', [0, 1], 'extra oil volume')),
      air: maybe(quantityField('volume', [0, 0.1], 'trapped air at ambient pressure')),
      note,
    }),
    unit: strict({
      side: choiceField(['left', 'right', 'centre', 'nose', 'tail'], 'where it is'),
      leg: nameField('its leg'),
      doors: names,
      uplock: maybe(nameField('its uplock')),
      downlock: maybe(nameField('its downlock')),
      sequence: names,
      actuators: names,
    }),
    limits: strict(limits),
    rules: Object.fromEntries(Object.entries(RULES).map(([kind, shape]) => [kind, strict({ kind: z.literal(kind), ...shape })])) as unknown as Record<keyof typeof RULES, z.ZodType>,
    card: strict(cardFrame),
    step,
    fault,
  };
}

export type Schemas = ReturnType<typeof drawSchemas>;

const drawn = new WeakMap<Catalogues, Schemas>();

/** The schemas of these catalogues, drawn once. */
export function schemasOf(catalogues: Catalogues): Schemas {
  let schemas = drawn.get(catalogues);
  if (schemas === undefined) drawn.set(catalogues, (schemas = drawSchemas(catalogues)));
  return schemas;
}

