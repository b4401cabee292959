import type { BlowDownCell, ChargeTable, MinimumCharge, ServiceStep } from '../analysis/index.js';
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
  readonly minimum: MinimumCharge;
  readonly table: ChargeTable;
  readonly steps: readonly ServiceStep[];
}

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
  const show = (value: number, quantity: Quantity): string =>
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
    '',
    minimumText(minimum, show),
    '',
    `Charge table of ${table.bottle} (${table.gas.toLowerCase()}, ${show(table.volume, 'volume')}), the same gas at every temperature:`,
    ...indent(card),
    '',
    'After the blow-down:',
    ...steps.flatMap(({ step, reason }, i) => wrap(`${i + 1}. ${step} ${reason}`, 100, '   ')),
  ];
  return `${lines.join('\n')}\n`;
}

function minimumText(
  { kind, charge, cell }: MinimumCharge,
  show: (value: number, quantity: Quantity) => string,
): string {
  const at = `with oil and gas at ${show(cell.temperature, 'temperature')}`;
  if (kind === 'never') return `No charge within the bottle's range locks every leg ${at}.`;
  if (kind === 'always') return `Every leg locks ${at} even without gas.`;
  return `Least charge that still locks every leg ${at}: ${show(charge, 'gauge-pressure')}, to one per cent.`;
}
