/** A row of a table of text: its cells, and where in the text each of them begins. */
export interface TableRow {
  readonly cells: readonly string[];
  readonly starts: readonly number[];
}

export interface Table {
  readonly rows: readonly TableRow[];
  readonly delimiter: string;
  /** Where a quote begins that is never closed; -1 when all are. */
  readonly unclosed: number;
}

const DELIMITERS = [',', ';', '\t'];
/** So much of the text tells what parts its cells. */
const BEGINNING = 50_000;

/**
 * Reads CSV as RFC 4180 has it (quotes round a cell, doubled within; a cell may hold line breaks),
 * and as loggers write it: semicolons or tabs for commas, any line end, `#` before a remark, blank
 * lines. Written here because the libraries for it do not tell where a cell stands in the text,
 * and without that no message can.
 */
export function readTable(text: string): Table {
  const delimiter = delimiterOf(text);
  const rows: TableRow[] = [];
  let unclosed = -1;
  let at = 0;
  while (at < text.length) {
    if (text[at] === '#') {
      at = afterLine(text, at);
      continue;
    }
    const cells: string[] = [];
    const starts: number[] = [];
    for (let more = true; more;) {
      starts.push(at);
      const cell = readCell(text, at, delimiter);
      if (cell.end < 0) unclosed = at;
      cells.push(cell.value);
      at = cell.end < 0 ? text.length : cell.end;
      more = text[at] === delimiter;
      if (more) at += 1;
    }
    at = afterBreak(text, at);
    if (cells.some((c) => c.trim() !== '')) rows.push({ cells, starts });
  }
  return { rows, delimiter, unclosed };
}

/** Rows as CSV: comma, CRLF, quotes where needed. */
export function writeTable(rows: Iterable<readonly string[]>): string {
  const lines: string[] = [];
  for (const row of rows) lines.push(`${row.map(quoted).join(',')}\r\n`);
  return lines.join('');
}

/** Line and column, both from 1, of a place in a text. */
export function placeIn(text: string, at: number): { line: number; column: number } {
  let line = 1;
  let start = 0;
  for (let i = 0; i < at;) {
    const next = i + breakAt(text, i);
    if (next > i) {
      line += 1;
      start = next;
    }
    i = Math.max(next, i + 1);
  }
  return { line, column: at - start + 1 };
}

/** `end` is at the delimiter or line break after it; -1 when a quote is never closed. */
function readCell(text: string, at: number, delimiter: string): { value: string; end: number } {
  let i = at;
  while (text[i] === ' ') i += 1;
  if (text[i] !== '"') {
    while (i < text.length && text[i] !== delimiter && breakAt(text, i) === 0) i += 1;
    return { value: text.slice(at, i).trim(), end: i };
  }
  let value = '';
  for (i += 1; ;) {
    const quote = text.indexOf('"', i);
    if (quote < 0) return { value: '', end: -1 };
    value += text.slice(i, quote);
    i = quote + 1;
    if (text[i] !== '"') break;
    value += '"';
    i += 1;
  }
  // What stands between the closing quote and the delimiter is kept, so that a message can show it.
  const rest = i;
  while (i < text.length && text[i] !== delimiter && breakAt(text, i) === 0) i += 1;
  return { value: value + text.slice(rest, i).trimEnd(), end: i };
}

/** Length of the line break there; 0 when there is none. */
function breakAt(text: string, at: number): number {
  if (text[at] === '\n') return 1;
  if (text[at] !== '\r') return 0;
  return text[at + 1] === '\n' ? 2 : 1;
}

function afterBreak(text: string, at: number): number {
  return at + breakAt(text, at);
}

function afterLine(text: string, at: number): number {
  let i = at;
  while (i < text.length && breakAt(text, i) === 0) i += 1;
  return afterBreak(text, i);
}

/** The one that parts the first two lines into equally many cells, most of all; quotes aside. */
function delimiterOf(text: string): string {
  const lines = text
    .slice(0, BEGINNING)
    .replace(/"[^"]*"?/g, '')
    .split(/[\r\n]+/)
    .filter((line) => !line.startsWith('#') && line.trim() !== '')
    .slice(0, 2);
  const counts = DELIMITERS.map((d) => lines.map((line) => line.split(d).length - 1));
  const agree = counts.map(([first = 0, second = first]) => (first === second ? first : 0));
  const most = Math.max(...agree);
  const first = counts.map(([n = 0]) => n);
  const chosen = most > 0 ? agree.indexOf(most) : first.indexOf(Math.max(...first));
  return DELIMITERS[chosen];
}

function quoted(cell: string): string {
  // A leading # would read as a remark, outer blanks would be lost, and a row of one empty cell as a blank line.
  return /[",\r\n]|^#|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
