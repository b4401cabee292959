import type { Issue } from '../define/issue.js';

export interface Place {
  readonly line: number;
  readonly column: number;
}

type Path = readonly (string | number)[];

/** The parts of an issue that its finder knows. */
export interface Finding {
  readonly message: string;
  readonly found?: string;
  readonly allowed?: string;
  readonly hint?: string;
}

/** More than this helps nobody, and a hostile file shall not make us write a book. */
const MOST_ISSUES = 200;
const SHOWN = 60;

/** The issues of one file, and the place of every path in it. */
export class IssueList {
  readonly list: Issue[] = [];
  private readonly places = new Map<string, Place>();
  private readonly keyPlaces = new Map<string, Place>();

  constructor(readonly file: string) {}

  /** The same places and issues, to go on from. */
  copy(): IssueList {
    const copy = new IssueList(this.file);
    copy.list.push(...this.list);
    for (const [path, place] of this.places) copy.places.set(path, place);
    for (const [path, place] of this.keyPlaces) copy.keyPlaces.set(path, place);
    return copy;
  }

  /** Remembers where the value at a path begins. */
  place(path: Path, place: Place): void {
    this.places.set(path.join('\n'), place);
  }

  /** Remembers where the key of a path stands. */
  placeKey(path: Path, place: Place): void {
    this.keyPlaces.set(path.join('\n'), place);
  }

  /** Place of a value; of the nearest thing around it where it has none (a missing key). */
  placeOf(path: Path): Place {
    for (let length = path.length; length >= 0; length--) {
      const key = path.slice(0, length).join('\n');
      // What is missing inside is best shown at the key of what should hold it.
      const place =
        length === path.length
          ? this.places.get(key)
          : (this.keyPlaces.get(key) ?? this.places.get(key));
      if (place !== undefined) return place;
    }
    return { line: 1, column: 1 };
  }

  add(path: Path, finding: Finding): void {
    this.addAt(this.placeOf(path), pathText(path), finding);
  }

  /** An issue about a key itself (misspelt, not allowed). */
  addKey(path: Path, finding: Finding): void {
    this.addAt(this.keyPlaces.get(path.join('\n')) ?? this.placeOf(path), pathText(path), finding);
  }

  addAt(place: Place, path: string, finding: Finding): void {
    if (this.full) return;
    const { message, found = '', allowed = '', hint = '' } = finding;
    this.list.push({
      file: this.file,
      line: place.line,
      column: place.column,
      path: shorten(path, 120),
      message: shorten(message, 300),
      found: shorten(found, SHOWN),
      allowed,
      hint,
    });
  }

  /** True when no more is taken, so that nothing need be looked for. */
  get full(): boolean {
    return this.list.length >= MOST_ISSUES;
  }

  get length(): number {
    return this.list.length;
  }

  /** All issues in the order of the file. */
  sorted(): readonly Issue[] {
    return [...this.list].sort((a, b) => a.line - b.line || a.column - b.column);
  }
}

function pathText(path: Path): string {
  return path.join('.');
}

function shorten(text: string, length: number): string {
  return text.length > length ? `${text.slice(0, length)}…` : text;
}

/** A value as it can be shown in an issue. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object') return 'lines of `key: value`';
  return typeof value === 'string' ? value : `${value as number | boolean}`;
}

/** A list of allowed words for an issue, shortened when long. */
export function wordList(words: readonly string[], most = 12): string {
  const shownWords = words.slice(0, most).join(', ');
  return words.length > most ? `${shownWords} … (${words.length} in all)` : shownWords;
}
