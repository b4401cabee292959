/** Schemas of devices and mechanisms, drawn from their definitions. Keys are as written in the file. */
import * as z from 'zod/mini';
import type { DeviceDefinition, MechanismDefinition } from '../define/device.js';
import type { ParameterDefinitions } from '../define/parameter.js';
import {
  choiceField,
  complain,
  field,
  nameField,
  quantityField,
  textField,
  told,
} from './field.js';
import { parameterField, readTable } from './field-parameter.js';
import { kebab, LONGEST_NAME } from './names.js';
import { driven, type WrittenDriven } from './schema-driven.js';
import { strict } from './strict.js';

const maybe = z.optional;
export const note = maybe(textField('why these figures'));

/** Distances of a jack's two ends from the pivot of what it moves, and the angle between them. */
const pivots = strict({
  fixed: quantityField('length', [1e-3, 20], 'from the pivot to the fixed end'),
  moving: quantityField('length', [1e-3, 20], 'from the pivot to the moving end'),
  'at-low': quantityField('angle', [0, Math.PI], 'angle between the two at the low end of travel'),
  sense: choiceField(
    ['opening', 'closing'],
    'whether that angle grows or shrinks as the mechanism rises',
  ),
  shortest: maybe(
    quantityField(
      'length',
      [0, 40],
      'closed length of the jack; its shortest in this travel when absent',
    ),
  ),
});
export type Pivots = z.infer<typeof pivots>;

const travelTable = field(
  (value, context) =>
    readTable(
      value,
      'angle',
      'length',
      [0, 20],
      (path, input, wrong) => void complain(context, input, wrong, path),
    ) ?? z.NEVER,
  {
    type: 'array',
    description: 'travel of the link against the angle: [[0 deg, 0 mm], [90 deg, 140 mm]]',
  },
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
  names: readonly {
    readonly name: string;
    readonly optional: boolean;
    readonly schema: z.ZodMiniType<T>;
  }[],
): z.ZodMiniType<Record<string, T>> {
  const shape = Object.fromEntries(
    names.map(({ name, optional, schema }) => [name, optional ? maybe(schema) : schema]),
  );
  const whole = strict(shape) as unknown as z.ZodMiniType<Record<string, T>>;
  return names.every((n) => n.optional)
    ? (maybe(whole) as unknown as z.ZodMiniType<Record<string, T>>)
    : whole;
}

const place = field(
  (value, context): readonly [number, number] => {
    if (
      Array.isArray(value) &&
      value.length === 2 &&
      value.every((n) => typeof n === 'number' && Math.abs(n) <= 1000)
    ) {
      return [value[0] as number, value[1] as number];
    }
    return complain(context, value, {
      problem: 'a place in the drawing belongs here',
      allowed: 'two plain numbers, e.g. [3, 2]',
    });
  },
  {
    type: 'array',
    items: { type: 'number' },
    minItems: 2,
    maxItems: 2,
    description:
      'place in the circuit drawing, x right and y up, in modules of ISO 1219-1 (2.5 mm on paper; a check valve is 4 wide)',
  },
);

/** The keys of a component that are not parameters of its kind. */
const COMPONENT_KEYS = ['is', 'note', 'ports', 'links', 'place'];
const MECHANISM_KEYS = ['is', 'note', 'driven'];

const wire = textField('the device, or device.signal, that sets it', 2 * LONGEST_NAME + 1);

/** Wires to its inputs; which inputs there are may be for its own state table to say. */
function signals({ inputs = {}, tailor }: DeviceDefinition): z.ZodMiniType | undefined {
  const names = Object.keys(inputs).map(kebab);
  const description = 'which signal of another device sets an input';
  if (tailor !== undefined) return told(maybe(z.record(z.string(), wire)), { description });
  if (names.length === 0) return undefined;
  return maybe(
    told(strict(Object.fromEntries(names.map((name) => [name, maybe(wire)]))), { description }),
  );
}

function componentShape(definition: DeviceDefinition) {
  // The oil side of a gas cushion and the inside of a vessel are the device's own.
  const joinable = Object.entries(definition.ports).filter(
    ([, { cushion, vessel }]) => !cushion && !vessel,
  );
  const ports = joinable.map(([name, port]) => ({
    name: kebab(name),
    optional: port.optional === true,
    schema: nameField(`${port.title}: the node it joins, or blanked`, 'this port is not connected'),
  }));
  const wires = signals(definition);
  const links = Object.entries(definition.links ?? {}).map(([name, link]) => ({
    name: kebab(name),
    optional: link.optional === true,
    schema: link.shape === 'travel' ? travelLink : plainLink,
  }));
  return {
    is: z.literal(definition.kind),
    note,
    ports: pieces(ports),
    links: pieces(links),
    ...(wires && { signals: wires }),
    place: maybe(place),
  };
}

function parameterShape(parameters: ParameterDefinitions): Record<string, z.ZodMiniType> {
  return Object.fromEntries(
    Object.entries(parameters).map(([name, p]) => [kebab(name), parameterField(p)]),
  );
}

/** Schemas of the two halves of a component or mechanism, so that a fault in one hides none in the other. */
export interface KindSchema {
  readonly frame: z.ZodMiniType<{
    note?: string;
    ports?: Record<string, string>;
    links?: Record<string, WrittenLink>;
    place?: readonly [number, number];
    driven?: WrittenDriven;
  }>;
  /** Keys of the first half. */
  readonly keys: readonly string[];
  readonly parameters: z.ZodMiniType<Record<string, unknown>>;
  /** Both together, for the JSON Schema. */
  readonly whole: z.ZodMiniType;
}

function kindSchema(
  frame: z.core.$ZodShape,
  parameters: Record<string, z.ZodMiniType>,
  keys: readonly string[],
  about: DeviceDefinition | MechanismDefinition,
): KindSchema {
  return {
    frame: strict(frame),
    keys,
    parameters: strict(parameters, keys),
    whole: told(strict({ ...frame, ...parameters }), {
      description: `${about.title}. ${about.summary}`,
    }),
  };
}

/** Schemas of a kind of device. */
export function deviceSchema(definition: DeviceDefinition): KindSchema {
  const frame = componentShape(definition);
  const keys = 'signals' in frame ? [...COMPONENT_KEYS, 'signals'] : COMPONENT_KEYS;
  return kindSchema(frame, parameterShape(definition.parameters), keys, definition);
}

/** Schemas of a kind of mechanism. */
export function mechanismSchema(definition: MechanismDefinition): KindSchema {
  const frame = { is: z.literal(definition.kind), note, driven: maybe(driven) };
  return kindSchema(frame, parameterShape(definition.parameters), MECHANISM_KEYS, definition);
}
