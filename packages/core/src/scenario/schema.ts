/** The zod schemas of a whole scenario file, drawn from the catalogues. */
import * as z from 'zod';
import type { Catalogues } from '../define/catalogue.js';
import { choiceField, nameField, quantityField, textField } from './field.js';
import { LIMITS, limitField } from './limit.js';
import { kebab } from './names.js';
import { cardFrame, names, RULES, step } from './schema-card.js';
import { deviceSchema, mechanismSchema, note, strict } from './schema-part.js';

const maybe = z.optional;

/** Everything that reading checks a piece of the file against. */
export function drawSchemas(catalogues: Catalogues) {
  const { components, mechanisms, faults, fluids, rules } = catalogues;
  const fault = strict({
    fault: choiceField(Object.keys(faults), 'name of the fault'),
    on: nameField('the device or mechanism it befalls'),
    severity: quantityField('ratio', [0, 1], 'how bad, 0 to 1'),
  });
  const limits = Object.fromEntries(
    [
      ...new Set([...Object.keys(LIMITS), ...Object.values(rules).flatMap((rule) => rule.limits)]),
    ].map((name) => [kebab(name), maybe(limitField(name))]),
  );
  return {
    fluid: strict({
      kind: choiceField(Object.keys(fluids), 'which oil'),
      temperature: maybe(
        quantityField('temperature', [203.15, 423.15], 'oil temperature; default 20 degC'),
      ),
      'free-air': maybe(
        quantityField('ratio', [0, 0.2], 'free air by volume at ambient pressure; default 0.5 %'),
      ),
    }),
    ambient: quantityField(
      'pressure',
      [1e4, 1.2e5],
      'pressure of the surrounding air; default 101325 Pa',
    ),
    title: textField('title of the scenario', 200),
    note,
    components: new Map(Object.values(components).map((d) => [d.kind, deviceSchema(d)])),
    mechanisms: new Map(Object.values(mechanisms).map((d) => [d.kind, mechanismSchema(d)])),
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
    rules: Object.fromEntries(
      Object.entries(RULES).map(([kind, shape]) => [
        kind,
        strict({ kind: z.literal(kind), ...shape }),
      ]),
    ) as unknown as Record<keyof typeof RULES, z.ZodType>,
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
