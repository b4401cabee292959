/** Kinds of file, how much one may hold, and what is refused before it is parsed. */
import type { Place } from './issue-list.js';

/** What every YAML file may hold at most. */
export const BOUNDS = {
  /** Nesting of maps and lists. */
  depth: 24,
  aliases: 40,
  textCharacters: 4_000,
} as const;

/** A kind of file, and what one may hold at most. */
export interface FileKind {
  readonly what: string;
  readonly firstLine: string;
  /** Characters in the file, and in one line. */
  readonly characters: number;
  readonly lineCharacters: number;
  /** Values after aliases are followed. */
  readonly values: number;
}

/** Far above any real scenario. */
export const SCENARIO_FILE: FileKind = {
  what: 'a scenario',
  firstLine: 'wheelwell: 1',
  characters: 500_000,
  lineCharacters: 4_000,
  values: 40_000,
};

/** What can be refused by looking at the characters alone: size, long lines, deep brackets. */
export function refuseUnread(
  text: string,
  kind: FileKind,
): (Place & { message: string; allowed: string }) | undefined {
  const refuse = (line: number, column: number, message: string, allowed: string) => ({
    line,
    column,
    message,
    allowed,
  });
  if (text.length > kind.characters) {
    return refuse(1, 1, 'this file is too large', `up to ${kind.characters} characters`);
  }
  // NUL, or what is left of bytes that are no UTF-8.
  if (text.includes('\0') || text.includes('\ufffd')) {
    return refuse(1, 1, 'this is not plain text', `${kind.what} in YAML, saved as UTF-8`);
  }
  if (text.trim() === '') {
    return refuse(
      1,
      1,
      'there is nothing in this file',
      `${kind.what}, its first line '${kind.firstLine}'`,
    );
  }
  let open = 0;
  let line = 1;
  let start = 0;
  let dashes = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 10) {
      line++;
      start = i + 1;
      dashes = 0;
    } else if (i - start >= kind.lineCharacters) {
      return refuse(line, 1, 'this line is too long', `up to ${kind.lineCharacters} characters`);
    } else if (c === 91 || c === 123) open++;
    else if (c === 93 || c === 125) open = Math.max(0, open - 1);
    // `- - - -` and `? ? ? ?` nest as well.
    else if ((c === 45 || c === 63) && text.charCodeAt(i + 1) === 32) dashes++;
    if (open > 4 * BOUNDS.depth || dashes > 4 * BOUNDS.depth) {
      return refuse(
        line,
        i - start + 1,
        'this is nested too deeply',
        `up to ${BOUNDS.depth} levels`,
      );
    }
  }
  return undefined;
}
