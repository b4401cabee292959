/** Test cards: what the operator does and under which conditions. */
import type { Card, FaultEntry } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { lookUp } from './look-up.js';
import { readSettings, type Built } from './card-set.js';
import { check } from './check.js';
import { isMap, list } from './draft.js';
import { readNumber } from './field.js';
import { shown, wordList } from './issue-list.js';
import { FLUID } from './names.js';
import type { Plain } from './parse.js';
import { schemasOf } from './schema.js';
import { readStep } from './step.js';
import { tellDriven, unknown, type World } from './world.js';

type Path = readonly (string | number)[];

/** Reads all cards. `components` and `mechanisms` are what could be built, for checks between parameters. */
export function buildCards(
  world: World,
  components: Built,
  mechanisms: Built,
): Record<string, Card> {
  const { draft, issues } = world;
  const schema = schemasOf(world.catalogues).card;
  if (draft.cards.size === 0)
    issues.add(['cards'], {
      message: 'a scenario needs a test card',
      allowed: 'cards: with at least one card',
    });
  const cards: Record<string, Card> = {};
  for (const [name, raw] of draft.cards) {
    const path = ['cards', name];
    const card = check(schema, raw, path, issues);
    if (!isMap(raw)) continue;
    const set = readSettings(world, raw.set, [...path, 'set'], components, mechanisms);
    const faults = list(raw.faults, [...path, 'faults'], issues).flatMap(
      (f, i) => readFault(world, f, [...path, 'faults', i]) ?? [],
    );
    const start = readStart(world, raw.start, [...path, 'start']);
    const gas = readGas(world, raw.gas, [...path, 'gas']);
    const steps = list(raw.steps, [...path, 'steps'], issues).flatMap(
      (s, i) => readStep(world, s, [...path, 'steps', i]) ?? [],
    );
    if (card === undefined) continue;
    const expect = card.expect ?? [];
    expect.forEach((rule, i) => checkExpected(world, rule, [...path, 'expect', i]));
    const { title, note = '', temperature, airspeed, sideslip, duration } = card;
    cards[name] = {
      title,
      note,
      ...(temperature !== undefined && { temperature }),
      ...(airspeed !== undefined && { airspeed }),
      ...(sideslip !== undefined && { sideslip }),
      duration,
      set,
      faults,
      steps,
      expect,
      start,
      gas,
    };
  }
  return cards;
}

function readFault(world: World, raw: Plain, path: Path): FaultEntry | undefined {
  const { catalogues, draft, issues } = world;
  const entry = check(schemasOf(catalogues).fault, raw, path, issues);
  if (!isMap(raw) || typeof raw.on !== 'string') return entry;
  const { on } = raw;
  const kinds = new Map<string, string | undefined>([[FLUID, FLUID]]);
  for (const [name, { definition }] of [...draft.components, ...draft.mechanisms])
    kinds.set(name, definition?.kind);
  const fault = lookUp(catalogues.faults, raw.fault);
  const kind = kinds.get(on);
  if (!kinds.has(on)) unknown(world, [...path, 'on'], 'device or mechanism', on, kinds.keys());
  else if (fault !== undefined && kind !== undefined && !fault.befalls.includes(kind)) {
    const fitting = [...kinds].flatMap(([name, k]) =>
      k !== undefined && fault.befalls.includes(k) ? [name] : [],
    );
    issues.add([...path, 'on'], {
      message: `${fault.kind} cannot befall ${kind === FLUID ? 'the oil' : `a ${kind}`}`,
      found: on,
      allowed: wordList(fitting),
    });
  }
  return entry;
}

/** Figures by the name of what they belong to; `read` gives undefined for one it has told about itself. */
function readFigures(
  world: World,
  raw: Plain | undefined,
  path: Path,
  what: string,
  known: Pick<ReadonlyMap<string, unknown>, 'has' | 'keys'>,
  read: (name: string, written: Plain, at: Path) => ReturnType<typeof readNumber> | undefined,
): Record<string, number> {
  const figures: Record<string, number> = {};
  if (!isMap(raw)) return figures;
  for (const [name, written] of Object.entries(raw)) {
    const at = [...path, name];
    if (!known.has(name)) {
      const names = [...known.keys()];
      world.issues.addKey(at, {
        message: `there is no ${what} of this name`,
        found: name,
        allowed: wordList(names),
        hint: didYouMean(name, names),
      });
      continue;
    }
    const found = read(name, written, at);
    if (found === undefined) continue;
    if ('problem' in found)
      world.issues.add(at, {
        message: found.problem,
        found: shown(written),
        allowed: found.allowed,
        hint: found.hint,
      });
    else figures[name] = found.value;
  }
  return figures;
}

function readStart(world: World, raw: Plain | undefined, path: Path): Record<string, number> {
  const { draft, issues, mechanisms } = world;
  return readFigures(world, raw, path, 'mechanism', draft.mechanisms, (name, written, at) =>
    tellDriven(draft, issues, name, at)
      ? undefined
      : readNumber(written, 'angle', mechanisms.get(name)?.range),
  );
}

/** Word for a node that has lost all its oil. */
export const DRY = 'dry';
/** More gas than any node holds, m3: no oil is left. */
export const ALL = 1;

function readGas(world: World, raw: Plain | undefined, path: Path): Record<string, number> {
  return readFigures(world, raw, path, 'node', world.nodes, (_, written) => {
    if (written === DRY) return { value: ALL };
    const read = readNumber(written, 'volume', [0, ALL]);
    return 'problem' in read ? { ...read, allowed: `${read.allowed}, or ${DRY}` } : read;
  });
}

function checkExpected(world: World, rule: string, path: Path): void {
  const own = world.draft.rules.flatMap((r) =>
    isMap(r) && typeof r.name === 'string' ? [r.name] : [],
  );
  const known = [...Object.keys(world.catalogues.rules), ...own];
  if (!known.includes(rule)) unknown(world, path, 'rule', rule, known);
}
