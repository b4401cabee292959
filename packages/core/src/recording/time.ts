import { conversion } from './column.js';
import type { TableRow } from './csv-table.js';
import { numberOf } from './number.js';

/** A time of day, or a date with one, as loggers write them; `4:30` is 4 min 30 s. */
const CLOCK = /^(?:(\d{4})-(\d{2})-(\d{2})[T ])?(?:(\d{1,2}):)?(\d{1,2}):(\d{2}(?:[.,]\d+)?)Z?$/;

export function isClock(cell: string): boolean {
  return CLOCK.test(cell);
}

/** Seconds since a midnight; undefined when it is not written as a time of day. */
function clockTime(cell: string): number | undefined {
  const match = CLOCK.exec(cell);
  if (match === null) return undefined;
  const [, year, month, day, hours, minutes, seconds] = match;
  const date =
    year === undefined ? 0 : Date.UTC(Number(year), Number(month) - 1, Number(day)) / 1e3;
  return (
    date + Number(hours ?? 0) * 3600 + Number(minutes) * 60 + Number(seconds.replace(',', '.'))
  );
}

export interface TimeHead {
  readonly title: string;
  readonly unit: string;
  readonly at: number;
}

/** Whoever collects what is wrong. */
export interface Complaints {
  add(
    at: number,
    path: string,
    message: string,
    found: string,
    allowed?: string,
    hint?: string,
  ): void;
}

/**
 * Times of the rows, s, and the rows that have one: a row without a time, or with one that does
 * not come after the one before it, is left out.
 */
export function timesOf(
  rows: readonly TableRow[],
  head: TimeHead,
  index: number,
  comma: boolean,
  issues: Complaints,
): { readonly t: Float64Array; readonly kept: readonly TableRow[] } {
  const way = conversion(head.unit === '' ? 's' : head.unit, 'time', 0);
  const clock = isClock(rows[0].cells[index] ?? '');
  // The head of a clock may say anything: hh:mm:ss, local, UTC.
  if ('problem' in way && !clock)
    issues.add(head.at, head.title, way.problem, head.unit, way.allowed, way.hint);
  const scale = 'problem' in way ? 1 : way.scale;
  const t: number[] = [];
  const kept: TableRow[] = [];
  let zero: number | undefined;
  for (const row of rows) {
    const cell = row.cells[index] ?? '';
    const at = row.starts[index] ?? row.starts[0];
    const read = clock ? clockTime(cell) : numberOf(cell, comma);
    if (read === undefined || Number.isNaN(read)) {
      const allowed = clock ? 'a time of day, e.g. 14:03:27.5' : 'a number';
      issues.add(at, head.title, 'this row has no time and is left out', cell, allowed);
      continue;
    }
    if (clock) zero ??= read;
    const time = clock ? read - (zero ?? 0) : read * scale;
    if (t.length > 0 && time <= t[t.length - 1]) {
      const message = 'this row does not come after the one before it and is left out';
      issues.add(at, head.title, message, cell, 'times that rise');
      continue;
    }
    t.push(time);
    kept.push(row);
  }
  return { t: Float64Array.from(t), kept };
}
