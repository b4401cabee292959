/** A diagnosis on paper: what was seen, what was concluded and how sure, what to do next. */
import type {
  Cause,
  Comparison,
  Diagnosis,
  Explanation,
  ExplanationGroup,
} from '../analysis/index.js';
import type { CheckDefinition, FaultDefinition } from '../define/index.js';
import type { ObservationSheet } from '../observation/index.js';
import { toDisplay, type DisplaySystem } from '../quantity/index.js';
import { CAUTIONS } from './caution.js';
import { time } from './figure.js';
import { columns, plain, wrap } from './layout.js';

/** The names that a diagnosis uses. */
export interface DiagnosisCatalogues {
  /** Of the aircraft. */
  readonly title: string;
  readonly faults: Readonly<Record<string, FaultDefinition>>;
  readonly checks: Readonly<Record<string, CheckDefinition>>;
}

/** Groups that are told, and members of each. */
const GROUPS = 5;
const MEMBERS = 6;
/** Less likely than this is not worth a line. */
const LEAST = 0.005;
const NEXT = 5;
const WIDE = 100;
const BAR = 24;

/** The report as text for a terminal or a printer, 100 columns wide. */
export function toDiagnosisText(
  catalogues: DiagnosisCatalogues,
  sheet: ObservationSheet,
  diagnosis: Diagnosis,
  system: DisplaySystem,
): string {
  const { groups, established, unknown, unused } = diagnosis;
  const shown = groups.filter((g) => g.probability > LEAST).slice(0, GROUPS);
  const first = shown[0]?.members[0];
  const lines = [
    ...wrap(`CAUTION ${CAUTIONS[0].head} ${CAUTIONS[0].text}`, WIDE, ''),
    '',
    plain(`${catalogues.title}: ${swings(sheet)}`),
    ...texts([
      ['by', sheet.by],
      ['on', sheet.date],
      ['note', sheet.note],
    ]),
    '',
    verdict(catalogues, diagnosis),
    '',
    ...shown.flatMap((group) => groupLines(catalogues, group)),
    ...(unknown > LEAST ? [`${bar(unknown)} none of the known causes`] : []),
    '',
    ...(first === undefined ? [] : comparisons(catalogues, first, system)),
    ...(unused.length === 0 ? [] : ['', ...wrap(`Not used: ${unused.join('; ')}.`, WIDE, '')]),
    '',
    ...next(catalogues, diagnosis),
    ...(established && first !== undefined ? remedies(catalogues, first) : []),
    '',
    ...wrap(DEFERS, WIDE, ''),
  ];
  return `${lines.join('\n')}\n`;
}

const DEFERS =
  'Probabilities rest on a simulation and on how often such faults are met. What is checked, adjusted and signed for follows the aircraft’s approved data, local rules, and the judgement of the licensed person who signs.';

function swings({ swings: all }: ObservationSheet): string {
  const count = (way: string): number => all.filter((s) => s.direction === way).length;
  return ['up', 'down', 'blow-down']
    .filter((way) => count(way) > 0)
    .map((way) => `${count(way)} swing${count(way) === 1 ? '' : 's'} ${way}`)
    .join(', ');
}

function texts(pairs: readonly (readonly [string, string])[]): string[] {
  return pairs.flatMap(([head, text]) => (text === '' ? [] : [plain(`  ${head} ${text}`)]));
}

function causeText({ faults }: DiagnosisCatalogues, causes: readonly Cause[]): string {
  if (causes.length === 0) return 'healthy, as far as this shows';
  return causes.map(({ fault, on }) => `${faults[fault]?.title ?? fault}, ${on}`).join(' and ');
}

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.0995 ? 1 : 0)} %`;

function bar(share: number): string {
  const full = Math.round(BAR * Math.min(1, share));
  return `[${'#'.repeat(full)}${'.'.repeat(BAR - full)}] ${percent(share).padStart(6)}`;
}

function verdict(
  catalogues: DiagnosisCatalogues,
  { groups, established, unknown }: Diagnosis,
): string {
  const [top] = groups;
  if (top === undefined) return 'Nothing could be concluded.';
  if (unknown > top.probability) return 'NONE OF THE KNOWN CAUSES FITS what was noted.';
  const likely = causeText(catalogues, top.members[0].causes);
  const more = top.members.length > 1 ? ', or what these observations cannot tell from it' : '';
  return established
    ? `ESTABLISHED with ${percent(top.probability)}: ${likely}${more}.`
    : `Not established yet. Likeliest, with ${percent(top.probability)}: ${likely}${more}.`;
}

function groupLines(
  catalogues: DiagnosisCatalogues,
  { probability, members }: ExplanationGroup,
): string[] {
  const few = members.slice(0, MEMBERS);
  const rest = members.length - few.length;
  return [
    `${bar(probability)} ${causeText(catalogues, members[0].causes)}${severityText(members[0])}`,
    ...few
      .slice(1)
      .map(
        (m) =>
          `${' '.repeat(BAR + 10)}or ${causeText(catalogues, m.causes)} (${percent(m.probability)})`,
      ),
    ...(rest > 0 ? [`${' '.repeat(BAR + 10)}or ${rest} more that show the same`] : []),
  ];
}

function severityText({ causes, severity, severityRange: [low, high] }: Explanation): string {
  if (causes.length === 0) return '';
  return `; severity ${percent(severity)} (${percent(low)} to ${percent(high)})`;
}

function comparisons(
  catalogues: DiagnosisCatalogues,
  { causes, comparisons: all }: Explanation,
  system: DisplaySystem,
): string[] {
  const value = (c: Comparison, x: number): string => {
    if (c.kind === 'fact') return c.observed === x ? 'seen' : `${(100 * x).toFixed(0)} % likely`;
    if (!Number.isFinite(x)) return 'never';
    if (c.kind === 'time') return `${time(x)} s`;
    if (c.kind === 'strokes') return x.toFixed(0);
    return toDisplay(x, c.kind === 'flow' ? 'flow' : 'gauge-pressure', system).text;
  };
  return [
    `Seen, and foretold by: ${causeText(catalogues, causes)}`,
    ...columns(
      [
        { title: 'swing', align: 'right' },
        { title: 'what' },
        { title: 'seen', align: 'right' },
        { title: 'foretold', align: 'right' },
      ],
      all.map((c) => [String(c.swing + 1), c.label, value(c, c.observed), value(c, c.foretold)]),
    ).map((line) => `  ${line}`),
  ];
}

function next(catalogues: DiagnosisCatalogues, { checks }: Diagnosis): string[] {
  if (checks.length === 0) return ['No check of the catalogue would tell more.'];
  return [
    'Next checks, the most told per minute first:',
    ...checks.slice(0, NEXT).flatMap(({ check, on, finds, information }, i) => {
      const c = catalogues.checks[check];
      const odds = Number.isFinite(finds) ? `, finds something with ${percent(finds)}` : '';
      return [
        `${i + 1}. ${c.title}${on === '' ? '' : `: ${on}`} (${c.minutes} min, ${information.toFixed(2)} bit${odds})`,
        ...wrap(c.how, WIDE, '   '),
        ...wrap(`Needs: ${c.tools}. CAUTION ${c.caution}`, WIDE, '   '),
      ];
    }),
  ];
}

function remedies({ faults }: DiagnosisCatalogues, { causes }: Explanation): string[] {
  return causes.flatMap(({ fault, on }) => {
    const f = faults[fault];
    return [
      '',
      `${f.title}, ${on}`,
      ...wrap(`To confirm: ${f.confirm}`, WIDE, '  '),
      ...wrap(`To put right: ${f.remedy}`, WIDE, '  '),
      ...wrap(`CAUTION ${f.caution}`, WIDE, '  '),
    ];
  });
}
