/** A diagnosis in words: what the text for a terminal and the page's bench and report are both made of. */
import type {
  Cause,
  Comparison,
  Diagnosis,
  Explanation,
  ExplanationGroup,
  FittedSeverity,
  RankedCheck,
} from '../analysis/index.js';
import type { CheckDefinition, FaultDefinition } from '../define/index.js';
import type { ObservationSheet } from '../observation/index.js';
import { toDisplay, type DisplaySystem } from '../quantity/index.js';
import { signed, time } from './figure.js';

/** The names that a diagnosis uses. */
export interface DiagnosisCatalogues {
  /** Of the aircraft. */
  readonly title: string;
  readonly faults: Readonly<Record<string, FaultDefinition>>;
  readonly checks: Readonly<Record<string, CheckDefinition>>;
}

/** An entry of the sheet beside what a cause foretells. */
export interface ComparisonLine {
  /** From 1. */
  readonly swing: number;
  readonly what: string;
  readonly seen: string;
  readonly foretold: string;
  /** False where it is further off than reading errors explain. */
  readonly fits: boolean;
}

/** How a cause is confirmed and put right. */
export interface RemedyLine {
  readonly title: string;
  readonly on: string;
  readonly confirm: string;
  readonly remedy: string;
  readonly caution: string;
}

export interface MemberLine {
  readonly title: string;
  /** None: the healthy aircraft. */
  readonly causes: readonly Cause[];
  readonly percent: string;
  /** Of each cause, as fitted. */
  readonly severities: readonly FittedSeverity[];
  /** The same in words; empty for the healthy aircraft. */
  readonly severityText: string;
  /** What to know of what it foretells; empty where that is of the nominal aircraft. */
  readonly note: string;
  readonly comparisons: readonly ComparisonLine[];
  readonly remedies: readonly RemedyLine[];
}

/** Causes that cannot be told apart by what was noted, or `none of the known causes`, which has no members. */
export interface RankedLine {
  readonly title: string;
  readonly probability: number;
  readonly percent: string;
  /** The same in a word or two; 'so far' before all was played. */
  readonly odds: string;
  /** The likeliest first. */
  readonly members: readonly MemberLine[];
  /** Members that are too many to be told. */
  readonly more: number;
}

export interface CheckLine {
  readonly check: string;
  /** Part to look at; empty for a swing. */
  readonly on: string;
  readonly title: string;
  readonly how: string;
  readonly minutes: number;
  readonly tools: string;
  readonly caution: string;
  /** What it would tell, in words. */
  readonly tells: string;
}

export interface DiagnosisDocument {
  readonly title: string;
  readonly swings: string;
  /** Who, when, what else: only what the sheet says. */
  readonly about: readonly (readonly [head: string, text: string])[];
  readonly standing: 'nothing' | 'open' | 'established' | 'none fits';
  readonly verdict: string;
  readonly ranking: readonly RankedLine[];
  readonly checks: readonly CheckLine[];
  /** What looks have shown. */
  readonly looks: readonly string[];
  readonly unused: readonly string[];
  readonly defers: string;
}

const OFF_NOMINAL =
  'A small thing decides here: this is foretold of an aircraft within the tolerances of healthy ones; the nominal one would do another thing with this cause.';

/** @param colder than was noted, K */
const atAnother = (colder: number, system: DisplaySystem): string =>
  `Foretold of oil that is off by ${signed(-colder, 'temperature', system)} from what was noted: this fault is worse the colder it is, so a few degrees matter.`;

/** Groups that are told, and where nothing fits; members of each, entries of each member. */
const GROUPS = 5;
const NEAREST = 3;
const MEMBERS = 6;
const ENTRIES = 200;
/** Less likely than this is not worth a line. */
const LEAST = 0.005;
/** What would read 0.0 %, and of a group is only counted. */
const TRACE = 0.0005;
/** Reading errors that an entry may be off: nineteen in twenty are within two. */
const ERRORS = 2;
/** A fact that is seen once in so many is no surprise. */
const SURPRISE = 0.2;

const DEFERS =
  'Probabilities rest on a simulation and on how often such faults are met. What is checked, adjusted and signed for follows the aircraft’s approved data, local rules, and the judgement of the licensed person who signs.';

export function diagnosisDocument(
  catalogues: DiagnosisCatalogues,
  sheet: ObservationSheet,
  diagnosis: Diagnosis,
  system: DisplaySystem,
): DiagnosisDocument {
  const { groups, unknown, unused } = diagnosis;
  const likely = groups.filter((g) => g.probability > LEAST).slice(0, GROUPS);
  // Where nothing fits, what comes nearest is told all the same.
  const known = (likely.length > 0 ? likely : groups.slice(0, NEAREST)).map((g) =>
    groupLine(catalogues, g, diagnosis, system),
  );
  const nobody: RankedLine = {
    title: 'none of the known causes',
    ...chance(unknown, diagnosis),
    members: [],
    more: 0,
  };
  const about = [
    ['by', sheet.by],
    ['on', sheet.date],
    ['note', sheet.note],
  ] as const;
  return {
    title: catalogues.title,
    swings: swings(sheet),
    about: about.filter(([, text]) => text !== ''),
    ...verdict(catalogues, diagnosis),
    ranking: [...known, ...(unknown > LEAST ? [nobody] : [])].sort(
      (a, b) => b.probability - a.probability,
    ),
    checks: diagnosis.checks.map((c) => checkLine(catalogues, c, doubt(diagnosis))),
    looks: (sheet.looks ?? []).map(
      ({ check, on, found }) =>
        `${catalogues.checks[check]?.title ?? check}, ${on}: ${found ? 'found' : 'not found'}`,
    ),
    unused,
    defers: DEFERS,
  };
}

function swings({ swings: all }: ObservationSheet): string {
  const count = (way: string): number => all.filter((s) => s.direction === way).length;
  return ['up', 'down', 'blow-down']
    .filter((way) => count(way) > 0)
    .map((way) => `${count(way)} swing${count(way) === 1 ? '' : 's'} ${way}`)
    .join(', ');
}

const percentText = (share: number): string => `${(100 * share).toFixed(share < 0.0995 ? 1 : 0)} %`;

/** From how likely on a word is used. */
const ODDS = [
  [0.9, 'nearly certain'],
  [0.6, 'likely'],
  [0.3, 'possible'],
  [0.05, 'unlikely'],
  [0, 'very unlikely'],
] as const;

/** Before all was played a percentage is one of what was: no word for it. */
function chance(
  probability: number,
  { whole }: Diagnosis,
): Pick<RankedLine, 'probability' | 'percent' | 'odds'> {
  const odds = ODDS.find(([from]) => probability >= from)?.[1] ?? '';
  return { probability, percent: percentText(probability), odds: whole ? odds : 'so far' };
}

function causeText({ faults }: DiagnosisCatalogues, causes: readonly Cause[]): string {
  if (causes.length === 0) return 'healthy, as far as this shows';
  return causes.map(({ fault, on }) => `${faults[fault]?.title ?? fault}, ${on}`).join(' and ');
}

function verdict(
  catalogues: DiagnosisCatalogues,
  { groups, established, unknown, whole }: Diagnosis,
): Pick<DiagnosisDocument, 'standing' | 'verdict'> {
  const [top] = groups;
  if (top === undefined) return { standing: 'nothing', verdict: 'Nothing could be concluded.' };
  const likely = causeText(catalogues, top.members[0].causes);
  if (unknown > top.probability)
    return {
      standing: 'none fits',
      verdict: `${whole ? 'NONE OF THE KNOWN CAUSES FITS' : 'No cause played so far fits'} what was noted. Nearest comes: ${likely}.`,
    };
  const more = top.members.length > 1 ? ', or what these observations cannot tell from it' : '';
  const percent = percentText(top.probability);
  return established
    ? { standing: 'established', verdict: `ESTABLISHED with ${percent}: ${likely}${more}.` }
    : {
        standing: 'open',
        verdict: `Not established yet. Likeliest${whole ? '' : ' of those played so far'}, with ${percent}: ${likely}${more}.`,
      };
}

function groupLine(
  catalogues: DiagnosisCatalogues,
  { probability, members }: ExplanationGroup,
  diagnosis: Diagnosis,
  system: DisplaySystem,
): RankedLine {
  const told = members.filter((m, i) => i === 0 || m.probability >= TRACE).slice(0, MEMBERS);
  return {
    title: causeText(catalogues, members[0].causes),
    ...chance(probability, diagnosis),
    members: told.map((m) => memberLine(catalogues, m, system)),
    more: members.length - told.length,
  };
}

function memberLine(
  catalogues: DiagnosisCatalogues,
  explanation: Explanation,
  system: DisplaySystem,
): MemberLine {
  const { causes, probability, severities, comparisons } = explanation;
  const { offNominal, colder } = explanation;
  return {
    title: causeText(catalogues, causes),
    causes,
    percent: percentText(probability),
    severities,
    severityText: severities.map(severityText).join(' and '),
    note: offNominal ? OFF_NOMINAL : colder === undefined ? '' : atAnother(colder, system),
    comparisons: comparisons.slice(0, ENTRIES).map((c) => comparisonLine(c, system)),
    remedies: causes.flatMap(({ fault, on }) => {
      const f = catalogues.faults[fault];
      if (f === undefined) return [];
      const { title, confirm, remedy, caution } = f;
      return [{ title, on, confirm, remedy, caution }];
    }),
  };
}

function severityText({ at, range }: FittedSeverity): string {
  const [low, high] = range.map(percentText);
  return `${percentText(at)} (${low} to ${high})`;
}

function comparisonLine(c: Comparison, system: DisplaySystem): ComparisonLine {
  const value = (x: number): string => {
    if (c.kind === 'fact') return c.observed === x ? 'seen' : `${(100 * x).toFixed(0)} % likely`;
    if (!Number.isFinite(x)) return 'never';
    if (c.kind === 'time') return `${time(x)} s`;
    if (c.kind === 'strokes') return x.toFixed(0);
    return toDisplay(x, c.kind === 'flow' ? 'flow' : 'gauge-pressure', system).text;
  };
  const fits =
    c.kind === 'fact'
      ? c.foretold >= SURPRISE
      : Math.abs(c.observed - c.foretold) <= ERRORS * c.error;
  return {
    swing: c.swing + 1,
    what: c.label,
    seen: value(c.observed),
    foretold: value(c.foretold),
    fits,
  };
}

/** What is open: the entropy of the ranking, bit. */
function doubt({ groups, unknown }: Diagnosis): number {
  const all = [...groups.flatMap((g) => g.members.map((m) => m.probability)), unknown];
  return all.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
}

function checkLine(
  { checks }: DiagnosisCatalogues,
  { check, on, finds, information }: RankedCheck,
  open: number,
): CheckLine {
  const { title, how, minutes, tools, caution } = checks[check];
  const share = open > 0 ? Math.min(1, information / open) : 0;
  const odds = Number.isFinite(finds) ? `; finds something with ${percentText(finds)}` : '';
  const tells = `would settle ${(100 * share).toFixed(0)} % of what is open (${information.toFixed(2)} bit)${odds}`;
  return { check, on, title, how, minutes, tools, caution, tells };
}
