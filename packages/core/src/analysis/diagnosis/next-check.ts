/**
 * Which check to do next: by the information to be expected of it (mutual information of cause and outcome;
 * Lindley, On a measure of the information provided by an experiment, 1956), for each minute of work.
 */
import { checks } from '../../check/index.js';
import type { Catalogues, CheckConditions, Scenario } from '../../define/index.js';
import { WHOLE_GEAR, type ObservationSheet } from '../../observation/index.js';
import { lookFinds } from './look.js';
import type { Cause, RankedCheck, Signature } from './shapes.js';

/** What is believed of one cause. */
export interface Weighed {
  readonly causes: readonly Cause[];
  readonly probability: number;
}

/** A swing check with how far two causes lie apart under it, in squared standard deviations. */
export interface SwingOutlook {
  readonly check: string;
  /** For each of the causes the check was played for: its place among the beliefs. */
  readonly places: readonly number[];
  readonly apart: (a: number, b: number) => number;
}

/** Not worth doing below this, bit. */
const LEAST = 0.02;
/** So many are told. */
const MOST = 12;

/** Whether a look can be made on an aircraft, and is not on the sheet yet. */
export function possibleLooks(
  catalogues: Catalogues,
  { components }: Scenario,
  { looks = [] }: Pick<ObservationSheet, 'looks'>,
): (check: string, on: string) => boolean {
  const made = new Set(looks.map(({ check, on }) => `${check} ${on}`));
  const roles = new Set(Object.values(components).map(({ is }) => catalogues.components[is].role));
  return (check, on) => {
    const { needs } = checks[check];
    return (needs === undefined || roles.has(needs)) && !made.has(`${check} ${on}`);
  };
}

/** @param possible whether a look can be made on this aircraft, and was not made yet */
export function rankedChecks(
  beliefs: readonly Weighed[],
  outlooks: readonly SwingOutlook[],
  possible: (check: string, on: string) => boolean = () => true,
): RankedCheck[] {
  const looks = Object.values(checks).flatMap(({ kind, shows = [], anywhere = false }) => {
    const parts = new Set(
      beliefs.flatMap((b) =>
        b.causes.flatMap((c) => (shows.includes(c.fault) ? [anywhere ? WHOLE_GEAR : c.on] : [])),
      ),
    );
    return [...parts].filter((on) => possible(kind, on)).map((on) => lookWorth(kind, on, beliefs));
  });
  const swings = outlooks.map((outlook) => swingWorth(outlook, beliefs));
  return [...looks, ...swings]
    .filter((c) => c.information > LEAST)
    .sort((a, b) => b.perMinute - a.perMinute)
    .slice(0, MOST);
}

function lookWorth(check: string, on: string, beliefs: readonly Weighed[]): RankedCheck {
  let finds = 0;
  let open = 0;
  for (const { causes, probability } of beliefs) {
    const p = lookFinds(check, on, causes);
    finds += probability * p;
    open += probability * entropy(p);
  }
  return worth(check, on, entropy(finds) - open, finds);
}

/** Outcomes are taken to be what each cause foretells, seen through the errors of reading. */
function swingWorth(
  { check, places, apart }: SwingOutlook,
  beliefs: readonly Weighed[],
): RankedCheck {
  const total = places.reduce((sum, p) => sum + beliefs[p].probability, 0);
  let information = 0;
  places.forEach((p, a) => {
    const own = beliefs[p].probability / total;
    const alike = places.reduce(
      (sum, q, b) => sum + (beliefs[q].probability / total) * Math.exp(-0.25 * apart(a, b)),
      0,
    );
    // Of the causes that were not played nothing is known.
    information -= total * own * Math.log2(alike);
  });
  return worth(check, '', information, NaN);
}

function worth(check: string, on: string, information: number, finds: number): RankedCheck {
  return { check, on, information, perMinute: information / checks[check].minutes, finds };
}

/** Entropy of yes or no, bit. */
function entropy(p: number): number {
  if (p <= 0 || p >= 1) return 0;
  return -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);
}

/** Swing checks with what they change. */
export function swingChecks(): readonly (readonly [kind: string, change: CheckConditions])[] {
  return Object.values(checks).flatMap(({ kind, swing }) =>
    swing === undefined ? [] : [[kind, swing] as const],
  );
}

/** A hand's and the model's spread of a time: s, and share of it. */
const HAND = 0.1;
const SHARE = 0.03;
/** What it counts when only one of two swings comes to its end: as good as certain. */
const ONE_ENDS = 14;

/** How far two swings lie apart for whoever times their legs, in squared standard deviations. */
export function apartInTimes(a: Signature, b: Signature): number {
  let sum = 0;
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    if (!key.endsWith('/total') && !key.endsWith('/locked')) continue;
    const [x, y] = [a[key], b[key]];
    sum +=
      x === undefined || y === undefined
        ? ONE_ENDS
        : (x - y) ** 2 / (HAND ** 2 + (SHARE * Math.max(x, y)) ** 2);
  }
  return sum;
}
