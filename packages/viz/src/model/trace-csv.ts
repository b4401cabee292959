/** Traces as CSV (RFC 4180): times in s, heads with their units, as the command line writes them. */
import type { TracePanel } from './trace-panels.js';
import { sampleAt } from './trace-panels.js';
import type { State } from './state.js';
import { displayOf } from './channel-words.js';

/** Significant figures of a sample: finer than any gauge, and no noise of the arithmetic. */
const FIGURES = 7;

/**
 * The chosen channels at the ticks of the run, in the user's units; pressures as gauges show them.
 * What it writes, a recording's reader takes back.
 */
export function tracesCsv(panels: readonly TracePanel[], state: State): string {
  const { picture, system } = state;
  if (picture === undefined) return '';
  const columns = panels.flatMap(({ quantity, infos, lines, factor, shift }) =>
    lines.flatMap(({ samples }, i) => {
      const info = infos[i];
      if (samples === undefined || info === undefined) return [];
      const { unit } = displayOf(quantity, picture, system);
      const value = (t: number): number => sampleAt(samples, t) * factor + shift;
      return [{ head: unit === '' ? info.name : `${info.name} (${unit})`, value }];
    }),
  );
  const lines = [['time (s)', ...columns.map((c) => c.head)]];
  for (let i = 0; i < picture.ticks; i++) {
    const t = i * picture.tick;
    lines.push([figure(t), ...columns.map((c) => figure(c.value(t)))]);
  }
  return lines.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function figure(x: number): string {
  return Number.isFinite(x) ? String(Number(x.toPrecision(FIGURES))) : '';
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
