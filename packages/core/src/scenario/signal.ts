/** Wires: which signal of another device sets an input, and whether all that a state table hears is wired. */
import type { DeviceDefinition } from '../define/device.js';
import type { StateTable } from '../define/parameter.js';
import type { SignalEntry } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { isMap, type Draft, type DraftPart } from './draft.js';
import { shown, wordList, type IssueList } from './issue-list.js';
import { findName, kebab } from './names.js';
import { unknownName } from './world.js';

type Path = readonly (string | number)[];
type Devices = ReadonlyMap<string, DraftPart<DeviceDefinition>>;
type Wires = Record<string, SignalEntry>;

/** The wires of every device that hears something: input -> signal. */
export function readSignals(draft: Draft, issues: IssueList): Map<string, Wires> {
  const all = new Map<string, Wires>();
  const worked = workedByCards(draft);
  for (const [name, part] of draft.components) {
    const path = ['components', name];
    const written = isMap(part.raw.signals) ? part.raw.signals : {};
    const wires: Wires = {};
    for (const [key, text] of Object.entries(written)) {
      const inner = [...path, 'signals', key];
      const from =
        typeof text === 'string' ? readWire(draft.components, text, inner, issues) : undefined;
      const input = readInput(part.definition, key, inner, issues);
      if (input === undefined) continue;
      if (Object.hasOwn(wires, input))
        issues.addKey(inner, {
          message: 'this input is wired already',
          found: key,
          hint: 'remove one of them',
        });
      if (from !== undefined) checkPositions(draft.components, name, input, from, inner, issues);
      // A wire that leads nowhere has its own issue; the input is wired all the same.
      wires[input] = from ?? { device: '', signal: '' };
    }
    all.set(name, wires);
    if (part.definition !== undefined)
      checkTables(part, {
        wires,
        written: Object.keys(written),
        worked: worked.get(name),
        path,
        issues,
      });
  }
  return all;
}

/** What a state table drives is on or off: a control of three positions would take that for two of them. */
function checkPositions(
  components: Devices,
  hearing: string,
  input: string,
  { device, signal }: SignalEntry,
  path: Path,
  issues: IssueList,
): void {
  const { choices = [] } = components.get(hearing)?.definition?.inputs?.[input] ?? {};
  const says = Object.values(components.get(device)?.definition?.parameters ?? {});
  if (choices.length <= 2 || !says.some(({ type }) => type === 'state-table')) return;
  issues.add(path, {
    message: `this input has ${choices.length} positions (${wordList(choices)}), and a state table only says on or off`,
    found: `${device}.${kebab(signal)}`,
    hint: "let a card's step work it, or take a valve with a coil for each way",
  });
}

/** The input's name in the definition; what it may be is known only when the definition is. */
function readInput(
  definition: DeviceDefinition | undefined,
  key: string,
  path: Path,
  issues: IssueList,
): string | undefined {
  if (definition === undefined) return undefined;
  const { kind, inputs = {}, tailor } = definition;
  const input = findName(inputs, key);
  if (input === undefined) {
    const known = Object.keys(inputs).map(kebab);
    issues.addKey(path, {
      message:
        tailor === undefined
          ? `a ${kind} has no such input`
          : 'nothing in the table of this device hears it',
      found: key,
      allowed: wordList(known, 40),
      hint: didYouMean(key, known),
    });
    return undefined;
  }
  const { quantity } = inputs[input];
  if (quantity === undefined || quantity === 'ratio' || quantity === 'count') return input;
  issues.addKey(path, {
    message: 'this input takes a figure with a unit, and a wire only says on or off',
    found: key,
    hint: "let a card's step work it",
  });
  return undefined;
}

/** `device` or `device.signal`. */
function readWire(
  components: Devices,
  text: string,
  path: Path,
  issues: IssueList,
): SignalEntry | undefined {
  if (issues.full) return undefined;
  const dot = text.indexOf('.');
  const device = dot === -1 ? text : text.slice(0, dot);
  const part = components.get(device);
  if (part === undefined) {
    unknownName(issues, path, 'device', shown(device), talkers(components));
    return undefined;
  }
  if (part.definition === undefined) return undefined;
  const signals = part.definition.signals ?? {};
  const names = Object.keys(signals);
  if (names.length === 0) {
    issues.add(path, {
      message: `a ${part.definition.kind} says nothing by wire`,
      found: text,
      allowed: wordList(talkers(components)),
    });
    return undefined;
  }
  const signal = dot === -1 ? names[0] : findName(signals, text.slice(dot + 1));
  if (signal !== undefined) return { device, signal };
  const known = names.map((name) => `${device}.${kebab(name)}`);
  issues.add(path, {
    message: `${device} has no such signal`,
    found: text,
    allowed: wordList(known, 40),
    hint: didYouMean(text, known),
  });
  return undefined;
}

/** Devices that say something by wire. */
function talkers(components: Devices): string[] {
  return [...components].flatMap(([name, { definition }]) =>
    Object.keys(definition?.signals ?? {}).length > 0 ? [name] : [],
  );
}

/** Which inputs some card's step works, as written. */
function workedByCards(draft: Draft): Map<string, Set<string>> {
  const worked = new Map<string, Set<string>>();
  for (const card of draft.cards.values()) {
    const steps = isMap(card) && Array.isArray(card.steps) ? card.steps : [];
    for (const step of steps) {
      if (!isMap(step) || typeof step.device !== 'string' || typeof step.input !== 'string')
        continue;
      const inputs = worked.get(step.device) ?? new Set<string>();
      worked.set(step.device, inputs.add(step.input));
    }
  }
  return worked;
}

interface Hearing {
  readonly wires: Wires;
  /** Inputs as the file names them, wired well or not. */
  readonly written: readonly string[];
  readonly worked: ReadonlySet<string> | undefined;
  readonly path: Path;
  readonly issues: IssueList;
}

function checkTables(part: DraftPart<DeviceDefinition>, hearing: Hearing): void {
  for (const [name, { type }] of Object.entries(part.definition?.parameters ?? {})) {
    const table = part.parameters?.[kebab(name)];
    if (type === 'state-table' && table !== undefined)
      checkTable(part.definition!, table as StateTable, [...hearing.path, kebab(name)], hearing);
  }
}

/** Every name that a table hears must be said by something. */
function checkTable(
  definition: DeviceDefinition,
  table: StateTable,
  at: Path,
  hearing: Hearing,
): void {
  const { wires, written, worked, issues } = hearing;
  const told = new Set<string>();
  for (const { name, next } of table.states) {
    next.forEach((row, i) =>
      row.if.forEach((term, j) => {
        const what = term.replace(/^not /, '');
        const path = [...at, name, 'next', i, 'if', j];
        const input = findName(definition.inputs ?? {}, what);
        if (
          input === undefined ||
          Object.hasOwn(wires, input) ||
          worked?.has(what) ||
          told.has(what) ||
          issues.full
        )
          return;
        told.add(what);
        issues.add(path, {
          message: `nothing says "${what}" to this ${definition.kind}`,
          found: term,
          allowed:
            written.length === 0
              ? 'a name wired under signals'
              : `a name wired under signals: ${wordList(written, 40)}`,
          hint:
            didYouMean(what, written) || `write ${what}: and the device that says it under signals`,
        });
      }),
    );
  }
}
