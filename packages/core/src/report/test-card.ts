import type { Flag, Run } from '../define/index.js';
import { toDisplay, type DisplaySystem } from '../quantity/index.js';
import { CAUTIONS } from './caution.js';
import { eventTable } from './event-table.js';
import { differences, signed, time } from './figure.js';
import { columns, plain, wrap } from './layout.js';

/** How a test card is printed. */
export interface TableOptions {
  readonly units: DisplaySystem;
  /** Also events that are undone within a blink (a part that rebounds, a valve that hunts). */
  readonly everyEvent?: boolean;
  /** Marks severities for a terminal; absent: plain text. */
  readonly paint?: (text: string, severity: Flag['severity']) => string;
}

const WIDTH = 100;

/**
 * The test card of a run as plain text, columns aligned: cautions, conditions, result, flags,
 * times per unit, margins that held, events with their causes. The result is told again at the
 * end, where a terminal stops. Ends with a line break.
 */
export function toTable(run: Run, options: TableOptions): string {
  const parts = [
    cautions(),
    heading(run, options.units),
    flags(run, options),
    times(run, options.units),
    margins(run, options.units),
    eventTable(run, options.everyEvent === true),
    [`Result: ${result(run)}`],
  ].filter((part) => part.length > 0);
  return `${parts.map((p) => p.join('\n')).join('\n\n')}\n`;
}

function cautions(): readonly string[] {
  const heads = CAUTIONS.map((c) => c.head).join(' ');
  return wrap(heads, WIDTH, ' '.repeat(9)).map((line, i) =>
    i === 0 ? `CAUTION${line.slice(7)}` : line,
  );
}

function heading(run: Run, units: DisplaySystem): readonly string[] {
  const { scenario, card, outcome } = run;
  const { fluid } = scenario;
  const show = (value: number, quantity: 'temperature' | 'time'): string =>
    toDisplay(value, quantity, units).text;
  const oil = [
    fluid.kind,
    show(card.temperature ?? fluid.temperature, 'temperature'),
    `${Number((100 * fluid.freeAir).toPrecision(3))} % free air`,
  ];
  const faults = card.faults.map((f) => `${f.fault} on ${f.on}, severity ${f.severity}`);
  const others = Object.keys(scenario.cards).filter((name) => name !== run.cardName);
  const settings = `tolerance ${run.tolerance}, tick ${Number((1000 * run.tick).toPrecision(4))} ms`;
  const rows: readonly (readonly [string, string])[] = [
    ['Aircraft', `${scenario.title} (${scenario.file})`],
    ['Card', `${run.cardName}: ${card.title}. ${card.note}`],
    ['Other cards', others.join(', ')],
    ['Oil', oil.join(', ')],
    ['Faults', faults.length === 0 ? 'none' : faults.join('; ')],
    ['To be flagged', card.expect.join(', ')],
    [
      'Run',
      `${time(outcome.time)} s of ${time(Math.max(card.duration, outcome.time))} s; ${settings}`,
    ],
    ['Result', result(run)],
  ].filter(([, text]) => text !== '') as [string, string][];
  const label = Math.max(...rows.map(([name]) => name.length)) + 2;
  return rows.flatMap(([name, text]) => {
    const lines = wrap(text, WIDTH, ' '.repeat(label));
    return lines.map((line, i) => (i === 0 ? name.padEnd(label) + line.slice(label) : line));
  });
}

/** One sentence: how it ended, and what was flagged. */
function result({ outcome, flags }: Run): string {
  const counts = (['fail', 'caution'] as const).flatMap((severity) => {
    const n = flags.filter((f) => f.severity === severity).length;
    return n === 0 ? [] : [`${n} ${severity}${n > 1 ? 's' : ''}`];
  });
  const flagged = counts.length === 0 ? 'nothing flagged' : `FLAGGED, ${counts.join(', ')}`;
  if (outcome.kind === 'done') return flagged;
  return `NOT FINISHED (${outcome.kind} at ${time(outcome.time, 3)} s): ${outcome.why} ${outcome.hint} Until then ${flagged}`.trim();
}

function flags(run: Run, { units, paint = (text) => text }: TableOptions): readonly string[] {
  // What fails comes before what wants care, each in the order of time.
  const raised = (['fail', 'caution'] as const).flatMap((severity) =>
    run.flags.filter((f) => f.severity === severity),
  );
  const lines = [raised.length === 0 ? 'Flags: none' : `Flags: ${raised.length}`];
  const advised = new Set<string>();
  for (const f of raised) {
    const margin = signed(f.margin, f.marginQuantity, units);
    const head = `${f.severity.toUpperCase()}  ${margin}  asked for: ${plain(f.title)}`;
    lines.push(
      `  ${paint(head, f.severity)}  [${f.rule}]`,
      `    at ${span(f)}: ${plain(f.devices.join(', '))}`,
      ...wrap(f.explanation, WIDTH, '    '),
      // Both sides flagged for the same reason need the same advice once.
      ...(advised.has(f.suggestion) ? [] : wrap(`Next: ${f.suggestion}`, WIDTH, '    ')),
    );
    advised.add(f.suggestion);
  }
  return lines;
}

/** What held, rule by rule; a figure that is only noted may lie beyond its guide. */
function margins(run: Run, units: DisplaySystem): readonly string[] {
  const noted = run.flags.filter((f) => f.severity === 'note');
  if (noted.length === 0) return [];
  const rules = [...new Set(noted.map((f) => f.rule))];
  const rows = rules.flatMap((rule) =>
    noted
      .filter((f) => f.rule === rule)
      .map((f, i) => [
        i === 0 ? rule : '',
        signed(f.margin, f.marginQuantity, units),
        f.devices.join(', '),
        span(f),
        f.margin < 0 ? 'only noted' : '',
      ]),
  );
  const heads = [
    { title: 'rule' },
    { title: 'margin', align: 'right' },
    { title: 'devices' },
    { title: 'at' },
    { title: '' },
  ] as const;
  return [
    'Margins of what was in order (how far from the limit; small ones deserve a look)',
    ...columns(heads, rows).map((line) => `  ${line}`),
  ];
}

function span(f: Flag): string {
  const length = f.to - f.from;
  if (length < 0.0005) return `${time(f.from, 3)} s`;
  const decimals = length < 0.1 ? 3 : 2;
  return `${time(f.from, decimals)} to ${time(f.to, decimals)} s`;
}

function times(run: Run, units: DisplaySystem): readonly string[] {
  if (run.timings.length === 0) return ['Times: no gear selection on this card'];
  const heads = [
    { title: 'unit' },
    { title: 'side' },
    { title: 'move' },
    ...['selected at', 'leg moves', 'leg locked', 'doors home', 'total'].map((title) => ({
      title,
      align: 'right' as const,
    })),
  ];
  const rows = run.timings.map((t) => [
    t.unit,
    t.side,
    t.direction,
    time(t.start),
    ...[t.moving, t.locked, t.doors].map((x) => time(x - t.start)),
    time(t.total),
  ]);
  const apart = differences(run.timings).map(
    (d) =>
      `  Left to right, ${d.direction} at ${time(d.start)} s: ` +
      (Number.isNaN(d.seconds)
        ? 'not both finished'
        : `${time(Math.abs(d.seconds))} s apart, ${d.seconds > 0 ? d.left : d.right} first`),
  );
  return [
    'Times, s from the selector (- was not reached)',
    ...columns(heads, rows).map((line) => `  ${line}`),
    ...apart,
    ...allowed(run, units),
  ];
}

function allowed({ scenario }: Run, units: DisplaySystem): readonly string[] {
  const { timeUp, timeDown, spread } = scenario.limits;
  const limits = Object.entries({ up: timeUp, down: timeDown, 'left to right': spread }).flatMap(
    ([what, limit]) =>
      limit === undefined ? [] : [`${what} ${toDisplay(limit, 'time', units).text}`],
  );
  return limits.length === 0 ? [] : [`  Allowed in this scenario: ${limits.join(', ')}`];
}
