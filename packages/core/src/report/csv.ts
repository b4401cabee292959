import type { Quantity, Run } from '../define/index.js';
import { displayUnit, toDisplay, type DisplaySystem } from '../quantity/index.js';
import { writeTable } from '../recording/index.js';

/** What a CSV file holds: the event log, or the traces at the ticks. */
export type CsvContent = 'events' | 'traces';

export interface CsvOptions {
  readonly units: DisplaySystem;
  readonly content: CsvContent;
  /** Channels of the traces; every one when absent. */
  readonly channels?: readonly string[];
}

/** Significant figures of a sample: finer than any gauge, and no noise of the arithmetic. */
const FIGURES = 7;

/**
 * A run as CSV (RFC 4180: comma, CRLF, quotes where needed, first line names). Times in s; the
 * heads of traces carry their unit, e.g. `left-leg.angle (deg)`.
 */
export function toCsv(run: Run, options: CsvOptions): string {
  return writeTable(options.content === 'events' ? events(run) : traces(run, options));
}

function events(run: Run): string[][] {
  const head = [
    'index',
    'time (s)',
    'kind',
    'device',
    'from',
    'to',
    'cause',
    'by',
    'speed (rad/s)',
  ];
  return [
    head,
    ...run.log.map((e) => [
      String(e.index),
      figure(e.t),
      e.kind,
      e.device,
      e.from,
      e.to,
      e.cause,
      e.by < 0 ? '' : String(e.by),
      figure(e.speed),
    ]),
  ];
}

function traces(run: Run, { units, channels }: CsvOptions): string[][] {
  const chosen = run.channels.filter((c) => channels === undefined || channels.includes(c.name));
  const series = chosen.flatMap((info) => {
    const s = run.sampled(info.name);
    return s === undefined ? [] : [{ info, v: s.v, show: scaleOf(info.quantity, units) }];
  });
  const t = chosen.length === 0 ? undefined : run.sampled(chosen[0].name)?.t;
  const unit = (quantity: Quantity): string => {
    const u = displayUnit(quantity, units);
    return u === '' ? '' : ` (${u})`;
  };
  const head = ['time (s)', ...series.map(({ info }) => `${info.name}${unit(info.quantity)}`)];
  const rows = Array.from(t ?? [], (x, i) => [
    figure(x),
    ...series.map(({ v, show }) => figure(show(v[i]))),
  ]);
  return [head, ...rows];
}

/** Display units are straight lines of SI ones: two points give the line, once per column. */
function scaleOf(quantity: Quantity, units: DisplaySystem): (x: number) => number {
  const zero = toDisplay(0, quantity, units).value;
  const slope = toDisplay(1, quantity, units).value - zero;
  return (x) => zero + slope * x;
}

function figure(x: number): string {
  return Number.isFinite(x) ? String(Number(x.toPrecision(FIGURES))) : '';
}
