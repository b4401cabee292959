/** The field for a controller's state table: states by name, in declared order, the first the initial one. */
import type * as z from 'zod/mini';
import type { StateTable } from '../define/parameter.js';
import { didYouMean } from '../quantity/index.js';
import { complain, field, readNumber, type Wrong } from './field.js';
import { wordList } from './issue-list.js';
import { LONGEST_NAME, NAME, NAME_ALLOWED } from './names.js';

/** Far above any controller of the trade. */
const MOST_STATES = 60;
const MOST_ROWS = 20;
const MOST_WORDS = 40;
/** Longest time of a row, s. */
const LONGEST_TIME = 3600;

// A letter first: JavaScript would put a name of digits alone before the others.
const STATE = /^[A-Za-z][A-Za-z0-9]*(?:[ -][A-Za-z0-9]+)*$/;
const STATE_ALLOWED = `letters, digits, single spaces and hyphens, a letter first, up to ${LONGEST_NAME}`;
const TERM = /^(?:not )?[a-z][a-z0-9]*(?:-[a-z0-9]+)*(?: [a-z0-9]+(?:-[a-z0-9]+)*)?$/;
const TERM_ALLOWED =
  'a heard name (left-up), a control and its position (lever up), or not before either';

const STATE_KEYS = ['drive', 'next'];
const ROW_KEYS = ['if', 'after', 'to'];

type State = StateTable['states'][number];
type Row = State['next'][number];
type Path = (string | number)[];
type Tell = (path: Path, input: unknown, wrong: Wrong) => void;

export function stateTableField(description: string): z.ZodMiniType<StateTable> {
  return field(
    (value, context): StateTable =>
      readStates(value, (path, input, wrong) => void complain(context, input, wrong, path)),
    {
      type: 'object',
      description: `${description}: states by name, the first the initial one`,
      minProperties: 1,
      maxProperties: MOST_STATES,
      propertyNames: { pattern: STATE.source, maxLength: LONGEST_NAME },
      additionalProperties: {
        type: ['object', 'null'],
        additionalProperties: false,
        properties: {
          drive: {
            type: 'array',
            maxItems: MOST_WORDS,
            items: { type: 'string', pattern: NAME.source },
            description: 'signals that are on in this state; all others are off',
          },
          next: {
            type: 'array',
            maxItems: MOST_ROWS,
            description: 'ways on: the first whose terms all hold, after its time, is taken',
            items: {
              type: 'object',
              additionalProperties: false,
              required: ['to'],
              properties: {
                if: {
                  type: 'array',
                  maxItems: MOST_WORDS,
                  items: { type: 'string', pattern: TERM.source },
                  description: `what must hold, all of it: ${TERM_ALLOWED}`,
                },
                after: {
                  type: 'string',
                  description: 'not before this long in the state (a time)',
                },
                to: { type: 'string', description: 'the state that follows' },
              },
            },
          },
        },
      },
    },
  );
}

function readStates(value: unknown, tell: Tell): StateTable {
  if (!isMap(value) || Object.keys(value).length === 0) {
    tell([], value, {
      problem: 'a state table belongs here',
      allowed: 'states by name, each with drive: and next:',
    });
    return { states: [] };
  }
  const names = Object.keys(value);
  if (names.length > MOST_STATES) {
    tell([], value, {
      problem: `this table has ${names.length} states`,
      allowed: `up to ${MOST_STATES}`,
    });
    return { states: [] };
  }
  return {
    states: names.map((name) => {
      if (name.length > LONGEST_NAME || !STATE.test(name)) {
        tell([name], name, { problem: 'this is not a name of a state', allowed: STATE_ALLOWED });
      }
      return readState(name, value[name] ?? {}, names, tell);
    }),
  };
}

function readState(name: string, value: unknown, names: readonly string[], tell: Tell): State {
  if (!isMap(value)) {
    tell([name], value, {
      problem: 'what this state does belongs here',
      allowed: 'drive: [signals] and next: [rows]',
    });
    return { name, drive: [], next: [] };
  }
  tellKeys(value, STATE_KEYS, [name], tell);
  const drive = words(value.drive, NAME, NAME_ALLOWED, 'a signal', [name, 'drive'], tell);
  const rows = listOf(value.next, MOST_ROWS, [name, 'next'], 'rows: { if, after, to }', tell);
  return {
    name,
    drive,
    next: rows.map((row, i) => readRow(row, names, [name, 'next', i], tell)),
  };
}

function readRow(value: unknown, names: readonly string[], path: Path, tell: Tell): Row {
  if (!isMap(value)) {
    tell(path, value, {
      problem: 'a row belongs here',
      allowed: '{ if: [...], after: ..., to: ... }',
    });
    return { if: [], to: '' };
  }
  tellKeys(value, ROW_KEYS, path, tell);
  const terms = words(value.if, TERM, TERM_ALLOWED, 'a term', [...path, 'if'], tell);
  const after =
    value.after === undefined ? undefined : readNumber(value.after, 'time', [0, LONGEST_TIME]);
  if (after !== undefined && 'problem' in after) tell([...path, 'after'], value.after, after);
  const { to } = value;
  if (typeof to !== 'string' || !names.includes(to)) {
    const missing = to === undefined || to === null;
    tell([...path, 'to'], to, {
      problem: missing ? 'the state that follows is missing' : 'there is no state of this name',
      allowed: wordList(names, 20),
      hint: typeof to === 'string' ? didYouMean(to, names) : '',
    });
  }
  return {
    if: terms,
    ...(after !== undefined && 'value' in after && { after: after.value }),
    to: typeof to === 'string' ? to : '',
  };
}

function words(
  value: unknown,
  pattern: RegExp,
  allowed: string,
  what: string,
  path: Path,
  tell: Tell,
): string[] {
  const read: string[] = [];
  listOf(value, MOST_WORDS, path, `a list, e.g. [${what}]`, tell).forEach((word, i) => {
    if (typeof word !== 'string' || word.length > 2 * LONGEST_NAME || !pattern.test(word))
      tell([...path, i], word, { problem: `this is not ${what}`, allowed });
    else if (read.includes(word))
      tell([...path, i], word, { problem: 'this stands here twice', hint: 'remove one of them' });
    else read.push(word);
  });
  return read;
}

function listOf(
  value: unknown,
  most: number,
  path: Path,
  allowed: string,
  tell: Tell,
): readonly unknown[] {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value) && value.length <= most) return value as readonly unknown[];
  tell(path, value, {
    problem: Array.isArray(value) ? 'this list is too long' : 'a list belongs here',
    allowed: Array.isArray(value) ? `up to ${most}` : allowed,
  });
  return [];
}

function tellKeys(
  value: Readonly<Record<string, unknown>>,
  known: readonly string[],
  path: Path,
  tell: Tell,
): void {
  for (const key of Object.keys(value)) {
    if (known.includes(key)) continue;
    tell([...path, key], key, {
      problem: `"${key.slice(0, LONGEST_NAME)}" is not known here`,
      allowed: wordList(known),
      hint: didYouMean(key, known),
    });
  }
}

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
