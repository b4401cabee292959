import type { Flag, Run } from '../define/index.js';
import { toDisplay, type DisplaySystem } from '../quantity/index.js';
import { CAUTIONS } from './caution.js';
import { differences, signed, time } from './figure.js';
import { columns, plain, wrap } from './layout.js';

/** How a test card is printed. */
export interface TableOptions {
  readonly units: DisplaySystem;
  /** Marks severities for a terminal; absent: plain text. */
  readonly paint?: (text: string, severity: Flag['severity']) => string;
}

const WIDTH = 100;

/**
 * The test card of a run as plain text, columns aligned: cautions, conditions, flags with
 * margins, times per unit, events with their causes. Ends with a line break.
 */
export function toTable(run: Run, options: TableOptions): string {
  const parts = [
    cautions(),
    heading(run, options.units),
    flags(run, options),
    times(run),
    events(run),
  ];
  return `${parts.map((p) => p.join('\n')).join('\n\n')}\n`;
}

function cautions(): readonly string[] {
  return CAUTIONS.map((line, i) => `${i === 0 ? 'CAUTION' : '       '}  ${line}`);
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
  const rows: [string, string][] = [
    ['Aircraft', `${scenario.title} (${scenario.file})`],
    ['Card', `${run.cardName}: ${card.title}`],
    ...(others.length > 0 ? [['Other cards', others.join(', ')] as [string, string]] : []),
    ['Oil', oil.join(', ')],
    ['Faults', faults.length === 0 ? 'none' : faults.join('; ')],
    [
      'Run',
      `${time(outcome.time)} s of ${time(Math.max(card.duration, outcome.time))} s, ${outcome.kind}; ` +
        `tolerance ${run.tolerance}, tick ${Number((1000 * run.tick).toPrecision(4))} ms`,
    ],
  ];
  const label = Math.max(...rows.map(([name]) => name.length)) + 2;
  return rows.flatMap(([name, text]) => {
    const lines = wrap(text, WIDTH, ' '.repeat(label));
    return lines.map((line, i) => (i === 0 ? name.padEnd(label) + line.slice(label) : line));
  });
}

function flags(run: Run, { units, paint = (text) => text }: TableOptions): readonly string[] {
  const raised = run.flags.filter((f) => f.severity !== 'note');
  const noted = run.flags.filter((f) => f.severity === 'note');
  const lines = [raised.length === 0 ? 'Flags: none' : `Flags: ${raised.length}`];
  for (const f of raised) {
    const head = `${f.severity.toUpperCase()}  ${signed(f.margin, f.marginQuantity, units)}  ${plain(f.title)}`;
    lines.push(
      `  ${paint(head, f.severity)}  [${f.rule}]`,
      `    at ${span(f)}: ${plain(f.devices.join(', '))}`,
      ...wrap(f.explanation, WIDTH, '    '),
      ...wrap(`Next: ${f.suggestion}`, WIDTH, '    '),
    );
  }
  if (noted.length > 0) {
    const rows = noted.map((f) => [
      signed(f.margin, f.marginQuantity, units),
      f.rule,
      f.devices.join(', '),
      span(f),
    ]);
    const heads = [
      { title: 'margin', align: 'right' },
      { title: 'rule' },
      { title: 'devices' },
      { title: 'at' },
    ] as const;
    lines.push('', 'Margins of what was in order or only noted (positive is good)');
    lines.push(...columns(heads, rows).map((line) => `  ${line}`));
  }
  return lines;
}

function span(f: Flag): string {
  const length = f.to - f.from;
  if (length < 0.0005) return `${time(f.from, 3)} s`;
  const decimals = length < 0.1 ? 3 : 2;
  return `${time(f.from, decimals)} to ${time(f.to, decimals)} s`;
}

function times(run: Run): readonly string[] {
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
  ];
}

function events(run: Run): readonly string[] {
  const heads = [
    { title: '#', align: 'right' },
    { title: 'time s', align: 'right' },
    { title: 'device' },
    { title: 'from -> to' },
    { title: 'cause' },
  ] as const;
  const rows = run.log.map((e) => [
    String(e.index),
    time(e.t, 3),
    e.device,
    e.from === '' ? e.to : `${e.from} -> ${e.to}`,
    e.by < 0 ? e.cause : `${e.cause} (from #${e.by})`,
  ]);
  return ['Events', ...columns(heads, rows).map((line) => `  ${line}`)];
}
