/** Cuts in a module's text, found by its syntax tree. */
import { parseSync, Visitor } from 'vite';
import type { VisitorObject } from 'vite';

/** The text between two places, and what stands there instead. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Walks the tree of a module (JavaScript by now) with what `visitor` makes of a list of edits, and makes them. */
export function edited(
  code: string,
  visitor: (edits: Edit[]) => VisitorObject,
): { code: string; map: null } | undefined {
  const edits: Edit[] = [];
  new Visitor(visitor(edits)).visit(parseSync('module.js', code).program);
  if (edits.length === 0) return undefined;
  let out = '';
  let from = 0;
  for (const { start, end, text } of [...edits].sort((a, b) => a.start - b.start)) {
    // Within what is already replaced.
    if (start < from) continue;
    out += code.slice(from, start) + text;
    from = end;
  }
  return { code: out + code.slice(from), map: null };
}
