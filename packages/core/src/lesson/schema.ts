/** Schema of lesson files. What a step refers to is checked against the scenario, when there is one. */
import * as z from 'zod/mini';
import type { Catalogues } from '../define/catalogue.js';
import {
  choiceField,
  complain,
  field,
  nameField,
  quantityField,
  textField,
  told,
} from '../scenario/field.js';
import { jsonSchemaFrom } from '../scenario/json-schema.js';
import { schemasOf } from '../scenario/schema.js';
import { strict } from '../scenario/strict.js';

const maybe = z.optional;

/** Whole number within bounds. */
function wholeField(low: number, high: number, description: string): z.ZodMiniType<number> {
  return field(
    (value, context) => {
      if (typeof value === 'number' && Number.isInteger(value) && value >= low && value <= high)
        return value;
      return complain(context, value, {
        problem: 'a whole number belongs here',
        allowed: `${low} to ${high}`,
      });
    },
    { type: 'integer', minimum: low, maximum: high, description },
  );
}

const who = nameField('a device, mechanism or unit');
const word = textField('the mode, motion or phase it enters', 60);
const event = strict({ device: who, to: word });
const text = textField('what is told or asked, in words', 2000);

/** Keys that every step may have, then those of each kind. */
function stepsOf(catalogues: Catalogues) {
  const { fault } = schemasOf(catalogues);
  const scene = {
    card: maybe(nameField("test card; the former step's when absent")),
    faults: maybe(z.array(fault)),
  };
  const frame = {
    ...scene,
    at: maybe(quantityField('time', [0, 3600], 'when, or how long after the event')),
    after: maybe(strict({ device: who, to: word, nth: maybe(wholeField(1, 100, 'which time')) })),
  };
  const asked = {
    ...frame,
    text: maybe(text),
    why: maybe(textField('more words after the answer', 2000)),
  };
  const of = maybe(z.array(who));
  return {
    tell: { ...frame, text },
    predict: { ...asked, of },
    arrange: { ...asked, events: z.array(event) },
    find: {
      ...asked,
      budget: wholeField(1, 12, 'checks that may be made'),
      of,
      suspects: maybe(z.array(strict({ fault: fault.shape.fault, on: fault.shape.on }))),
    },
    compare: {
      ...asked,
      with: strict({ card: nameField('the other card'), faults: maybe(z.array(fault)) }),
      time: maybe(choiceField(['up', 'down'], 'compare this time')),
      unit: maybe(nameField('of this unit; the last of all when absent')),
      rule: maybe(nameField('compare the least margin of this rule')),
    },
  };
}

export function drawLessonSchema(catalogues: Catalogues) {
  const shapes = stepsOf(catalogues);
  const kind = <K extends string>(k: K) => z.literal(k);
  return {
    frame: {
      title: textField('title of the lesson', 200),
      note: maybe(textField('whom it is for, what it shows', 2000)),
      scenario: textField("file of the scenario, as seen from the lesson's", 200),
    },
    steps: {
      tell: strict({ kind: kind('tell'), ...shapes.tell }),
      predict: strict({ kind: kind('predict'), ...shapes.predict }),
      arrange: strict({ kind: kind('arrange'), ...shapes.arrange }),
      find: strict({ kind: kind('find'), ...shapes.find }),
      compare: strict({ kind: kind('compare'), ...shapes.compare }),
    },
  };
}

export type LessonSchema = ReturnType<typeof drawLessonSchema>;
export type StepKind = keyof LessonSchema['steps'];
/** A step of a kind as it was written, its figures read. */
export type Written<K extends StepKind> = z.output<LessonSchema['steps'][K]>;
export const STEP_KINDS: readonly StepKind[] = ['tell', 'predict', 'arrange', 'find', 'compare'];

const drawn = new WeakMap<Catalogues, LessonSchema>();

export function lessonSchemaOf(catalogues: Catalogues): LessonSchema {
  let schema = drawn.get(catalogues);
  if (schema === undefined) drawn.set(catalogues, (schema = drawLessonSchema(catalogues)));
  return schema;
}

/** The JSON Schema of lesson files, for editors. */
export function lessonJsonSchemaOf(catalogues: Catalogues): Record<string, unknown> {
  const { frame, steps } = lessonSchemaOf(catalogues);
  const whole = strict({
    'wheelwell-lesson': told(z.literal(1), { description: 'version of the format' }),
    ...frame,
    steps: z.array(
      z.discriminatedUnion('kind', [
        steps.tell,
        steps.predict,
        steps.arrange,
        steps.find,
        steps.compare,
      ]),
    ),
  });
  return { ...jsonSchemaFrom(whole, 'ref'), title: 'wheelwell lesson' };
}
