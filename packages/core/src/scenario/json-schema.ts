import * as z from 'zod/mini';
import type { Catalogues } from '../define/catalogue.js';
import { field, told } from './field.js';
import { LONGEST_NAME, NAME } from './names.js';
import { schemasOf } from './schema.js';
import { RULES } from './schema-card.js';
import { strict } from './strict.js';

const maybe = z.optional;

/**
 * The JSON Schema (draft 2020-12) of scenario files, drawn from the catalogues: an editor that knows it
 * completes kinds, parameters and words, and shows titles, units, ranges and defaults. What needs the
 * whole file (references, ranges of quantities) is checked by reading only.
 */
export function jsonSchemaOf(catalogues: Catalogues): Record<string, unknown> {
  const s = schemasOf(catalogues);
  const named = (schema: z.ZodMiniType) =>
    z.record(z.string().check(z.regex(NAME), z.maxLength(LONGEST_NAME)), schema);
  const kinds = (map: ReadonlyMap<string, { whole: z.ZodMiniType }>) => {
    const options = [...map.values()].map(
      ({ whole }) => whole,
    ) as unknown as z.core.$ZodTypeDiscriminable[];
    return options.length === 0
      ? z.never()
      : z.discriminatedUnion('is', options as [z.core.$ZodTypeDiscriminable]);
  };
  const rules = Object.keys(RULES).map(
    (kind) => s.rules[kind as keyof typeof RULES],
  ) as unknown as [z.core.$ZodTypeDiscriminable];
  const card = z.extend(s.card, {
    set: maybe(
      z.record(
        z.string(),
        field((v) => v, { description: 'components.<name>.<parameter>: new value for this card' }),
      ),
    ),
    faults: maybe(z.array(s.fault)),
    start: maybe(
      z.record(
        z.string(),
        field((v) => v, { type: 'string', description: 'angle at which it starts, e.g. 0 deg' }),
      ),
    ),
    gas: maybe(
      z.record(
        z.string(),
        field((v) => v, {
          type: 'string',
          description: 'gas at this node at the start, at ambient pressure, e.g. 50 cm^3, or dry',
        }),
      ),
    ),
    steps: maybe(z.array(s.step)),
  });
  const whole = strict({
    wheelwell: told(z.literal(1), { description: 'version of the format' }),
    title: s.title,
    note: s.note,
    fluid: s.fluid,
    ambient: maybe(s.ambient),
    airspeed: maybe(s.airspeed),
    sideslip: maybe(s.sideslip),
    components: named(kinds(s.components)),
    mechanisms: maybe(named(kinds(s.mechanisms))),
    nodes: maybe(named(maybe(s.node))),
    units: maybe(named(s.unit)),
    limits: maybe(s.limits),
    rules: maybe(z.array(z.discriminatedUnion('kind', rules))),
    cards: named(card),
  });
  return { ...jsonSchemaFrom(whole), title: 'wheelwell scenario' };
}

/** Draft 2020-12 of a schema made of our fields; `ref`: what stands in it often is written once. */
export function jsonSchemaFrom(
  whole: z.ZodMiniType,
  reused: 'ref' | 'inline' = 'inline',
): Record<string, unknown> {
  return z.toJSONSchema(whole, {
    reused,
    io: 'input',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => {
      // Zod drops `examples` of fields that transform; they travel under another name.
      if (jsonSchema.samples !== undefined) {
        jsonSchema.examples = jsonSchema.samples as unknown[];
        delete jsonSchema.samples;
      }
    },
  });
}
