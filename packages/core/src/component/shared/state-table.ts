/**
 * A controller's state table as modes, inputs and signals, and what is wrong with one.
 *
 * Rows of a state are tried in declared order; the first whose terms all hold, after its time in the
 * state where it has one, is taken. A term is `lever up` (or neutral, down) or the name of something
 * heard, either after `not `. Everything heard changes at transitions only, so a row without a time
 * is taken the instant its last term comes true.
 */
import type {
  GuardFrame,
  InputDefinition,
  ModeDefinition,
  SignalDefinition,
  StateTable,
} from '../../define/index.js';
import { LEVER } from './selector.js';

type Row = StateTable['states'][number]['next'][number];

/** Name of the input that is worked by hand. */
const HAND = 'lever';

/** Sooner than this before its time, s, a row counts as over: a break at that time falls on either side of it by rounding. */
const GRACE = 1e-9;

interface Term {
  readonly not: boolean;
  /** Name of the input: `lever` or what is heard. */
  readonly name: string;
  /** The lever's word; empty for what is heard. */
  readonly word: string;
}

/** A term as written; undefined when it is neither a heard name nor the lever at one of its words. */
function readTerm(text: string): Term | undefined {
  const [, negation, name, word = ''] = /^(not )?(\S+)(?: (\S+))?$/.exec(text) ?? [];
  const not = negation !== undefined;
  if (name === undefined || name === 'not') return undefined;
  if (name !== HAND) return word === '' ? { not, name, word } : undefined;
  return LEVER.some((w) => w === word) ? { not, name, word } : undefined;
}

const termsOf = (row: Row): readonly Term[] => row.if.flatMap((text) => readTerm(text) ?? []);

/** Names the table listens to besides its lever, in order of first mention. */
export function heardNames(table: StateTable): readonly string[] {
  const names = table.states
    .flatMap((state) => state.next.flatMap(termsOf))
    .filter(({ word }) => word === '')
    .map(({ name }) => name);
  return [...new Set(names)];
}

/** Inputs for what the table listens to besides its lever; off until something says otherwise. */
export function tableInputs(table: StateTable): Readonly<Record<string, InputDefinition>> {
  const input = (title: string): InputDefinition => ({ title, choices: ['off', 'on'], initial: 0 });
  return Object.fromEntries(heardNames(table).map((name) => [name, input(name)]));
}

/** Everything the table drives, 1 in the states that drive it. */
export function tableSignals(table: StateTable): Readonly<Record<string, SignalDefinition>> {
  const names = new Set(table.states.flatMap(({ drive }) => drive));
  return Object.fromEntries(
    [...names].map((name) => {
      const on = table.states.map(({ drive }) => (drive.includes(name) ? 1 : 0));
      return [name, { title: name, value: (d: GuardFrame) => on[d.mode] }];
    }),
  );
}

const CAUSE_OF_TERM = ({ not, name, word }: Term): string =>
  word === '' ? `${name} is ${not ? 'off' : 'on'}` : `the lever is ${not ? 'not ' : ''}${word}`;

/** Why a row is taken, as a clause for the log. */
function causeOf(row: Row): string {
  const clauses = termsOf(row).map(CAUSE_OF_TERM);
  if (row.after !== undefined) clauses.push(`${Number(row.after.toPrecision(6))} s are over`);
  if (clauses.length === 0) return 'its work is done at once';
  return clauses.length === 1
    ? clauses[0]
    : `${clauses.slice(0, -1).join(', ')} and ${clauses[clauses.length - 1]}`;
}

/** One mode per state; `inputs` are the names of the controller's inputs in their order. */
export function tableModes(
  table: StateTable,
  inputs: readonly string[],
): Readonly<Record<string, ModeDefinition>> {
  return Object.fromEntries(
    table.states.map((state) => [
      state.name,
      {
        title: state.name,
        active: state.drive.length > 0,
        guards: state.next.flatMap((row, i) =>
          row.if.length === 0
            ? []
            : [
                {
                  to: row.to,
                  when: rowGuard(row, inputs, soonest(state.next.slice(0, i))),
                  cause: causeOf(row),
                  reads: [...new Set(termsOf(row).map(({ name }) => name))],
                },
              ],
        ),
        timers: state.next
          .filter((row) => row.if.length === 0)
          .map((row) => ({ to: row.to, after: () => row.after ?? 0, cause: causeOf(row) })),
      },
    ]),
  );
}

/** The time at which one of these rows is taken whatever is heard, s. */
const soonest = (rows: readonly Row[]): number =>
  Math.min(Infinity, ...rows.filter((r) => r.if.length === 0).map((r) => r.after ?? 0));

/**
 * Above zero while all terms of a row hold after its time, until an earlier row that waits for its
 * time alone has its turn (guards go before timers; so declared order is kept).
 */
function rowGuard(row: Row, inputs: readonly string[], until: number): (d: GuardFrame) => number {
  const terms = termsOf(row);
  const at = Int32Array.from(terms, ({ name }) => inputs.indexOf(name));
  const wanted = Int32Array.from(terms, ({ word }) =>
    word === '' ? 1 : LEVER.findIndex((w) => w === word),
  );
  const not = terms.map((t) => t.not);
  const { after } = row;
  return (d) => {
    for (let i = 0; i < at.length; i++) if ((d.input(at[i]) === wanted[i]) === not[i]) return -1;
    if (after === undefined && until === Infinity) return 1;
    const since = d.sinceEntry();
    if (since >= until - GRACE) return -1;
    return after === undefined ? 1 : since - after + GRACE;
  };
}

/** What is wrong with a table, as sentences; empty when nothing is. */
export function tableFindings(table: StateTable): readonly string[] {
  const names = table.states.map(({ name }) => name);
  if (names.length === 0) return ['must have at least one state'];
  const findings: string[] = [];
  const say = (text: string): void => void findings.push(text);
  names
    .filter((name, i) => names.indexOf(name) < i)
    .forEach((name) => say(`must not have two states called "${name}"`));
  for (const { name, next } of table.states) {
    for (const row of next) {
      if (!names.includes(row.to))
        say(`must not go on from "${name}" to "${row.to}", which is not one of its states`);
      if (row.to === name && row.after === undefined)
        say(`must not go from "${name}" to itself without a time: it would do so for ever`);
      row.if
        .filter((text) => readTerm(text) === undefined)
        .forEach((text) =>
          say(
            `must have terms such as "lever up", "not lever down", "door-open" or "not door-open", not "${text}" (in "${name}")`,
          ),
        );
    }
  }
  if (findings.length === 0)
    unreached(table).forEach((name) =>
      say(`must have a way into its state "${name}" from the first one, "${names[0]}"`),
    );
  return findings;
}

/** States that no way leads to from the first. */
function unreached(table: StateTable): readonly string[] {
  const reached = new Set([table.states[0].name]);
  for (const name of reached)
    table.states.find((s) => s.name === name)?.next.forEach(({ to }) => reached.add(to));
  return table.states.map(({ name }) => name).filter((name) => !reached.has(name));
}
