/** Facts that were seen, and how likely each is under what a signature foretells. */
import type { Scenario } from '../../define/index.js';
import {
  WHOLE_GEAR,
  type ObservedEvent,
  type ObservedSwing,
  type Remark,
} from '../../observation/index.js';
import type { Signature } from './shapes.js';

export interface Fact {
  readonly label: string;
  /** Its probability under a signature. */
  readonly seen: (s: Signature) => number;
}

/** A fact that must be seen is missed, or seen where it is not, once in so many. */
const SLIP = 0.02;
/** That a part did not move, or not come home, nobody mistakes: once in a lifetime of sheets. */
const GLARING = 1e-4;
/** Pauses shorter than a blink are not seen as jerks by everybody. */
const JERKS = { without: 0.1, with: 0.7 } as const;
/** Difference between two moments that the eye tells for sure, s. */
const GLANCE = 0.15;
/** What anybody sees a part to have moved while it was left, rad, and how sharply that is told. */
const DRIFT = 0.035;
const DRIFT_SPREAD = 0.012;
/** Difference between two sides that is called one, s. */
const APART = 0.4;

/** How sharply it is known when something comes that just makes it, or just does not: s, and share of its time. What is slow is so by a small difference, and hangs on every tolerance. */
const LATE = { seconds: 0.1, share: 0.1 } as const;

/** Probability that something comes while its swing is watched. */
function came(s: Signature, d: string, unit: string, event: string): number {
  const t = s[`${d}/${unit}/${event}`];
  if (t === undefined) return GLARING;
  const window = s[`${d}/${unit}/window`] ?? s[`${d}/window`] ?? Infinity;
  const p = normal((window - t) / Math.hypot(LATE.seconds, LATE.share * t));
  return Math.min(Math.max(p, GLARING), 1 - GLARING);
}

/** What was waited for and did not come. */
export function neverFacts({
  direction,
  never = [],
}: Pick<ObservedSwing, 'direction' | 'never'>): Fact[] {
  return never.map(({ unit, event }) => ({
    label: `${unit} ${event} never`,
    seen: (s) => 1 - came(s, direction, unit, event),
  }));
}

/** One entry after another: each pair is a fact of its own. */
export function orderFacts({ direction, order }: ObservedSwing): Fact[] {
  const key = (e: ObservedEvent): string => `${direction}/${e.unit}/${e.event}`;
  const name = (e: ObservedEvent): string => `${e.unit} ${e.event}`;
  return order.slice(1).map((later, i) => {
    const first = order[i];
    return {
      label: `${name(first)} before ${name(later)}`,
      seen: (s: Signature) => {
        const [a, b] = [s[key(first)], s[key(later)]];
        // What stands in an order was seen to come.
        const both = Math.min(...[first, later].map((e) => came(s, direction, e.unit, e.event)));
        return a === undefined || b === undefined
          ? GLARING
          : Math.max(GLARING, both * slipped(before(a, b, GLANCE)));
      },
    };
  });
}

/** Probability that the first is seen before the second; of what never comes the other is first. */
function before(a: number | undefined, b: number | undefined, width: number): number {
  if (a === undefined) return b === undefined ? 0.5 : 0;
  return b === undefined ? 1 : normal((b - a) / width);
}

const slipped = (p: number): number => SLIP + (1 - 2 * SLIP) * p;
export const glaring = (is: boolean): number => (is ? 1 - GLARING : GLARING);

/** How likely a remark is under a signature; undefined where a swing does not tell. */
export function remarkSeen(
  scenario: Scenario,
  d: string,
  unit: string,
  remark: Remark,
): Fact['seen'] | undefined {
  const units = unit === WHOLE_GEAR ? Object.keys(scenario.units) : [unit];
  switch (remark) {
    case 'did not move':
      return (s) => glaring(units.every((u) => s[`${d}/${u}/moved`] !== 1));
    case 'stopped short':
      return (s) =>
        Math.max(
          ...units.map((u) => (s[`${d}/${u}/moved`] === 1 ? 1 - came(s, d, u, 'locked') : GLARING)),
        );
    case 'moved by jerks':
      return (s) => (units.some((u) => s[`${d}/${u}/pauses`] > 0) ? JERKS.with : JERKS.without);
    case 'slower than the other side':
    case 'faster than the other side': {
      const other = otherSide(scenario, unit);
      if (other === undefined) return undefined;
      const [slow, quick] = remark.startsWith('slower') ? [unit, other] : [other, unit];
      const total = (s: Signature, u: string): number | undefined =>
        came(s, d, u, 'total') < 0.5 ? undefined : s[`${d}/${u}/total`];
      return (s) => {
        const a = total(s, quick);
        const b = total(s, slow);
        if (a === undefined || b === undefined) return slipped(before(a, b, APART));
        return slipped(normal((b - a - APART / 2) / (APART / 2)));
      };
    }
    case 'drifts when neutral':
      return (s) => {
        const most = Math.max(...units.map((u) => s[`${d}/${u}/drift`] ?? 0));
        return slipped(normal((most - DRIFT) / DRIFT_SPREAD));
      };
  }
}

function otherSide({ units }: Scenario, unit: string): string | undefined {
  const side = units[unit]?.side;
  const wanted = side === 'left' ? 'right' : side === 'right' ? 'left' : undefined;
  return Object.keys(units).find((name) => units[name].side === wanted);
}

/** Normal distribution function (Abramowitz and Stegun 7.1.26, error below 1.5e-7). */
export function normal(x: number): number {
  const z = Math.abs(x) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * z);
  const tail =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-z * z);
  return x >= 0 ? 1 - 0.5 * tail : 0.5 * tail;
}
