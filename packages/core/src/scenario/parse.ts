import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, type Document } from 'yaml';
import { BOUNDS, refuseUnread, SCENARIO_FILE } from './file-kind.js';
import { IssueList, type Place } from './issue-list.js';

/** Plain data as read: maps have no prototype. Numbers stay as written when they are text. */
export type Plain = null | boolean | number | string | readonly Plain[] | PlainMap;
export interface PlainMap {
  readonly [key: string]: Plain;
}

export interface Parsed {
  /** Undefined when the file could not be read at all. */
  readonly data?: Plain;
  readonly issues: IssueList;
}

/** Keys that would reach into JavaScript's own objects. */
const REFUSED_KEYS = new Set(['__proto__', 'prototype', 'constructor']);

/**
 * Text to plain data with the place of every value. Bounded in size, depth and aliases; no tags, no
 * merge keys, no repeated keys. Never throws.
 */
export function parseText(text: string, file: string, kind = SCENARIO_FILE): Parsed {
  const lines = new LineCounter();
  const issues = new IssueList(file);
  const refusal = refuseUnread(text, kind);
  if (refusal !== undefined) {
    issues.addAt(refusal, '', { message: refusal.message, allowed: refusal.allowed });
    return { issues };
  }
  let document: Document.Parsed;
  try {
    document = parseDocument(text, {
      lineCounter: lines,
      version: '1.2',
      schema: 'core',
      merge: false,
      // Checked while converting, in linear time.
      uniqueKeys: false,
      prettyErrors: false,
      logLevel: 'error',
    });
  } catch {
    issues.addAt({ line: 1, column: 1 }, '', {
      message: 'this is not YAML that can be read',
      hint: 'look for deep nesting or stray signs',
    });
    return { issues };
  }
  const placeAt = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  for (const error of document.errors.slice(0, 50)) {
    issues.addAt(placeAt(error.pos[0]), '', { message: `this is not YAML: ${error.message}` });
  }
  if (document.directives?.yaml.version !== '1.2') {
    issues.addAt({ line: 1, column: 1 }, '', {
      message: 'only YAML 1.2 is read here',
      hint: 'remove the line that begins with %YAML',
    });
  }
  if (issues.length > 0) return { issues };
  const data = new Converter(document, issues, placeAt, kind.values).convert(
    document.contents,
    [],
    undefined,
    0,
  );
  return data === undefined ? { issues } : { data, issues };
}

type Path = readonly (string | number)[];

class Converter {
  private values = 0;
  private aliases = 0;
  private stopped = false;

  constructor(
    private readonly document: Document.Parsed,
    private readonly issues: IssueList,
    private readonly placeAt: (offset: number) => Place,
    private readonly most: number,
  ) {}

  /** Data of a node; undefined when it holds something that is refused. `outer` = place of the alias. */
  convert(node: unknown, path: Path, outer: Place | undefined, depth: number): Plain | undefined {
    if (this.stopped) return undefined;
    const place = outer ?? this.placeOf(node) ?? { line: 1, column: 1 };
    this.issues.place(path, place);
    if (++this.values > this.most)
      return this.stop(place, path, 'this file holds too many values', `up to ${this.most}`);
    if (depth > BOUNDS.depth)
      return this.stop(place, path, 'this is nested too deeply', `up to ${BOUNDS.depth} levels`);
    if (node === null || node === undefined) return null;
    if (isAlias(node)) {
      if (++this.aliases > BOUNDS.aliases)
        return this.stop(place, path, 'this file uses too many aliases', `up to ${BOUNDS.aliases}`);
      const target = node.resolve(this.document);
      if (target === undefined)
        return this.refuse(place, path, `there is no anchor &${node.source}`);
      return this.convert(target, path, place, depth + 1);
    }
    if (
      (isMap(node) || isSeq(node) || isScalar(node)) &&
      node.tag !== undefined &&
      !PLAIN_TAGS.has(node.tag)
    ) {
      return this.refuse(place, path, `the tag ${node.tag.slice(0, 40)} is not allowed`);
    }
    if (isMap(node)) return this.map(node.items, path, outer, depth);
    if (isSeq(node)) {
      const list: Plain[] = [];
      node.items.forEach((item, i) =>
        list.push(this.convert(item, [...path, i], outer, depth + 1) ?? null),
      );
      return list;
    }
    if (isScalar(node)) return this.scalar(node.value, node.source, place, path);
    return this.refuse(place, path, 'this is not plain data');
  }

  private map(
    items: readonly { key: unknown; value: unknown }[],
    path: Path,
    outer: Place | undefined,
    depth: number,
  ): PlainMap {
    const map = Object.create(null) as Record<string, Plain>;
    for (const { key, value } of items) {
      if (this.stopped) break;
      const place = outer ?? this.placeOf(key) ?? this.issues.placeOf(path);
      const name = isScalar(key) ? String(key.source ?? key.value) : undefined;
      if (name === undefined || name.length > 200) {
        this.refuse(place, path, 'a key must be a plain word');
        continue;
      }
      const inner = [...path, name];
      this.issues.placeKey(inner, place);
      if (name === '<<') this.refuse(place, inner, 'merge keys are not allowed');
      else if (REFUSED_KEYS.has(name))
        this.refuse(place, inner, `the key ${name} is not allowed`, 'choose another name');
      else if (name in map)
        this.refuse(place, inner, `the key ${name} stands here twice`, 'remove one of them');
      else map[name] = this.convert(value, inner, outer, depth + 1) ?? null;
    }
    return map;
  }

  private scalar(
    value: unknown,
    source: string | undefined,
    place: Place,
    path: Path,
  ): Plain | undefined {
    if (typeof value === 'number') return Number.isFinite(value) ? value : String(source ?? value);
    if (typeof value === 'string' && value.length > BOUNDS.textCharacters) {
      return this.refuse(place, path, 'this text is too long');
    }
    if (value === null || typeof value === 'boolean' || typeof value === 'string') return value;
    return source ?? '';
  }

  private placeOf(node: unknown): Place | undefined {
    const range = (node as { range?: readonly number[] | null } | null | undefined)?.range;
    return range === null || range === undefined ? undefined : this.placeAt(range[0]);
  }

  private refuse(place: Place, path: Path, message: string, hint = ''): undefined {
    this.issues.addAt(place, path.join('.'), { message, hint });
    return undefined;
  }

  private stop(place: Place, path: Path, message: string, allowed: string): undefined {
    if (!this.stopped) this.issues.addAt(place, path.join('.'), { message, allowed });
    this.stopped = true;
    return undefined;
  }
}

/** Tags the YAML reader itself gives to plain data. */
const PLAIN_TAGS = new Set([
  'tag:yaml.org,2002:map',
  'tag:yaml.org,2002:seq',
  'tag:yaml.org,2002:str',
]);
