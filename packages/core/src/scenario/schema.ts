/** The zod schemas of a whole scenario file, drawn from the catalogues. */
import * as z from 'zod/mini';
import type { Catalogues } from '../define/catalogue.js';
import {
  choiceField,
  differenceField,
  nameField,
  ownField,
  pointField,
  quantityField,
  textField,
} from './field.js';
import { LIMITS, limitField } from './limit.js';
import { kebab } from './names.js';
import { NODE, OIL, SURROUNDINGS } from './own-parameters.js';
import { cardFrame, names, RULES, step } from './schema-card.js';
import { deviceSchema, mechanismSchema, note } from './schema-part.js';
import { strict } from './strict.js';

const maybe = z.optional;

const REACH = [-50, 50] as const;
/** A wheel well as a box, from the aircraft datum. */
const bay = strict({
  roof: quantityField('length', REACH, 'underside of its roof'),
  walls: pointField(
    REACH,
    'inboard and outboard wall, right positive: [200 mm, 1100 mm]',
    (a, b) => (a === b ? { problem: 'these walls leave no room between them' } : undefined),
  ),
  ends: maybe(
    pointField(REACH, 'front and rear bulkhead, aft positive', (front, rear) =>
      front < rear
        ? undefined
        : {
            problem: 'the front is not ahead of the rear',
            allowed: 'front, then rear; aft is positive',
          },
    ),
  ),
});

/** Everything that reading checks a piece of the file against. */
export function drawSchemas(catalogues: Catalogues) {
  const { components, mechanisms, faults, fluids, rules } = catalogues;
  const fault = strict({
    fault: choiceField(Object.keys(faults), 'name of the fault'),
    on: nameField('the device or mechanism it befalls, or fluid'),
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
      temperature: maybe(ownField(OIL.temperature)),
      'free-air': maybe(ownField(OIL.freeAir)),
      thickness: maybe(ownField(OIL.thickness)),
      'warmed-by': maybe(differenceField(OIL.warmedBy.range, `${OIL.warmedBy.title}; default 0 K`)),
    }),
    ambient: ownField(SURROUNDINGS.ambient),
    airspeed: ownField(SURROUNDINGS.airspeed),
    sideslip: ownField(SURROUNDINGS.sideslip),
    title: textField('title of the scenario', 200),
    note,
    components: new Map(Object.values(components).map((d) => [d.kind, deviceSchema(d)])),
    mechanisms: new Map(Object.values(mechanisms).map((d) => [d.kind, mechanismSchema(d)])),
    node: strict({
      volume: maybe(ownField(NODE.volume)),
      air: maybe(ownField(NODE.air)),
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
      bay: maybe(bay),
    }),
    limits: strict(limits),
    rules: Object.fromEntries(
      Object.entries(RULES).map(([kind, shape]) => [
        kind,
        strict({ kind: z.literal(kind), ...shape }),
      ]),
    ) as unknown as Record<keyof typeof RULES, z.ZodMiniType>,
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
