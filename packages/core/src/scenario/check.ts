import type * as z from 'zod/mini';
import { didYouMean } from '../quantity/index.js';
import { shown, wordList, type IssueList } from './issue-list.js';
import type { Plain } from './parse.js';

type Path = readonly (string | number)[];

/** Checks one piece of the file; its issues go into the list, with their places. */
export function check<S extends z.ZodMiniType>(
  schema: S,
  value: Plain | undefined,
  path: Path,
  issues: IssueList,
): z.output<S> | undefined {
  const known = knownOf(schema);
  const before = isPiece(value) ? known.get(value) : undefined;
  if (before !== undefined) return before as z.output<S>;
  const result = schema.safeParse(value);
  if (result.success) {
    if (isPiece(value)) known.set(value, result.data);
    return result.data;
  }
  for (const issue of result.error.issues) report(issue, value, path, issues);
  return undefined;
}

/**
 * What was read without an issue, by what was written: a change of a file shares all that it leaves
 * alone (edit-data.ts), which is then not read again, and stays the same object for all that keep
 * something by it.
 */
const read = new WeakMap<z.ZodMiniType, WeakMap<object, unknown>>();

function knownOf(schema: z.ZodMiniType): WeakMap<object, unknown> {
  const known = read.get(schema) ?? new WeakMap<object, unknown>();
  read.set(schema, known);
  return known;
}

const isPiece = (value: Plain | undefined): value is Plain & object =>
  typeof value === 'object' && value !== null;

function report(
  issue: z.core.$ZodIssue,
  value: Plain | undefined,
  base: Path,
  issues: IssueList,
): void {
  const inner = issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key));
  const path = [...base, ...inner];
  const found = valueAt(value, inner);
  switch (issue.code) {
    case 'unrecognized_keys': {
      const keys = issue.message.split(',').filter((key) => key !== '');
      for (const key of issue.keys) {
        issues.addKey([...path, key], {
          message: `"${key.slice(0, 60)}" is not known here`,
          allowed: wordList(keys, 40),
          hint: /^\d/.test(key) ? COMMA : didYouMean(key, keys),
        });
      }
      return;
    }
    case 'custom': {
      const { allowed = '', hint = '' } = (issue.params ?? {}) as {
        allowed?: string;
        hint?: string;
      };
      issues.add(path, {
        message: issue.message,
        found: found === undefined ? '' : shown(found),
        allowed,
        hint,
      });
      return;
    }
    case 'invalid_type': {
      const wanted = WANTED[issue.expected] ?? issue.expected;
      const last = path.at(-1) ?? 'this';
      const message =
        found === undefined || found === null
          ? `${last} is missing: ${wanted} belongs here`
          : `${wanted} belongs here`;
      issues.add(path, {
        message,
        found: found === undefined ? '' : shown(found),
        allowed: wanted,
      });
      return;
    }
    case 'invalid_value': {
      const words = issue.values.map(String);
      issues.add(path, {
        message: 'this is not allowed here',
        found: shown(found),
        allowed: wordList(words),
        hint: didYouMean(String(found), words),
      });
      return;
    }
    default:
      issues.add(path, {
        message: found === undefined ? 'this is missing' : 'this does not belong here',
        found: shown(found),
        allowed: '',
      });
  }
}

/** What `{ free-air: 0,5 % }` becomes: two entries. */
const COMMA = 'a comma ends an entry here: write decimals with a point';

const WANTED: Readonly<Record<string, string>> = {
  object: 'lines of `key: value`',
  record: 'lines of `key: value`',
  array: 'a list',
  string: 'text',
  nonoptional: 'a value',
};

function valueAt(value: unknown, path: Path): unknown {
  let at = value;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<string | number, unknown>)[key];
  }
  return at;
}
