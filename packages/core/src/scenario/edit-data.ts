/** Changes worked into the plain data of a file, without reading its text again. */
import type { Edit } from '../define/edit.js';
import { didYouMean } from '../quantity/index.js';
import { isMap } from './draft.js';
import { readEditValue } from './edit-value.js';
import { wordList, type Finding, type IssueList } from './issue-list.js';
import type { Plain, PlainMap } from './parse.js';

export type Keys = readonly (string | number)[];

/** A change whose place and value are known. */
export interface PlacedEdit {
  readonly keys: Keys;
  readonly written: string;
  readonly data: Plain;
}

const KEY = /^[a-z][a-z0-9.-]{0,199}$/i;

/** Places every change; what cannot be placed or read is told, and then there is none. */
export function placeEdits(
  data: Plain,
  edits: readonly Edit[],
  issues: IssueList,
): readonly PlacedEdit[] {
  // Of two at one path the later counts.
  const last = new Map(edits.map((e) => [e.path, e.value]));
  const placed: PlacedEdit[] = [];
  for (const [path, typed] of last) {
    const keys = locate(data, path);
    const value = readEditValue(typed);
    if ('message' in keys) issues.addAt(issues.placeOf([]), path, { found: typed, ...keys });
    else if ('message' in value) issues.add(keys, { found: typed, ...value });
    else if (placed.some((p) => within(p.keys, keys) || within(keys, p.keys)))
      issues.add(keys, { message: 'this lies within another change', found: typed });
    else placed.push({ keys, ...value });
  }
  return placed;
}

const within = (outer: Keys, inner: Keys): boolean =>
  outer.length <= inner.length && outer.every((key, i) => key === inner[i]);

/** The keys a dotted path means in this file. Only its last may be new, or what {@link mayBegin}. */
function locate(data: Plain, path: string): Keys | Finding {
  const words = path.split('.');
  const keys: (string | number)[] = [];
  let at: Plain | undefined = data;
  while (words.length > 0) {
    // What a card sets has points in its name.
    const word = isSet(keys) ? words.splice(0).join('.') : (words.shift() ?? '');
    const known: string[] =
      Array.isArray(at) || isMap(at) ? Object.keys(at as object) : at === undefined ? [] : [''];
    const leaf = words.length === 0;
    if (at !== undefined && !known.includes(word)) {
      const outer = [...keys, word];
      const fresh =
        isMap(at) && KEY.test(word) && (leaf ? !isNamed(keys) || mayBegin(outer) : mayBegin(outer));
      if (!fresh)
        return {
          message: `there is nothing of the name "${word.slice(0, 60)}" here`,
          allowed: wordList(known.filter((k) => k !== '')),
          hint: didYouMean(word, known),
        };
    } else if (at === undefined && !KEY.test(word)) return { message: 'this is not a name' };
    const list: boolean = Array.isArray(at);
    keys.push(list ? Number(word) : word);
    at = (at as Readonly<Record<string, Plain>> | undefined)?.[word];
    // Nothing written there yet: a map may begin.
    if (at === null && !leaf) at = undefined;
  }
  return keys;
}

const isSet = (keys: Keys): boolean =>
  keys.length === 3 && keys[0] === 'cards' && keys[2] === 'set';
/** Names in there are the author's; a change makes no new ones. */
const isNamed = (keys: Keys): boolean =>
  keys.length === 1 && ['components', 'mechanisms', 'units', 'cards'].includes(String(keys[0]));

/** Maps that a file may lack and a change may begin. */
function mayBegin(keys: Keys): boolean {
  const [first, , third] = keys;
  if (first === 'limits' || first === 'nodes') return keys.length <= 2;
  return first === 'cards' && keys.length === 3 && ['set', 'start', 'gas'].includes(String(third));
}

/** The data with all changes; what is not changed is shared with the given one. */
export function withEdits(data: Plain, placed: readonly PlacedEdit[]): Plain {
  return placed.reduce((now, p) => put(now, p.keys, p.data), data);
}

function put(at: Plain | undefined, keys: Keys, value: Plain): Plain {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  if (Array.isArray(at)) {
    const list = at as readonly Plain[];
    return list.map((each, i) => (i === key ? put(each, rest, value) : each));
  }
  const map: Record<string, Plain> = Object.assign(
    Object.create(null) as Record<string, Plain>,
    at as PlainMap | null | undefined,
  );
  map[key] = put(map[key], rest, value);
  return map;
}

/** What stands at a path of the file; undefined when nothing does. */
export function dataAt(data: Plain, path: string): Plain | undefined {
  const keys = locate(data, path);
  if ('message' in keys) return undefined;
  return keys.reduce<Plain | undefined>(
    (at, key) =>
      typeof at === 'object' && at !== null && Object.hasOwn(at, key)
        ? (at as Readonly<Record<string | number, Plain>>)[key]
        : undefined,
    data,
  );
}
