/** Test cards: what the operator does and under which conditions. */
import type { Card, CardStep, FaultEntry } from '../define/scenario.js';
import type { Parameters, ParameterValue } from '../define/parameter.js';
import type { InputDefinition } from '../define/device.js';
import { didYouMean } from '../quantity/index.js';
import { lookUp } from './look-up.js';
import { check } from './check.js';
import { isMap, list } from './draft.js';
import { parameterField, readNumber } from './field.js';
import { shown, wordList } from './issue-list.js';
import { camel, kebab } from './names.js';
import { settle } from './parameters.js';
import type { Plain } from './parse.js';
import { schemasOf } from './schema.js';
import { SETTING_ALLOWED, settingsOf, splitSetting } from './setting.js';
import { checkWord, unknown, type World } from './world.js';

type Path = readonly (string | number)[];
type Built = Readonly<Record<string, { readonly parameters: Parameters }>>;

/** Reads all cards. `components` and `mechanisms` are what could be built, for checks between parameters. */
export function buildCards(world: World, components: Built, mechanisms: Built): Record<string, Card> {
  const { draft, issues } = world;
  const schema = schemasOf(world.catalogues).card;
  if (draft.cards.size === 0) issues.add(['cards'], { message: 'a scenario needs a test card', allowed: 'cards: with at least one card' });
  const cards: Record<string, Card> = {};
  for (const [name, raw] of draft.cards) {
    const path = ['cards', name];
    const card = check(schema, raw, path, issues);
    if (!isMap(raw)) continue;
    const set = readSettings(world, raw.set, [...path, 'set'], components, mechanisms);
    const faults = list(raw.faults, [...path, 'faults'], issues).flatMap((f, i) => readFault(world, f, [...path, 'faults', i]) ?? []);
    const start = readStart(world, raw.start, [...path, 'start']);
    const steps = list(raw.steps, [...path, 'steps'], issues).flatMap((s, i) => readStep(world, s, [...path, 'steps', i]) ?? []);
    if (card === undefined) continue;
    const expect = card.expect ?? [];
    expect.forEach((rule, i) => checkExpected(world, rule, [...path, 'expect', i]));
    const { title, note = '', temperature, duration } = card;
    cards[name] = { title, note, ...(temperature !== undefined && { temperature }), duration, set, faults, steps, expect, start };
  }
  return cards;
}

function readSettings(world: World, raw: Plain | undefined, path: Path, components: Built, mechanisms: Built): Card['set'] {
  const set: Record<string, ParameterValue> = {};
  if (!isMap(raw)) return set;
  const touched = new Map<string, { section: 'components' | 'mechanisms'; name: string; key: string; parameters: Record<string, ParameterValue> }>();
  for (const [text, written] of Object.entries(raw)) {
    const inner = [...path, text];
    const found = findSetting(world, text, inner);
    if (found === undefined) continue;
    const { section, name, key, definition, range } = found;
    const value = check(parameterField(definition), written, inner, world.issues);
    const settled = value === undefined ? undefined : settle(definition, value, range, inner, world.issues);
    if (settled === undefined) continue;
    set[[section, ...(name === '' ? [] : [name]), key].join('.')] = settled;
    const healthy = section === 'components' ? components[name] : section === 'mechanisms' ? mechanisms[name] : undefined;
    if (healthy === undefined || (section !== 'components' && section !== 'mechanisms')) continue;
    const id = `${section}.${name}`;
    const change = touched.get(id) ?? { section, name, key: text, parameters: { ...healthy.parameters } };
    change.parameters[key] = settled;
    touched.set(id, change);
  }
  for (const { section, name, key, parameters } of touched.values()) {
    const definition = world.draft[section].get(name)?.definition;
    if (definition === undefined) continue;
    const wrong = definition.check?.(parameters) ?? [];
    for (const { parameter, message } of wrong) {
      const own = `${section}.${name}.${kebab(parameter)}`;
      world.issues.add([...path, own in raw ? own : key], { message: `set here, ${message}`, found: shown(raw[own in raw ? own : key]) });
    }
  }
  return set;
}

function findSetting(world: World, text: string, path: Path) {
  const split = splitSetting(text);
  if (split === undefined) {
    world.issues.addKey(path, { message: 'this is not something a card can set', found: text, allowed: SETTING_ALLOWED });
    return undefined;
  }
  const { section, name, key } = split;
  const { draft, catalogues, issues } = world;
  let kind: string | undefined;
  if (section !== 'fluid') {
    const parts = draft[section];
    if (!parts.has(name)) {
      issues.addKey(path, { message: `there is nothing of this name under ${section}`, found: name, allowed: wordList([...parts.keys()]), hint: didYouMean(name, parts.keys()) });
      return undefined;
    }
    if (section !== 'nodes') {
      kind = draft[section].get(name)?.definition?.kind;
      if (kind === undefined) return undefined;
    }
  }
  const settings = settingsOf(section, kind, catalogues);
  const definition = lookUp(settings, camel(key));
  if (definition === undefined) {
    const known = Object.keys(settings).map(kebab);
    issues.addKey(path, { message: `"${key.slice(0, 60)}" cannot be set here`, found: text, allowed: wordList(known, 40), hint: didYouMean(key, known) });
    return undefined;
  }
  return { section, name, key: camel(key), definition, range: world.mechanisms.get(name)?.range };
}

function readFault(world: World, raw: Plain, path: Path): FaultEntry | undefined {
  const { catalogues, draft, issues } = world;
  const entry = check(schemasOf(catalogues).fault, raw, path, issues);
  if (!isMap(raw) || typeof raw.on !== 'string') return entry;
  const { on } = raw;
  const part = draft.components.get(on) ?? draft.mechanisms.get(on);
  const fault = lookUp(catalogues.faults, raw.fault);
  if (part === undefined) {
    unknown(world, [...path, 'on'], 'device or mechanism', on, [...draft.components.keys(), ...draft.mechanisms.keys()]);
  } else if (fault !== undefined && part.definition !== undefined && !fault.befalls.includes(part.definition.kind)) {
    const all = [...draft.components, ...draft.mechanisms];
    const fitting = all.filter(([, p]) => fault.befalls.includes(p.definition?.kind ?? '')).map(([name]) => name);
    issues.add([...path, 'on'], { message: `${fault.kind} cannot befall a ${part.definition.kind}`, found: on, allowed: wordList(fitting) });
  }
  return entry;
}

function readStart(world: World, raw: Plain | undefined, path: Path): Record<string, number> {
  const start: Record<string, number> = {};
  if (!isMap(raw)) return start;
  for (const [name, written] of Object.entries(raw)) {
    if (!world.draft.mechanisms.has(name)) {
      const known = [...world.draft.mechanisms.keys()];
      world.issues.addKey([...path, name], { message: 'there is no mechanism of this name', found: name, allowed: wordList(known), hint: didYouMean(name, known) });
      continue;
    }
    const read = readNumber(written, 'angle', world.mechanisms.get(name)?.range);
    if ('problem' in read) world.issues.add([...path, name], { message: read.problem, found: shown(written), allowed: read.allowed, hint: read.hint });
    else start[name] = read.value;
  }
  return start;
}

function readStep(world: World, raw: Plain, path: Path): CardStep | undefined {
  const { issues, draft } = world;
  const step = check(schemasOf(world.catalogues).step, raw, path, issues);
  if (!isMap(raw)) return undefined;
  if (raw.at === undefined && raw.after === undefined) issues.add(path, { message: 'this step does not say when', allowed: 'at: a time, or after: an event' });
  const after = isMap(raw.after) ? raw.after : undefined;
  if (typeof after?.device === 'string' && typeof after.to === 'string') {
    checkWord(world, [...path, 'after'], after.device, after.to, 'to');
  }
  if (typeof raw.device !== 'string') return undefined;
  const worked = [...draft.components].filter(([, p]) => p.definition === undefined || Object.keys(p.definition.inputs ?? {}).length > 0).map(([n]) => n);
  const definition = draft.components.get(raw.device)?.definition;
  if (!worked.includes(raw.device)) {
    if (definition === undefined) unknown(world, [...path, 'device'], 'device that an operator can work', raw.device, worked);
    else issues.add([...path, 'device'], { message: `a ${definition.kind} has nothing for the operator to work`, found: raw.device, allowed: wordList(worked) });
    return undefined;
  }
  if (definition === undefined) return undefined;
  const inputs = definition.inputs ?? {};
  const names = Object.keys(inputs).map(kebab);
  // A device with a single control needs no saying which.
  const written = raw.input ?? (names.length === 1 ? names[0] : undefined);
  const input = lookUp(inputs, camel(String(written)));
  if (input === undefined) {
    issues.add([...path, 'input'], { message: written === undefined ? 'which control is missing' : `a ${definition.kind} has no such control`, found: shown(raw.input), allowed: wordList(names), hint: didYouMean(String(written), names) });
    return undefined;
  }
  const value = readInput(world, input, raw.value, [...path, 'value']);
  if (step === undefined || value === undefined) return undefined;
  const { at = 0, device } = step;
  return { at, ...(step.after !== undefined && { after: step.after }), device, input: camel(String(written)), value, text: String(raw.value) };
}

function readInput(world: World, input: InputDefinition, raw: Plain | undefined, path: Path): number | undefined {
  if (raw === undefined || raw === null || typeof raw === 'object') return undefined;
  if (input.choices !== undefined) {
    const index = input.choices.indexOf(String(raw));
    if (index !== -1) return index;
    world.issues.add(path, { message: 'this word is not one of those allowed', found: shown(raw), allowed: wordList(input.choices), hint: didYouMean(String(raw), input.choices) });
    return undefined;
  }
  const read = readNumber(raw, input.quantity ?? 'ratio');
  if (!('problem' in read)) return read.value;
  world.issues.add(path, { message: read.problem, found: shown(raw), allowed: read.allowed, hint: read.hint });
  return undefined;
}

function checkExpected(world: World, rule: string, path: Path): void {
  const own = world.draft.rules.flatMap((r) => (isMap(r) && typeof r.name === 'string' ? [r.name] : []));
  const known = [...Object.keys(world.catalogues.rules), ...own];
  if (!known.includes(rule)) unknown(world, path, 'rule', rule, known);
}

