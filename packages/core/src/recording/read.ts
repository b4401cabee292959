import type { ChannelInfo, Issue, Quantity, Series } from '../define/index.js';
import { didYouMean } from '../quantity/index.js';
import { channelNamed, conversion, headOf, isUnit, type Conversion } from './column.js';
import { placeIn, readTable, type TableRow } from './csv-table.js';
import { numberOf } from './number.js';
import { isClock, timesOf } from './time.js';

/** What a user says of a column; what is left out is read from its head. */
export interface ColumnChoice {
  /** Channel it is taken for; '' for none. */
  readonly channel?: string;
  readonly unit?: string;
}

export interface RecordingOptions {
  readonly file?: string;
  /** Channels a column may be taken for. */
  readonly channels?: readonly ChannelInfo[];
  /** The column of times, by its place in the file from 0, and its unit; looked for when absent. */
  readonly time?: { readonly index: number; readonly unit?: string };
  /** By the column's place in the file, from 0. */
  readonly choices?: Readonly<Record<number, ColumnChoice>>;
  /** Pressure of the surrounding air, Pa, for what gauges show. */
  readonly ambient?: number;
}

export interface RecordingColumn {
  /** Place in the file, from 0. */
  readonly index: number;
  /** Its head without the unit. */
  readonly title: string;
  readonly unit: string;
  /** `time`; `figures`; `text` where nothing in it is a number. */
  readonly kind: 'time' | 'figures' | 'text';
  /** Channel it is taken for; '' for none. */
  readonly channel: string;
  /** What it measures; undefined for text and where its unit is not known. */
  readonly quantity: Quantity | undefined;
}

/** A column in SI; NaN where a cell is empty. */
export interface RecordedSeries extends Series {
  readonly column: number;
  readonly channel: string;
  readonly quantity: Quantity;
}

/** A recording as far as it can be read. */
export interface Recording {
  readonly file: string;
  readonly columns: readonly RecordingColumn[];
  /** Of the columns with figures and a known unit, on one axis of time; none when there is nothing to read. */
  readonly series: readonly RecordedSeries[];
  readonly issues: readonly Issue[];
}

/** More issues of one file than these are only counted. */
const MOST_ISSUES = 20;
const STANDARD_AMBIENT = 101_325;
const TIME = /^(t|time|elapsed|elapsed time|seconds?|clock|timestamp|date ?\/? ?time)$/i;

/**
 * Reads what a logger recorded: CSV with a column of time and one for each signal, heads with
 * their units (`left leg angle (deg)`) or a row of units below. Times are in s unless their head
 * says otherwise, or times of day, which count from the first. Never throws: what is wrong is in
 * `issues`, placed by line and column; a cell that cannot be read is a gap.
 */
export function readRecording(given: string, options: RecordingOptions = {}): Recording {
  const { file = '<text>', channels = [], choices = {}, ambient = STANDARD_AMBIENT } = options;
  // Spreadsheets put a byte order mark before it.
  const text = given.replace(/^\uFEFF/, '');
  const { rows, delimiter, unclosed } = readTable(text);
  const issues = new Issues(file, text);
  if (unclosed >= 0) issues.add(unclosed, '', 'this quote is never closed', '"');
  const { heads, body } = split(rows);
  if (body.length === 0) {
    const allowed = 'a line of names, then a line of figures for each moment';
    issues.add(-1, '', 'there are no figures in this file', '', allowed);
    return { file, columns: [], series: [], issues: issues.list() };
  }
  const comma = delimiter !== ',';
  for (const row of body) {
    const extra = row.cells.findIndex((c, i) => i >= heads.length && c !== '');
    if (extra < 0) continue;
    const hint = comma
      ? ''
      : 'a decimal comma parts a figure in two: use a point, or semicolons between cells';
    const message = 'this row has more cells than there are names';
    issues.add(row.starts[extra], '', message, row.cells[extra], `${heads.length} cells`, hint);
  }
  const chosen = options.time !== undefined && heads[options.time.index] !== undefined;
  const time = chosen ? options.time.index : timeColumn(heads, body);
  const timeHead = { ...heads[time], unit: options.time?.unit ?? heads[time].unit };
  const { t, kept } = timesOf(body, timeHead, time, comma, issues);
  const columns: RecordingColumn[] = [];
  const series: RecordedSeries[] = [];
  heads.forEach((head, index) => {
    const { title } = head;
    if (index === time) {
      const { unit } = timeHead;
      columns.push({ index, title, unit, kind: 'time', channel: '', quantity: 'time' });
      return;
    }
    const choice = choices[index] ?? {};
    const unit = choice.unit ?? head.unit;
    const channel = choice.channel ?? channelNamed(title, channels);
    const info = channels.find((c) => c.name === channel);
    if (channel !== '' && info === undefined) {
      const hint = didYouMean(
        channel,
        channels.map((c) => c.name),
      );
      issues.add(head.at, title, 'there is no such channel', channel, '', hint);
    }
    if (
      info === undefined &&
      !body.some((row) => Number.isFinite(numberOf(row.cells[index], comma)))
    ) {
      columns.push({ index, title, unit, kind: 'text', channel: '', quantity: undefined });
      return;
    }
    const way = conversion(unit, info?.quantity, ambient);
    if ('problem' in way) {
      // In the words of a head: there the unit belongs.
      const hint =
        unit === '' ? `write the unit behind the name, e.g. "${title} (UNIT)"` : way.hint;
      issues.add(head.at, title, way.problem, unit, way.allowed, hint);
    }
    const quantity = 'problem' in way ? undefined : way.quantity;
    columns.push({ index, title, unit, kind: 'figures', channel: info?.name ?? '', quantity });
    if ('problem' in way) return;
    const v = figures(kept, index, way, comma, (row, cell) =>
      issues.add(
        row.starts[index],
        title,
        'this is not a number',
        cell,
        'a number, or nothing for a gap',
      ),
    );
    series.push({ column: index, channel: info?.name ?? '', quantity: way.quantity, t, v });
  });
  return { file, columns, series, issues: issues.list() };
}

interface Head {
  readonly title: string;
  readonly unit: string;
  /** Where it stands in the text; -1 when the file has no heads. */
  readonly at: number;
}

/** Names and units apart from the figures: a line of names, below it perhaps one of units. */
function split(rows: readonly TableRow[]): { heads: Head[]; body: readonly TableRow[] } {
  const [first, second] = rows;
  if (first === undefined) return { heads: [], body: [] };
  const named = !first.cells.some((c) => looksLikeFigure(c));
  const units =
    named &&
    second !== undefined &&
    second.cells.some((c) => isUnit(unbracketed(c))) &&
    second.cells.every((c) => c === '' || !looksLikeFigure(c));
  const heads = Array.from({ length: first.cells.length }, (_, i): Head => {
    const cell = named ? (first.cells[i] ?? '') : '';
    const { title, unit } = headOf(cell);
    const below = units ? unbracketed(second.cells[i] ?? '') : '';
    const at = named ? (first.starts[i] ?? -1) : -1;
    return {
      title: title === '' ? `column ${i + 1}` : title,
      unit: unit === '' ? below : unit,
      at,
    };
  });
  return { heads, body: rows.slice(units ? 2 : named ? 1 : 0) };
}

function unbracketed(cell: string): string {
  return cell.replace(/^[([](.*)[)\]]$/, '$1').trim();
}

function looksLikeFigure(cell: string): boolean {
  return isClock(cell) || Number.isFinite(numberOf(cell, true));
}

/** The one that is called so; else the first with figures. */
function timeColumn(heads: readonly Head[], body: readonly TableRow[]): number {
  const named = heads.findIndex((h) => TIME.test(h.title.trim()));
  if (named >= 0) return named;
  return Math.max(
    0,
    heads.findIndex((_, i) => looksLikeFigure(body[0].cells[i] ?? '')),
  );
}

function figures(
  rows: readonly TableRow[],
  index: number,
  { scale, shift }: Conversion,
  comma: boolean,
  refuse: (row: TableRow, cell: string) => void,
): Float64Array {
  return Float64Array.from(rows, (row) => {
    const cell = row.cells[index] ?? '';
    const x = numberOf(cell, comma);
    if (x === undefined) refuse(row, cell);
    return x === undefined ? NaN : x * scale + shift;
  });
}

/** Collects issues, and counts those beyond the first few. */
class Issues {
  readonly #found: {
    at: number;
    path: string;
    parts: Omit<Issue, 'file' | 'line' | 'column' | 'path'>;
  }[] = [];
  #more = 0;

  constructor(
    private readonly file: string,
    private readonly text: string,
  ) {}

  /** `at`: place in the text; -1 when it is about the whole file. */
  add(at: number, path: string, message: string, found: string, allowed = '', hint = ''): void {
    if (this.#found.length >= MOST_ISSUES) {
      this.#more += 1;
      return;
    }
    const shown = found.length > 30 ? `${found.slice(0, 30)}…` : found;
    this.#found.push({ at, path, parts: { message, found: shown, allowed, hint } });
  }

  list(): Issue[] {
    const { file, text } = this;
    const placed = this.#found.map(({ at, path, parts }): Issue => {
      const { line, column } = at < 0 ? { line: 0, column: 0 } : placeIn(text, at);
      return { file, line, column, path, ...parts };
    });
    placed.sort((a, b) => a.line - b.line || a.column - b.column);
    if (this.#more === 0) return placed;
    const message = `there are ${this.#more} more such places`;
    return [
      ...placed,
      { file, line: 0, column: 0, path: '', message, found: '', allowed: '', hint: '' },
    ];
  }
}
