/** The fields of a scenario file as zod schemas: each reads text into SI and says what is wrong. */
import * as z from 'zod/mini';
import type { NumberParameter, Quantity } from '../define/parameter.js';
import { didYouMean, inUnit, parseQuantity, QUANTITY_WORDS, usualUnit } from '../quantity/index.js';
import { wordList } from './issue-list.js';
import { LONGEST_NAME, NAME, NAME_ALLOWED } from './names.js';

// Zod would otherwise try to generate code, which a page with a strict policy reports as an error.
z.config({ jitless: true });

/** What is wrong, as the schemas hand it on in `params` of a custom zod issue. */
export interface Wrong {
  readonly problem: string;
  readonly allowed?: string;
  readonly hint?: string;
}

type Context = z.core.ParsePayload;

/** Adds a custom issue at a path below the field. */
export function complain(
  context: Context,
  input: unknown,
  wrong: Wrong,
  path: (string | number)[] = [],
): typeof z.NEVER {
  context.issues.push({
    code: 'custom',
    input,
    path,
    message: wrong.problem,
    params: { allowed: wrong.allowed ?? '', hint: wrong.hint ?? '' },
  });
  return z.NEVER;
}

/** Says of a schema what editors should know: it goes into the JSON Schema. */
export function told<S extends z.ZodMiniType>(schema: S, meta: Record<string, unknown>): S {
  z.globalRegistry.add(schema, meta);
  return schema;
}

/** A field that reads plain data with `read`; `meta` goes into the JSON Schema. */
export function field<T>(
  read: (value: unknown, context: Context) => T,
  meta: Record<string, unknown>,
): z.ZodMiniType<T> {
  return told(z.pipe(z.unknown(), z.transform(read)), meta);
}

/** A number with its unit, to SI, inside an inclusive range. */
export function readNumber(
  value: unknown,
  quantity: Quantity,
  range?: readonly [number, number],
): { value: number } | Wrong {
  const { name, examples } = QUANTITY_WORDS[quantity];
  const allowed = `${name}, e.g. ${examples.join(' or ')}`;
  if (value === undefined || value === null) return { problem: `${name} is missing`, allowed };
  if (typeof value !== 'string' && typeof value !== 'number')
    return { problem: `${name} belongs here`, allowed };
  const read = parseQuantity(String(value), quantity);
  if ('problem' in read || range === undefined) return read;
  const [low, high] = range;
  // Units are converted in floating point: a figure on the edge counts as inside.
  const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high), Number.MIN_VALUE);
  if (read.value >= low - slack && read.value <= high + slack) {
    return { value: Math.min(high, Math.max(low, read.value)) };
  }
  return {
    problem: 'this is outside its range',
    allowed: `${inUnit(low, read.unit)} to ${inUnit(high, read.unit)}`,
  };
}

/** For editors, which know no units: a number first and some unit after it. */
const WITH_UNIT = '^\\s*[-+\u2212]?\\s*[.\\d½¼¾⅛⅜⅝⅞].*[A-Za-zµ°%"\']';

export function quantityField(
  quantity: Quantity,
  range?: readonly [number, number],
  description = '',
): z.ZodMiniType<number> {
  const { name, examples } = QUANTITY_WORDS[quantity];
  return field(
    (value, context) => {
      const read = readNumber(value, quantity, range);
      return 'problem' in read ? complain(context, value, read) : read.value;
    },
    {
      ...(quantity === 'ratio' || quantity === 'count'
        ? { type: ['string', 'number'] }
        : { type: 'string', pattern: WITH_UNIT }),
      description: description === '' ? name : `${description} (${name})`,
      samples: [...examples],
    },
  );
}

/** The field of a declared figure that is no device's. */
export function ownField({ quantity, range, title, default: usual }: NumberParameter) {
  const about =
    usual === undefined ? title : `${title}; default ${inUnit(usual, usualUnit(quantity))}`;
  return quantityField(quantity, range, about);
}

/** A difference of temperatures, K: units that count from a zero of their own are refused. */
export function differenceField(
  range: readonly [number, number],
  description: string,
): z.ZodMiniType<number> {
  const allowed = `a difference of temperatures, ${range[0]} K to ${range[1]} K`;
  return field(
    (value, context) => {
      const read = parseQuantity(typeof value === 'string' ? value : '', 'temperature');
      if ('problem' in read) return complain(context, value, { ...read, allowed });
      const zero = parseQuantity(`0 ${read.unit}`, 'temperature');
      if ('problem' in zero || zero.value !== 0) {
        return complain(context, value, {
          problem: 'this is a temperature, and a difference of temperatures belongs here',
          allowed,
          hint: 'write it in K; 10 K are 18 degrees Fahrenheit',
        });
      }
      if (read.value >= range[0] && read.value <= range[1]) return read.value;
      return complain(context, value, { problem: 'this is outside its range', allowed });
    },
    { type: 'string', pattern: WITH_UNIT, description, samples: ['20 K'] },
  );
}

export function choiceField(
  choices: readonly string[],
  description: string,
): z.ZodMiniType<string> {
  return field(
    (value, context) => {
      if (typeof value === 'string' && choices.includes(value)) return value;
      const problem =
        value === undefined || value === null
          ? 'a word is missing'
          : 'this word is not one of those allowed';
      return complain(context, value, {
        problem,
        allowed: wordList(choices, 40),
        // A map from a file cannot always be made a text.
        hint: didYouMean(typeof value === 'string' ? value : '', choices),
      });
    },
    { type: 'string', enum: [...choices], description },
  );
}

export function switchField(description: string): z.ZodMiniType<boolean> {
  return field(
    (value, context) => {
      if (typeof value === 'boolean') return value;
      if (value === 'yes' || value === 'no') return value === 'yes';
      return complain(context, value, {
        problem: 'yes or no belongs here',
        allowed: 'yes, no, true, false',
      });
    },
    { enum: [true, false, 'yes', 'no'], description },
  );
}

export function pointField(
  range: readonly [number, number],
  description: string,
  wrong: (first: number, second: number) => Wrong | undefined = () => undefined,
): z.ZodMiniType<readonly [number, number]> {
  return field(
    (value, context): readonly [number, number] => {
      if (!Array.isArray(value) || value.length !== 2) {
        return complain(context, value, {
          problem: 'two lengths belong here',
          allowed: 'two lengths, e.g. [120 mm, 3 in]',
        });
      }
      const point = value.map((cell, i) => {
        const read = readNumber(cell, 'length', range);
        return 'problem' in read ? complain(context, cell, read, [i]) : read.value;
      });
      const problem = wrong(point[0], point[1]);
      return problem === undefined ? [point[0], point[1]] : complain(context, value, problem);
    },
    { type: 'array', items: { type: 'string' }, minItems: 2, maxItems: 2, description },
  );
}

/** A name given by the author, or a reference to one. */
export function nameField(
  description: string,
  missing = 'a name is missing',
): z.ZodMiniType<string> {
  return field(
    (value, context) => {
      if (typeof value === 'string' && value.length <= LONGEST_NAME && NAME.test(value))
        return value;
      const problem = value === undefined || value === null ? missing : 'this is not a name';
      return complain(context, value, { problem, allowed: NAME_ALLOWED });
    },
    { type: 'string', pattern: NAME.source, maxLength: LONGEST_NAME, description },
  );
}

/** Free text; numbers are taken as text. */
export function textField(description: string, longest = 4_000): z.ZodMiniType<string> {
  return field(
    (value, context) => {
      if (typeof value === 'number') return String(value);
      if (typeof value === 'string' && value.length <= longest) return value;
      return complain(context, value, {
        problem: value === undefined || value === null ? 'text is missing' : 'text belongs here',
      });
    },
    { type: 'string', description },
  );
}
