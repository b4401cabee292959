/** Fields for curves, and the one field for every declared parameter. */
import * as z from 'zod/mini';
import type { ParameterDefinition, Quantity, Shape } from '../define/parameter.js';
import { didYouMean, inUnit, QUANTITY_WORDS, usualUnit } from '../quantity/index.js';
import {
  choiceField,
  complain,
  field,
  pointField,
  quantityField,
  readNumber,
  switchField,
  type Wrong,
} from './field.js';
import { stateTableField } from './field-state-table.js';

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
    complainAt([], value, {
      problem: `a table of 2 to ${MOST_ROWS} rows belongs here`,
      allowed: words,
    });
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
    if (!Array.isArray(row) || row.length !== 2)
      return wrongAt([i], row, { problem: 'a row of two figures belongs here', allowed: words });
    const first = readNumber(row[0], of);
    const second = readNumber(row[1], gives, range);
    if ('problem' in second) wrongAt([i, 1], row[1], second);
    if ('problem' in first) return wrongAt([i, 0], row[0], first);
    if (x.length > 0 && !(first.value > x[x.length - 1])) {
      wrongAt([i, 0], row[0], {
        problem: 'the first column does not rise',
        allowed: 'more than in the row above',
      });
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
): z.ZodMiniType<WrittenShape> {
  const allowed = 'a table [[x, y], ...] or { expression: ..., from: ..., to: ... }';
  return field(
    (value, context): WrittenShape => {
      const at =
        (path: (string | number)[]) => (inner: (string | number)[], input: unknown, wrong: Wrong) =>
          void complain(context, input, wrong, [...path, ...inner]);
      if (Array.isArray(value)) {
        const table = readTable(value, of, gives, range, at([]));
        return table === undefined ? z.NEVER : { table };
      }
      if (typeof value !== 'object' || value === null) {
        return complain(context, value, {
          problem: 'a table or an expression belongs here',
          allowed,
        });
      }
      const { table, expression, from, to, ...rest } = value as Record<string, unknown>;
      for (const key of Object.keys(rest)) {
        complain(
          context,
          key,
          {
            problem: `${key} is not known here`,
            allowed,
            hint: didYouMean(key, ['table', 'expression', 'from', 'to']),
          },
          [key],
        );
      }
      if (table !== undefined) {
        if (expression !== undefined)
          complain(context, value, { problem: 'this has both a table and an expression', allowed });
        const read = readTable(table, of, gives, range, at(['table']));
        return read === undefined ? z.NEVER : { table: read };
      }
      if (typeof expression !== 'string' && typeof expression !== 'number') {
        return complain(context, value, {
          problem: 'a table or an expression belongs here',
          allowed,
        });
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
export function parameterField(p: ParameterDefinition): z.ZodMiniType<unknown> {
  const schema = requiredField(p);
  return p.default === undefined ? schema : z.optional(schema);
}

function requiredField(p: ParameterDefinition): z.ZodMiniType<unknown> {
  switch (p.type) {
    case 'choice':
      return choiceField(p.choices, describe(p, p.default));
    case 'switch':
      return switchField(describe(p, p.default ? 'yes' : 'no'));
    case 'point':
      return pointField(p.range, describe(p, p.default?.join(', ')));
    case 'state-table':
      return stateTableField(p.title);
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
