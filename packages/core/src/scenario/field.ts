/** The fields of a scenario file as zod schemas: each reads text into SI and says what is wrong. */
import * as z from 'zod';
import type { ParameterDefinition, Quantity, Shape } from '../define/parameter.js';
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

type Context = z.core.$RefinementCtx;

/** Adds a custom issue at a path below the field. */
export function complain(context: Context, input: unknown, wrong: Wrong, path: (string | number)[] = []): typeof z.NEVER {
  context.issues.push({
    code: 'custom',
    input,
    path,
    message: wrong.problem,
    params: { allowed: wrong.allowed ?? '', hint: wrong.hint ?? '' },
  });
  return z.NEVER;
}

/** A field that reads plain data with `read`; `meta` goes into the JSON Schema. */
export function field<T>(
  read: (value: unknown, context: Context) => T,
  meta: Record<string, unknown>,
): z.ZodType<T> {
  return z.unknown().transform(read).meta(meta) as unknown as z.ZodType<T>;
}

/** A number with its unit, to SI, inside an inclusive range. */
export function readNumber(value: unknown, quantity: Quantity, range?: readonly [number, number]): { value: number } | Wrong {
  const { name, examples } = QUANTITY_WORDS[quantity];
  const allowed = `${name}, e.g. ${examples.join(' or ')}`;
  if (value === undefined || value === null) return { problem: `${name} is missing`, allowed };
  if (typeof value !== 'string' && typeof value !== 'number') return { problem: `${name} belongs here`, allowed };
  const read = parseQuantity(String(value), quantity);
  if ('problem' in read || range === undefined) return read;
  const [low, high] = range;
  // Units are converted in floating point: a figure on the edge counts as inside.
  const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high), Number.MIN_VALUE);
  if (read.value >= low - slack && read.value <= high + slack) {
    return { value: Math.min(high, Math.max(low, read.value)) };
  }
  return { problem: 'this is outside its range', allowed: `${inUnit(low, read.unit)} to ${inUnit(high, read.unit)}` };
}

export function quantityField(quantity: Quantity, range?: readonly [number, number], description = ''): z.ZodType<number> {
  const { name, examples } = QUANTITY_WORDS[quantity];
  return field(
    (value, context) => {
      const read = readNumber(value, quantity, range);
      return 'problem' in read ? complain(context, value, read) : read.value;
    },
    {
      type: quantity === 'ratio' || quantity === 'count' ? ['string', 'number'] : 'string',
      description: description === '' ? name : `${description} (${name})`,
      samples: [...examples],
    },
  );
}

export function choiceField(choices: readonly string[], description: string): z.ZodType<string> {
  return field(
    (value, context) => {
      if (typeof value === 'string' && choices.includes(value)) return value;
      const problem = value === undefined || value === null ? 'a word is missing' : 'this word is not one of those allowed';
      return complain(context, value, { problem, allowed: wordList(choices, 40), hint: didYouMean(String(value), choices) });
    },
    { type: 'string', enum: [...choices], description },
  );
}

export function switchField(description: string): z.ZodType<boolean> {
  return field(
    (value, context) => {
      if (typeof value === 'boolean') return value;
      if (value === 'yes' || value === 'no') return value === 'yes';
      return complain(context, value, { problem: 'yes or no belongs here', allowed: 'yes, no, true, false' });
    },
    { enum: [true, false, 'yes', 'no'], description },
  );
}

export function pointField(range: readonly [number, number], description: string): z.ZodType<readonly [number, number]> {
  return field(
    (value, context): readonly [number, number] => {
      if (!Array.isArray(value) || value.length !== 2) {
        return complain(context, value, { problem: 'a point belongs here', allowed: 'two lengths, e.g. [120 mm, 3 in]' });
      }
      const point = value.map((cell, i) => {
        const read = readNumber(cell, 'length', range);
        return 'problem' in read ? complain(context, cell, read, [i]) : read.value;
      });
      return [point[0], point[1]];
    },
    { type: 'array', items: { type: 'string' }, minItems: 2, maxItems: 2, description },
  );
}

/** A name given by the author, or a reference to one. */
export function nameField(description: string): z.ZodType<string> {
  return field(
    (value, context) => {
      if (typeof value === 'string' && value.length <= LONGEST_NAME && NAME.test(value)) return value;
      const problem = value === undefined || value === null ? 'a name is missing' : 'this is not a name';
      return complain(context, value, { problem, allowed: NAME_ALLOWED });
    },
    { type: 'string', pattern: NAME.source, maxLength: LONGEST_NAME, description },
  );
}

/** Free text; numbers are taken as text. */
export function textField(description: string, longest = 4_000): z.ZodType<string> {
  return field(
    (value, context) => {
      if (typeof value === 'number') return String(value);
      if (typeof value === 'string' && value.length <= longest) return value;
      return complain(context, value, { problem: value === undefined || value === null ? 'text is missing' : 'text belongs here' });
    },
    { type: 'string', description },
  );
}

const MOST_ROWS = 500;

/** A table of points, one pair per row, first column strictly rising. */
export function readTable(
  value: unknown,
  of: Quantity,
  gives: Quantity,
  range: readonly [number, number] | undefined,
  complainAt: (path: (string | number)[], input: unknown, wrong: Wrong) => void,
): Shape | undefined {
  const words = `rows of ${QUANTITY_WORDS[of].name} and ${QUANTITY_WORDS[gives].name}, e.g. [[${QUANTITY_WORDS[of].examples[0]}, ${QUANTITY_WORDS[gives].examples[0]}], ...]`;
  if (!Array.isArray(value) || value.length < 2 || value.length > MOST_ROWS) {
    complainAt([], value, { problem: `a table of 2 to ${MOST_ROWS} rows belongs here`, allowed: words });
    return undefined;
  }
  let good = true;
  const wrongAt = (path: (string | number)[], input: unknown, wrong: Wrong): void => {
    good = false;
    complainAt(path, input, wrong);
  };
  const x: number[] = [];
  const y: number[] = [];
  value.forEach((row: unknown, i) => {
    if (!Array.isArray(row) || row.length !== 2) return wrongAt([i], row, { problem: 'a row of two figures belongs here', allowed: words });
    const first = readNumber(row[0], of);
    const second = readNumber(row[1], gives, range);
    if ('problem' in second) wrongAt([i, 1], row[1], second);
    if ('problem' in first) return wrongAt([i, 0], row[0], first);
    if (x.length > 0 && !(first.value > x[x.length - 1])) {
      wrongAt([i, 0], row[0], { problem: 'the first column does not rise', allowed: 'more than in the row above' });
    }
    x.push(first.value);
    y.push('problem' in second ? 0 : second.value);
  });
  return good ? { x, y } : undefined;
}

/** A shape as written: a table already read, or an expression to be sampled once its range is known. */
export type WrittenShape =
  | { readonly table: Shape }
  | { readonly expression: string; readonly from?: number; readonly to?: number };

export function shapeField(
  of: Quantity,
  gives: Quantity,
  range: readonly [number, number],
  description: string,
): z.ZodType<WrittenShape> {
  const allowed = 'a table [[x, y], ...] or { expression: ..., from: ..., to: ... }';
  return field(
    (value, context): WrittenShape => {
      const at = (path: (string | number)[]) => (inner: (string | number)[], input: unknown, wrong: Wrong) =>
        void complain(context, input, wrong, [...path, ...inner]);
      if (Array.isArray(value)) {
        const table = readTable(value, of, gives, range, at([]));
        return table === undefined ? z.NEVER : { table };
      }
      if (typeof value !== 'object' || value === null) {
        return complain(context, value, { problem: 'a table or an expression belongs here', allowed });
      }
      const { table, expression, from, to, ...rest } = value as Record<string, unknown>;
      for (const key of Object.keys(rest)) {
        complain(context, key, { problem: `${key} is not known here`, allowed, hint: didYouMean(key, ['table', 'expression', 'from', 'to']) }, [key]);
      }
      if (table !== undefined) {
        if (expression !== undefined) complain(context, value, { problem: 'this has both a table and an expression', allowed });
        const read = readTable(table, of, gives, range, at(['table']));
        return read === undefined ? z.NEVER : { table: read };
      }
      if (typeof expression !== 'string' && typeof expression !== 'number') {
        return complain(context, value, { problem: 'a table or an expression belongs here', allowed });
      }
      const ends = Object.entries({ from, to }).flatMap(([key, end]) => {
        if (end === undefined) return [];
        const read = readNumber(end, of);
        if ('problem' in read) return complain(context, end, read, [key]);
        return [[key, read.value] as const];
      });
      return { expression: String(expression), ...Object.fromEntries(ends) };
    },
    { type: ['array', 'object', 'string'], description: `${description}: ${allowed}` },
  );
}

/** One field for a declared parameter, optional where the declaration gives a default. */
export function parameterField(p: ParameterDefinition): z.ZodType<unknown> {
  const schema = requiredField(p);
  return p.default === undefined ? schema : z.optional(schema);
}

function requiredField(p: ParameterDefinition): z.ZodType<unknown> {
  switch (p.type) {
    case 'choice':
      return choiceField(p.choices, describe(p, p.default));
    case 'switch':
      return switchField(describe(p, p.default ? 'yes' : 'no'));
    case 'point':
      return pointField(p.range, describe(p, p.default?.join(', ')));
    case 'shape':
      return shapeField(p.of, p.gives, p.range, describe(p, undefined));
    default: {
      const unit = usualUnit(p.quantity);
      const span = `${inUnit(p.range[0], unit)} to ${inUnit(p.range[1], unit)}`;
      const given = p.default === undefined ? undefined : inUnit(p.default, unit);
      return quantityField(p.quantity, p.range, `${describe(p, given)}; ${span}`);
    }
  }
}

function describe(p: ParameterDefinition, given: string | undefined): string {
  return given === undefined ? p.title : `${p.title}; default ${given}`;
}
