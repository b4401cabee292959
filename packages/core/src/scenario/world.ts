/** What there is to refer to in a scenario file. */
import type { DeviceDefinition, MechanismDefinition, Role } from '../define/device.js';
import type { Parameters, Quantity } from '../define/parameter.js';
import { SI_UNIT } from '../define/parameter.js';
import { PHASES } from '../define/phase.js';
import type { DrivenEntry, Scenario, SignalEntry } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import type { Catalogues } from '../define/catalogue.js';
import { driverOf, type Draft } from './draft.js';
import { wordList, type IssueList } from './issue-list.js';
import { lookUp } from './look-up.js';
import { camel, kebab } from './names.js';
import type { ReadMechanism } from './parameters.js';

/** How a mechanism's motion is called in the log; the two last at its own ends. */
export function motionWords(definition: MechanismDefinition): readonly string[] {
  return ['rising', 'falling', 'held', `at ${definition.ends[0]}`, `at ${definition.ends[1]}`];
}

/** Modes of a device; one that declares none is always `working`. */
export function modeWords(definition: DeviceDefinition): readonly string[] {
  return definition.modes === undefined ? ['working'] : Object.keys(definition.modes);
}

type Path = readonly (string | number)[];

export interface World {
  /** Devices stand in it with what their own figures decide. */
  readonly draft: Draft;
  readonly catalogues: Catalogues;
  readonly issues: IssueList;
  readonly mechanisms: ReadonlyMap<string, ReadMechanism>;
  /** Node names with the ports that join them. */
  readonly nodes: ReadonlyMap<string, readonly { device: string; port: string }[]>;
  /** Parameters of the devices whose figures are sound. */
  readonly parameters: ReadonlyMap<string, Parameters>;
  /** Wires of each device: its input -> the signal that sets it. */
  readonly signals: ReadonlyMap<string, Readonly<Record<string, SignalEntry>>>;
  /** Mechanisms that follow another. */
  readonly driven: ReadonlyMap<string, DrivenEntry>;
}

/** Tells of a reference to something that is not there. */
export function unknown(
  world: World,
  path: Path,
  what: string,
  name: string,
  known: Iterable<string>,
): void {
  unknownName(world.issues, path, what, name, known);
}

export function unknownName(
  issues: IssueList,
  path: Path,
  what: string,
  name: string,
  known: Iterable<string>,
): void {
  if (issues.full) return;
  const names = [...known];
  issues.add(path, {
    message: `there is no ${what} of this name`,
    found: name,
    allowed: names.length === 0 ? '' : wordList(names),
    hint:
      names.length === 0
        ? `nothing here could be meant: add one, or take ${name} out`
        : didYouMean(name, names),
  });
}

/** Tells of a start given to a mechanism that starts where its driver puts it; true when it is one. */
export function tellDriven(draft: Draft, issues: IssueList, name: string, path: Path): boolean {
  const by = driverOf(draft, name);
  if (by === undefined) return false;
  issues.addKey(path, {
    message: `${name} is driven: it starts where ${by} puts it`,
    found: name,
    hint: `give ${by} its start instead`,
  });
  return true;
}

/** Checks a reference to a device or mechanism of some role; true when it stands. */
export function refer(world: World, path: Path, name: string, role: Role): boolean {
  const { components, mechanisms } = world.draft;
  const mechanical = role === 'leg' || role === 'door';
  const parts: ReadonlyMap<string, { definition?: DeviceDefinition | MechanismDefinition }> =
    mechanical ? mechanisms : components;
  const fitting = [...parts]
    .filter(([, { definition: d }]) => d === undefined || d.role === role || locksInside(d, role))
    .map(([n]) => n);
  if (fitting.includes(name)) return true;
  const other = components.get(name)?.definition ?? mechanisms.get(name)?.definition;
  if (other === undefined) unknown(world, path, role, name, fitting);
  else
    world.issues.add(path, {
      message: `this is a ${other.kind}, but a ${role} belongs here`,
      found: name,
      allowed: wordList(fitting),
    });
  return false;
}

/** An actuator with a lock inside serves as a lock. */
function locksInside(d: DeviceDefinition | MechanismDefinition, role: Role): boolean {
  if ((role !== 'uplock' && role !== 'downlock') || d.role !== 'actuator') return false;
  return 'modes' in d && Object.values(d.modes ?? {}).some((m) => m.bounds !== undefined);
}

/** Checks that a device, mechanism or unit exists and knows a word (mode, motion, phase). */
export function checkWord(world: World, path: Path, name: string, word: string, key: string): void {
  const { components, mechanisms, units } = world.draft;
  const device = components.get(name);
  const mechanism = mechanisms.get(name);
  if (device === undefined && mechanism === undefined && !units.has(name)) {
    unknown(world, [...path, 'device'], 'device, mechanism or unit', name, [
      ...components.keys(),
      ...mechanisms.keys(),
      ...units.keys(),
    ]);
    return;
  }
  let words: readonly string[] = PHASES;
  if (device !== undefined)
    words = device.definition === undefined ? [word] : modeWords(device.definition);
  else if (mechanism !== undefined)
    words = mechanism.definition === undefined ? [word] : motionWords(mechanism.definition);
  if (!words.includes(word)) {
    world.issues.add([...path, key], {
      message: `${name} is never in this state`,
      found: word,
      allowed: wordList(words),
      hint: didYouMean(word, words),
    });
  }
}

/** Quantities of a device's channels by their names in the definition. */
function deviceChannels(definition: DeviceDefinition): Map<string, Quantity> {
  const channels = new Map<string, Quantity>();
  for (const [name, { unit }] of Object.entries(definition.states ?? {}))
    channels.set(name, quantityOfUnit(unit));
  for (const [name, link] of Object.entries(definition.links ?? {}))
    channels.set(name, link.shape === 'travel' ? 'length' : 'angle');
  for (const name of Object.keys(definition.flows ?? {})) channels.set(name, 'flow');
  for (const [name, reading] of Object.entries(definition.readings ?? {}))
    channels.set(name, reading.quantity);
  return channels;
}

function quantityOfUnit(unit: string): Quantity {
  const found = (Object.keys(SI_UNIT) as Quantity[]).find((quantity) => SI_UNIT[quantity] === unit);
  return found ?? 'ratio';
}

/**
 * Finds a channel (`left-leg.angle`, `up-line.pressure`, `relief.through`): its quantity and its name
 * in a run. Undefined, with an issue, when there is none; `quantity` undefined when it cannot be known.
 */
export function findChannel(
  world: World,
  path: Path,
  text: string,
): { name: string; quantity?: Quantity } | undefined {
  const dot = text.indexOf('.');
  const of = dot === -1 ? text : text.slice(0, dot);
  const what = dot === -1 ? '' : text.slice(dot + 1);
  const { components, mechanisms } = world.draft;
  const known = new Map<string, Quantity>();
  if (mechanisms.has(of)) known.set('angle', 'angle').set('speed', 'angular-speed');
  if (world.nodes.has(of)) known.set('pressure', 'pressure').set('void', 'volume');
  const device = components.get(of);
  if (device !== undefined) {
    if (device.definition === undefined) return { name: text };
    for (const [name, quantity] of deviceChannels(device.definition)) known.set(name, quantity);
  }
  if (known.size === 0) {
    unknown(world, path, 'device, mechanism or node', of.slice(0, 60), [
      ...components.keys(),
      ...mechanisms.keys(),
      ...world.nodes.keys(),
    ]);
    return undefined;
  }
  for (const name of [what, camel(what)]) {
    const quantity = known.get(name);
    if (quantity !== undefined) return { name: `${of}.${name}`, quantity };
  }
  const names = [...known.keys()].map((name) => `${of}.${kebab(name)}`);
  world.issues.add(path, {
    message: 'there is no channel of this name',
    found: text,
    allowed: wordList(names),
    hint: didYouMean(text, names),
  });
  return undefined;
}

/** Quantity of a channel of a scenario that was read; `ratio` when there is no such channel. */
export function channelQuantity(
  channel: string,
  scenario: Scenario,
  catalogues: Catalogues,
): Quantity {
  const [of, what] = channel.split('.', 2);
  if (Object.hasOwn(scenario.mechanisms, of) && (what === 'angle' || what === 'speed')) {
    return what === 'angle' ? 'angle' : 'angular-speed';
  }
  const device = Object.hasOwn(scenario.components, of)
    ? lookUp(catalogues.components, scenario.components[of].is)
    : undefined;
  const own = device === undefined ? undefined : deviceChannels(device).get(what);
  return own ?? (what === 'pressure' ? 'pressure' : what === 'void' ? 'volume' : 'ratio');
}
