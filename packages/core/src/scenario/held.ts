/** A scenario text held for changes: read once, then with any changes at the cost of what they touch. */
import type { Catalogues } from '../define/catalogue.js';
import type { Edit } from '../define/edit.js';
import type { Issue } from '../define/issue.js';
import { dataAt, placeEdits, withEdits, type PlacedEdit } from './edit-data.js';
import { spliced } from './edit-text.js';
import { onOneLine } from './edit-value.js';
import type { IssueList } from './issue-list.js';
import { parseText, type Plain } from './parse.js';
import { readData, type Reading } from './read.js';

/** A text with changes worked in, or why they cannot be. */
export interface Edited {
  readonly text?: string;
  readonly issues: readonly Issue[];
}

export interface HeldScenario {
  readonly file: string;
  /** Reads it with changes; places of issues are those in the text as it is. */
  read(edits?: readonly Edit[]): Reading;
  /** The text with changes: comments, order and layout of all else stay as they are. */
  write(edits: readonly Edit[]): Edited;
  /** What the text says at a path, on one line; undefined where it says nothing. */
  written(path: string): string | undefined;
}

export function holdWith(
  catalogues: Catalogues,
  text: string,
  options: { readonly file?: string } = {},
): HeldScenario {
  const file = options.file ?? '<text>';
  const { data, issues: found } = parseText(text, file);
  const place = (edits: readonly Edit[], issues: IssueList): readonly PlacedEdit[] =>
    data === undefined ? [] : placeEdits(data, edits, issues);
  return {
    file,
    read(edits = []) {
      const issues = found.copy();
      if (data === undefined) return { issues: issues.sorted() };
      const placed = place(edits, issues);
      return readData(catalogues, withEdits(data, placed), issues);
    },
    write(edits) {
      const issues = found.copy();
      const placed = place(edits, issues);
      if (data === undefined || issues.length > 0) return { issues: issues.sorted() };
      if (placed.length === 0) return { text, issues: [] };
      const written = spliced(text, placed);
      // Where an anchor is shared, or a value spans lines in an odd way, more could have changed.
      const again = written === undefined ? undefined : parseText(written, file).data;
      if (written !== undefined && same(again, withEdits(data, placed)))
        return { text: written, issues: [] };
      for (const edit of placed) {
        const alone = spliced(text, [edit]);
        const read = alone === undefined ? undefined : parseText(alone, file).data;
        if (!same(read, withEdits(data, [edit])))
          issues.add(edit.keys, {
            message: 'this change cannot be written into the file by itself',
            found: edit.written,
            hint: 'change it in the file by hand',
          });
      }
      return { issues: issues.sorted() };
    },
    written(path) {
      const at = data === undefined ? undefined : dataAt(data, path);
      return at === undefined || at === null ? undefined : onOneLine(at);
    },
  };
}

function same(a: Plain | undefined, b: Plain | undefined): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [x, y] = [a, b] as unknown as readonly Readonly<Record<string, Plain>>[];
  if (x === undefined || y === undefined) return false;
  const keys = Object.keys(x);
  return (
    keys.length === Object.keys(y).length &&
    keys.every((key) => Object.hasOwn(y, key) && same(x[key], y[key]))
  );
}

/** Reads a scenario from YAML text. @param options.file name for the issues */
export function readWith(
  catalogues: Catalogues,
  text: string,
  options: { readonly file?: string } = {},
): Reading {
  return holdWith(catalogues, text, options).read();
}
