/** Rules of the author's own: events, conditions, channels. */
import type { Condition, EventPattern, RuleEntry } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { check } from './check.js';
import { isMap } from './draft.js';
import { readNumber } from './field.js';
import { shown, wordList } from './issue-list.js';
import type { Plain } from './parse.js';
import { schemasOf } from './schema.js';
import { CONDITIONS, EVENT, RULES } from './schema-card.js';
import { checkWord, findChannel, type World } from './world.js';
import { parseAnyQuantity, type Problem } from '../quantity/index.js';
import type { Quantity } from '../define/parameter.js';

type Path = readonly (string | number)[];

/** What a rule's schema yields; events and conditions are still as written. */
interface WrittenRule {
  readonly name: string;
  readonly kind: RuleEntry['kind'];
  readonly text: string;
  readonly severity?: RuleEntry['severity'];
  readonly limit?: number;
  readonly channel?: string;
  readonly [part: string]: unknown;
}

export function buildRules(world: World): readonly RuleEntry[] {
  const names = new Set<string>();
  return world.draft.rules.flatMap((raw, i) => {
    const path = ['rules', i];
    const rule = buildRule(world, raw, path);
    const name = isMap(raw) && typeof raw.name === 'string' ? raw.name : '';
    if (names.has(name) || Object.hasOwn(world.catalogues.rules, name)) {
      world.issues.add([...path, 'name'], {
        message: 'a rule of this name exists already',
        found: name,
        hint: 'choose another name',
      });
    }
    names.add(name);
    return rule === undefined ? [] : [rule];
  });
}

function buildRule(world: World, raw: Plain, path: Path): RuleEntry | undefined {
  const { issues } = world;
  if (!isMap(raw)) {
    issues.add(path, {
      message: 'lines of `key: value` belong here',
      found: shown(raw),
      allowed: 'a rule: name, kind, text and what belongs to its kind',
    });
    return undefined;
  }
  const kinds = Object.keys(RULES) as RuleEntry['kind'][];
  const kind = kinds.find((k) => k === raw.kind);
  if (kind === undefined) {
    const message =
      raw.kind === undefined
        ? 'the kind of this rule is missing'
        : 'this kind of rule is not known';
    issues.add([...path, 'kind'], {
      message,
      found: shown(raw.kind),
      allowed: wordList(kinds),
      hint: didYouMean(shown(raw.kind), kinds),
    });
    return undefined;
  }
  const written = check(schemasOf(world.catalogues).rules[kind], raw, path, issues) as
    WrittenRule | undefined;
  const parts = RULES[kind];
  const events: Record<string, EventPattern | undefined> = {};
  const conditions: Record<string, Condition | undefined> = {};
  for (const key of ['first', 'second', 'from'] as const) {
    if (key in parts) events[key] = readEvent(world, raw[key], [...path, key]);
  }
  for (const key of ['condition', 'during'] as const) {
    if (key in parts && (key === 'condition' || raw[key] !== undefined))
      conditions[key] = readCondition(world, raw[key], [...path, key]);
  }
  const limits = kind === 'limit' ? readLevels(world, raw, path, ['low', 'high']) : undefined;
  if (written === undefined) return undefined;
  const { name, text, severity = 'caution', limit } = written;
  return {
    name,
    kind,
    text,
    severity,
    ...events,
    ...conditions,
    ...limits,
    ...(limit !== undefined && { limit }),
  };
}

/** `{ device: ..., to: ... }` */
export function readEvent(
  world: World,
  raw: Plain | undefined,
  path: Path,
): EventPattern | undefined {
  const event = check(EVENT, raw, path, world.issues);
  if (event !== undefined) checkWord(world, path, event.device, event.to, 'to');
  return event;
}

function readCondition(world: World, raw: Plain | undefined, path: Path): Condition | undefined {
  if (isMap(raw) && raw.channel !== undefined) {
    check(CONDITIONS.channel, raw, path, world.issues);
    const levels = readLevels(world, raw, path, ['above', 'below']);
    return levels as Condition | undefined;
  }
  const condition = check(CONDITIONS.device, raw, path, world.issues);
  if (condition !== undefined) checkWord(world, path, condition.device, condition.in, 'in');
  return condition;
}

/** A channel with one or two levels in the channel's own quantity. */
function readLevels(
  world: World,
  raw: Record<string, Plain> | Readonly<Record<string, Plain>>,
  path: Path,
  keys: readonly [string, string],
): Record<string, unknown> | undefined {
  if (typeof raw.channel !== 'string') return undefined;
  const channel = findChannel(world, [...path, 'channel'], raw.channel);
  const levels: Record<string, unknown> = {};
  for (const key of keys) {
    if (raw[key] === undefined) continue;
    const read = readLevel(raw[key], channel?.quantity);
    if ('problem' in read) {
      // Without its channel a level cannot be judged; the channel has its own issue.
      if (channel !== undefined)
        world.issues.add([...path, key], {
          message: read.problem,
          found: shown(raw[key]),
          allowed: read.allowed,
          hint: 'hint' in read ? read.hint : '',
        });
    } else levels[key] = read.value;
  }
  if (Object.keys(levels).length === 0 && keys.every((key) => raw[key] === undefined)) {
    world.issues.add(path, { message: 'a level is missing', allowed: `${keys[0]} or ${keys[1]}` });
  }
  return channel === undefined ? undefined : { channel: channel.name, ...levels };
}

function readLevel(
  raw: Plain,
  quantity: Quantity | undefined,
): { value: number } | Problem | { problem: string; allowed: string } {
  if (quantity === undefined) return parseAnyQuantity(shown(raw));
  const read = readNumber(raw, quantity);
  return 'problem' in read ? { allowed: '', ...read } : read;
}
