/** A diagnosis on paper: what was seen, what was concluded and how sure, what to do next. */
import type { Diagnosis } from '../analysis/index.js';
import type { ObservationSheet } from '../observation/index.js';
import type { DisplaySystem } from '../quantity/index.js';
import { CAUTIONS } from './caution.js';
import {
  diagnosisDocument,
  type CheckLine,
  type DiagnosisCatalogues,
  type MemberLine,
  type RankedLine,
} from './diagnosis-document.js';
import { columns, plain, wrap } from './layout.js';

const WIDE = 100;
const BAR = 24;
/** Checks that are told. */
const NEXT = 5;

/** The report as text for a terminal or a printer, 100 columns wide. */
export function toDiagnosisText(
  catalogues: DiagnosisCatalogues,
  sheet: ObservationSheet,
  diagnosis: Diagnosis,
  system: DisplaySystem,
): string {
  const d = diagnosisDocument(catalogues, sheet, diagnosis, system);
  const first = d.ranking.find(({ members }) => members.length > 0)?.members[0];
  const lines = [
    ...wrap(`CAUTION ${CAUTIONS[0].head} ${CAUTIONS[0].text}`, WIDE, ''),
    '',
    plain(`${d.title}: ${d.swings}`),
    ...d.about.map(([head, text]) => plain(`  ${head} ${text}`)),
    ...d.looks.map((look) => plain(`  ${look}`)),
    '',
    d.verdict,
    '',
    ...d.ranking.flatMap(groupLines),
    '',
    ...(first === undefined ? [] : comparisons(first)),
    ...(d.unused.length === 0 ? [] : ['', ...wrap(`Not used: ${d.unused.join('; ')}.`, WIDE, '')]),
    '',
    ...next(d.checks),
    ...(d.standing === 'established' && first !== undefined ? remedies(first) : []),
    '',
    ...wrap(d.defers, WIDE, ''),
  ];
  return `${lines.join('\n')}\n`;
}

function bar(share: number, percent: string): string {
  const full = Math.round(BAR * Math.min(1, share));
  return `[${'#'.repeat(full)}${'.'.repeat(BAR - full)}] ${percent.padStart(6)}`;
}

function groupLines({ title, probability, percent, members, more }: RankedLine): string[] {
  const [first, ...others] = members;
  const severity = first?.severityText ?? '';
  const indent = `${' '.repeat(BAR + 10)}or `;
  return [
    `${bar(probability, percent)} ${title}${severity === '' ? '' : `; severity ${severity}`}`,
    ...others.map((m) => `${indent}${m.title} (${m.percent})`),
    ...(more > 0 ? [`${indent}${more} more that show the same`] : []),
  ];
}

function comparisons({ title, note, comparisons: all }: MemberLine): string[] {
  return [
    `Seen, and foretold by: ${title}`,
    ...(note === '' ? [] : wrap(note, WIDE, '  ')),
    ...columns(
      [
        { title: 'swing', align: 'right' },
        { title: 'what' },
        { title: 'seen', align: 'right' },
        { title: 'foretold', align: 'right' },
        { title: '' },
      ],
      all.map((c) => [String(c.swing), c.what, c.seen, c.foretold, c.fits ? '' : 'does not fit']),
    ).map((line) => `  ${line}`),
  ];
}

function next(checks: readonly CheckLine[]): string[] {
  if (checks.length === 0) return ['No check of the catalogue would tell more.'];
  return [
    'Next checks, the most told per minute first:',
    ...checks
      .slice(0, NEXT)
      .flatMap(({ title, on, minutes, tells, how, tools, caution }, i) => [
        `${i + 1}. ${title}${on === '' ? '' : `: ${on}`} (${minutes} min)`,
        ...wrap(`This ${tells}. ${how}`, WIDE, '   '),
        ...wrap(`Needs: ${tools}. CAUTION ${caution}`, WIDE, '   '),
      ]),
  ];
}

function remedies({ remedies: all }: MemberLine): string[] {
  return all.flatMap(({ title, on, confirm, remedy, caution }) => [
    '',
    `${title}, ${on}`,
    ...wrap(`To confirm: ${confirm}`, WIDE, '  '),
    ...wrap(`To put right: ${remedy}`, WIDE, '  '),
    ...wrap(`CAUTION ${caution}`, WIDE, '  '),
  ]);
}
