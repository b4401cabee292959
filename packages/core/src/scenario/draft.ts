/** A scenario file whose pieces have been checked one by one; references are not followed yet. */
import type * as z from 'zod/mini';
import type { DeviceDefinition, MechanismDefinition } from '../define/device.js';
import { kept } from '../define/kept.js';
import { didYouMean } from '../quantity/index.js';
import type { Catalogues } from '../define/catalogue.js';
import { check } from './check.js';
import { shown, wordList, type IssueList } from './issue-list.js';
import { LONGEST_NAME, NAME, NAME_ALLOWED } from './names.js';
import type { Plain, PlainMap } from './parse.js';
import { schemasOf, type Schemas } from './schema.js';
import type { KindSchema } from './schema-part.js';

/** A device or mechanism: what of it could be read. */
export interface DraftPart<D> {
  readonly definition?: D;
  /** As written, for references that can be followed even where something else is wrong. */
  readonly raw: PlainMap;
  readonly frame?: z.output<KindSchema['frame']>;
  readonly parameters?: Record<string, unknown>;
}

export interface Draft {
  readonly title?: string;
  readonly note: string;
  readonly fluid?: z.output<Schemas['fluid']>;
  readonly ambient?: number;
  readonly airspeed?: number;
  readonly sideslip?: number;
  readonly components: ReadonlyMap<string, DraftPart<DeviceDefinition>>;
  readonly mechanisms: ReadonlyMap<string, DraftPart<MechanismDefinition>>;
  readonly nodes: ReadonlyMap<string, { volume?: number; air?: number; note?: string } | undefined>;
  readonly units: ReadonlyMap<string, z.output<Schemas['unit']> | undefined>;
  readonly limits?: Record<string, number | undefined>;
  readonly rules: readonly Plain[];
  readonly cards: ReadonlyMap<string, Plain>;
}

const TOP_KEYS = [
  'wheelwell',
  'title',
  'note',
  'fluid',
  'ambient',
  'airspeed',
  'sideslip',
  'components',
  'mechanisms',
  'nodes',
  'units',
  'limits',
  'rules',
  'cards',
];

/** Checks the pieces of a file; undefined when it is no map at all. */
export function readDraft(
  data: Plain,
  catalogues: Catalogues,
  issues: IssueList,
): Draft | undefined {
  const schemas = schemasOf(catalogues);
  if (!isMap(data)) {
    issues.add([], {
      message: 'this is not a scenario: lines of `key: value` belong here',
      found: shown(data),
      allowed: wordList(TOP_KEYS, 20),
    });
    return undefined;
  }
  for (const key of Object.keys(data)) {
    if (!TOP_KEYS.includes(key)) {
      issues.addKey([key], {
        message: `"${key.slice(0, 60)}" is not known here`,
        allowed: wordList(TOP_KEYS, 20),
        hint: didYouMean(key, TOP_KEYS),
      });
    }
  }
  if (data.wheelwell !== 1) {
    const message =
      data.wheelwell === undefined
        ? 'the format version is missing'
        : 'this format version is not known';
    issues.add(['wheelwell'], {
      message,
      found: data.wheelwell === undefined ? '' : shown(data.wheelwell),
      allowed: 'wheelwell: 1',
      hint: '',
    });
  }
  if (!isMap(data.components) || Object.keys(data.components).length === 0) {
    issues.add(['components'], {
      message: 'a scenario needs components',
      found: data.components === undefined ? '' : shown(data.components),
      allowed: 'components: with at least one device',
    });
  }
  const parts = <D>(
    key: string,
    kinds: ReadonlyMap<string, KindSchema>,
    catalogue: Readonly<Record<string, D>>,
  ) => {
    const read = new Map<string, DraftPart<D>>();
    for (const [name, raw] of entries(data[key], [key], issues))
      read.set(name, part(raw, [key, name], kinds, catalogue, issues));
    return read;
  };
  const pieces = <T>(key: string, read: (raw: Plain, path: string[]) => T) =>
    new Map(
      entries(data[key], [key], issues).map(
        ([name, raw]) => [name, read(raw, [key, name])] as const,
      ),
    );
  const figure = (key: 'ambient' | 'airspeed' | 'sideslip') =>
    data[key] === undefined ? undefined : check(schemas[key], data[key], [key], issues);
  return {
    title: check(schemas.title, data.title, ['title'], issues),
    note: check(schemas.note, data.note ?? undefined, ['note'], issues) ?? '',
    fluid: check(schemas.fluid, data.fluid, ['fluid'], issues),
    ambient: figure('ambient'),
    airspeed: figure('airspeed'),
    sideslip: figure('sideslip'),
    components: parts('components', schemas.components, catalogues.components),
    mechanisms: parts('mechanisms', schemas.mechanisms, catalogues.mechanisms),
    nodes: pieces('nodes', (raw, path) => check(schemas.node, raw ?? {}, path, issues)),
    units: pieces('units', (raw, path) => check(schemas.unit, raw, path, issues)),
    limits:
      data.limits === undefined || data.limits === null
        ? {}
        : check(schemas.limits, data.limits, ['limits'], issues),
    rules: list(data.rules, ['rules'], issues),
    cards: pieces('cards', (raw) => raw),
  };
}

/** Name of the mechanism that drives one, as written. */
export function driverOf(draft: Draft, name: string): string | undefined {
  const raw = draft.mechanisms.get(name)?.raw.driven;
  return isMap(raw) && typeof raw.by === 'string' ? raw.by : undefined;
}

/** A piece of the file that should be a list; nothing counts as an empty one. */
export function list(
  value: Plain | undefined,
  path: readonly (string | number)[],
  issues: IssueList,
): readonly Plain[] {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value)) return value as readonly Plain[];
  issues.add(path, { message: 'a list belongs here', found: shown(value) });
  return [];
}

export function isMap(value: unknown): value is PlainMap {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Named pieces; names that are not names are told. */
function entries(
  value: Plain | undefined,
  path: string[],
  issues: IssueList,
): readonly (readonly [string, Plain])[] {
  if (value === undefined || value === null) return [];
  if (!isMap(value)) {
    if (path[0] !== 'components')
      issues.add(path, { message: 'a map of names belongs here', found: shown(value) });
    return [];
  }
  for (const name of Object.keys(value)) {
    if (name.length > LONGEST_NAME || !NAME.test(name)) {
      issues.addKey([...path, name], {
        message: 'this is not a name',
        found: name,
        allowed: NAME_ALLOWED,
      });
    }
  }
  return Object.entries(value);
}

function part<D>(
  raw: Plain,
  path: string[],
  kinds: ReadonlyMap<string, KindSchema>,
  catalogue: Readonly<Record<string, D>>,
  issues: IssueList,
): DraftPart<D> {
  if (!isMap(raw)) {
    issues.add(path, {
      message: 'lines of `key: value` belong here',
      found: shown(raw),
      allowed: 'is: and what belongs to that kind',
    });
    return { raw: {} };
  }
  const kind = raw.is;
  const schema = typeof kind === 'string' ? kinds.get(kind) : undefined;
  if (schema === undefined || typeof kind !== 'string') {
    const known = [...kinds.keys()];
    const message = kind === undefined ? 'is: is missing, the kind' : 'this kind is not known';
    issues.add([...path, 'is'], {
      message,
      found: kind === undefined ? '' : shown(kind),
      allowed: wordList(known, 60),
      hint: didYouMean(shown(kind), known),
    });
    return { raw };
  }
  const { frame, parameters } = split(raw, schema);
  return {
    definition: catalogue[kind],
    raw,
    frame: check(schema.frame, frame, path, issues),
    parameters: check(schema.parameters, parameters, path, issues),
  };
}

/** What every part has, and what its kind has. */
const split = kept((raw: PlainMap, schema: KindSchema) => {
  const frame: Record<string, Plain> = {};
  const parameters: Record<string, Plain> = {};
  for (const [key, value] of Object.entries(raw))
    (schema.keys.includes(key) ? frame : parameters)[key] = value;
  return { frame, parameters };
});
