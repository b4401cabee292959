import type {
  BlowDownCell,
  ChargeTable,
  FollowUp,
  MinimumCharge,
  RampCase,
  ServiceStep,
} from '../analysis/index.js';
import type { Quantity } from '../define/index.js';
import { toDisplay, type DisplaySystem } from '../quantity/index.js';
import { CAUTIONS } from './caution.js';
import { signed, time } from './figure.js';
import { columns, wrap } from './layout.js';

/** What a blow-down report is made of. */
export interface BlowDownReport {
  readonly title: string;
  readonly card: string;
  /** The card as it stands. */
  readonly cell: BlowDownCell;
  readonly ramps: readonly RampCase[];
  readonly minimum: MinimumCharge;
  readonly table: ChargeTable;
  readonly steps: readonly ServiceStep[];
  readonly after?: FollowUp;
}

type Show = (value: number, quantity: Quantity) => string;

/** On top of it, beside those of every report. */
const GAS_CAUTION =
  'Gas stores energy: a leg that hangs lets go at once. Stand clear, vent before a joint is opened, wear eye protection. Never select UP before the system has been serviced.';

const VERDICTS: Readonly<Record<BlowDownCell['verdict'], string>> = {
  locked: 'Every leg reaches down and locked.',
  'not locked': 'NOT every leg reaches down and locked.',
  failed: 'The run could not be finished.',
};

/** The report as text for a terminal or a printer, 100 columns wide. */
export function toBlowDownText(report: BlowDownReport, system: DisplaySystem): string {
  const { cell, minimum, table, steps } = report;
  const show: Show = (value, quantity) =>
    Number.isFinite(value) ? toDisplay(value, quantity, system).text : '-';
  const legs = columns(
    [
      { title: 'unit' },
      { title: 'locked' },
      { title: 'time', align: 'right' },
      { title: 'least margin', align: 'right' },
      { title: 'at', align: 'right' },
      { title: 'available', align: 'right' },
      { title: 'needed', align: 'right' },
    ],
    cell.legs.map((leg) => [
      leg.unit,
      leg.locked ? 'yes' : 'NO',
      leg.locked ? `${time(leg.time)} s` : '-',
      Number.isFinite(leg.margin) ? signed(leg.margin, 'moment', system) : '-',
      show(leg.at, 'angle'),
      show(leg.available, 'moment'),
      show(leg.needed, 'moment'),
    ]),
  );
  const card = columns(
    [
      { title: 'temperature', align: 'right' },
      { title: 'gauge', align: 'right' },
    ],
    table.rows.map((row) => [
      show(row.temperature, 'temperature'),
      show(row.pressure, 'gauge-pressure'),
    ]),
  );
  const indent = (lines: readonly string[]): string[] => lines.map((line) => `  ${line}`);
  const lines = [
    ...wrap(`CAUTION ${CAUTIONS[0].head} ${CAUTIONS[0].text}`, 100, ''),
    ...wrap(`CAUTION ${GAS_CAUTION}`, 100, ''),
    '',
    `${report.title}: ${report.card}`,
    `Charge ${show(cell.charge, 'gauge-pressure')}, oil and gas at ${show(cell.temperature, 'temperature')}.`,
    '',
    VERDICTS[cell.verdict] + (cell.why === undefined ? '' : ` ${cell.why}`),
    ...indent(legs),
    `  The bottle ends at ${show(cell.endPressure, 'gauge-pressure')}, with ${(100 * cell.gasLeft).toFixed(0)} % of its gas.`,
    ...report.ramps.map((ramp) => `  ${rampText(ramp, system)}`),
    '',
    minimumText(minimum, show),
    '',
    `Charge table of ${table.bottle} (${table.gas.toLowerCase()}, ${show(table.volume, 'volume')}), the same gas at every temperature:`,
    ...indent(card),
    '',
    'After the blow-down:',
    ...steps.flatMap(({ step, reason }, i) => {
      const why = reason.map((part) =>
        typeof part === 'string' ? part : show(part.value, part.quantity),
      );
      return wrap(`${i + 1}. ${step} ${why.join('')}`, 100, '   ');
    }),
    ...(report.after === undefined ? [] : ['', ...afterText(report.after)]),
  ];
  return `${lines.join('\n')}\n`;
}

function rampText({ unit, margin, moment, broken }: RampCase, system: DisplaySystem): string {
  const when = broken ? 'shortening link broken' : 'were its shortening link to break';
  const how =
    margin > 0
      ? 'the ramp frees it, with'
      : 'the ramp holds it (its angle does not beat the friction), with';
  return `${unit}, ${when}: ${how} ${signed(moment, 'moment', system)}, ${(100 * margin).toFixed(0)} % of the strut's push.`;
}

/** What a normal swing is like when nobody has bled the gas. */
function afterText({ card, sound, gassed }: FollowUp): string[] {
  const rows = gassed.map((t, i) => [
    t.unit,
    t.direction,
    time(sound[i]?.total ?? NaN),
    time(t.total),
    time(t.total - (sound[i]?.total ?? NaN)),
  ]);
  return [
    `A swing (${card}) before anybody has bled it, times in seconds:`,
    ...columns(
      [
        { title: 'unit' },
        { title: 'way' },
        { title: 'sound', align: 'right' },
        { title: 'with gas', align: 'right' },
        { title: 'longer by', align: 'right' },
      ],
      rows,
    ).map((line) => `  ${line}`),
  ];
}

function minimumText({ kind, charge, cell }: MinimumCharge, show: Show): string {
  const at = `with oil and gas at ${show(cell.temperature, 'temperature')}`;
  if (kind === 'never') return `No charge within the bottle's range locks every leg ${at}.`;
  if (kind === 'always') return `Every leg locks ${at} even without gas.`;
  return `Least charge that still locks every leg ${at}: ${show(charge, 'gauge-pressure')}, to one per cent.`;
}
