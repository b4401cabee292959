/** Facts that were seen, and how likely each is under what a signature foretells. */
import type { Scenario } from '../../define/index.js';
import {
  WHOLE_GEAR,
  type ObservedEvent,
  type ObservedSwing,
  type Remark,
} from '../../observation/index.js';
import type { Reader, Vector } from './keys.js';

export interface Fact {
  readonly label: string;
  /** Its probability under what is foretold: names are looked up once, for it is asked a hundred thousand times. */
  readonly seen: (of: (key: string) => Reader) => Reader;
}

/** A fact that must be seen is missed, or seen where it is not, once in so many. */
const SLIP = 0.02;
/** That a part did not move, or not come home, nobody mistakes: once in a lifetime of sheets. */
const GLARING = 1e-4;
/** Doors that were home and came open again some call home, some never home. */
const NOT_HOME = 0.5;
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
function came(of: (key: string) => Reader, d: string, unit: string, event: string): Reader {
  const at = of(`${d}/${unit}/${event}`);
  const [own, whole] = [of(`${d}/${unit}/window`), of(`${d}/window`)];
  return (v) => {
    const t = at(v);
    if (Number.isNaN(t)) return GLARING;
    let window = own(v);
    if (Number.isNaN(window)) window = whole(v);
    if (Number.isNaN(window)) return 1 - GLARING;
    const p = normal((window - t) / Math.hypot(LATE.seconds, LATE.share * t));
    return Math.min(Math.max(p, GLARING), 1 - GLARING);
  };
}

/** What was waited for and did not come. */
export function neverFacts({
  direction,
  never = [],
}: Pick<ObservedSwing, 'direction' | 'never'>): Fact[] {
  return never.map(({ unit, event }) => ({
    label: `${unit} ${event} never`,
    seen: (of) => {
      const comes = came(of, direction, unit, event);
      if (event !== 'doors' && event !== 'total') return (v) => 1 - comes(v);
      const strays = came(of, direction, unit, 'strayed');
      return (v) => Math.max(1 - comes(v), NOT_HOME * strays(v));
    },
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
      seen: (of) => {
        const [one, two] = [of(key(first)), of(key(later))];
        const [come, comeToo] = [first, later].map((e) => came(of, direction, e.unit, e.event));
        return (v) => {
          const [a, b] = [one(v), two(v)];
          if (Number.isNaN(a + b)) return GLARING;
          // What stands in an order was seen to come.
          const both = Math.min(come(v), comeToo(v));
          return Math.max(GLARING, both * slipped(before(a, b, GLANCE)));
        };
      },
    };
  });
}

/** Probability that the first is seen before the second; of what never comes the other is first. */
function before(a: number, b: number, width: number): number {
  if (Number.isNaN(a)) return Number.isNaN(b) ? 0.5 : 0;
  return Number.isNaN(b) ? 1 : normal((b - a) / width);
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
      return (of) => {
        const moved = units.map((u) => of(`${d}/${u}/moved`));
        return (v) => glaring(moved.every((m) => m(v) !== 1));
      };
    case 'stopped short':
      return (of) => {
        const all = units.map((u) => ({
          moved: of(`${d}/${u}/moved`),
          comes: came(of, d, u, 'locked'),
        }));
        return (v) =>
          Math.max(...all.map(({ moved, comes }) => (moved(v) === 1 ? 1 - comes(v) : GLARING)));
      };
    case 'moved by jerks':
      return (of) => {
        const pauses = units.map((u) => of(`${d}/${u}/pauses`));
        return (v) => (pauses.some((p) => p(v) > 0) ? JERKS.with : JERKS.without);
      };
    case 'doors came open again': {
      const doored = units.filter((u) => scenario.units[u]?.doors.length > 0);
      if (doored.length === 0) return undefined;
      return (of) => {
        const strayed = doored.map((u) => came(of, d, u, 'strayed'));
        return (v) => Math.max(...strayed.map((p) => p(v)));
      };
    }
    case 'slower than the other side':
    case 'faster than the other side': {
      const other = otherSide(scenario, unit);
      if (other === undefined) return undefined;
      const sides = remark.startsWith('slower') ? [unit, other] : [other, unit];
      return (of) => {
        const [slow, quick] = sides.map((u) => {
          const [total, comes] = [of(`${d}/${u}/total`), came(of, d, u, 'total')];
          return (v: Vector) => (comes(v) < 0.5 ? NaN : total(v));
        });
        return (v) => {
          const [a, b] = [quick(v), slow(v)];
          const p = Number.isNaN(a + b)
            ? before(a, b, APART)
            : normal((b - a - APART / 2) / (APART / 2));
          return slipped(p);
        };
      };
    }
    case 'drifts when neutral':
      return (of) => {
        const drifts = units.map((u) => of(`${d}/${u}/drift`));
        return (v) => {
          const most = Math.max(...drifts.map((drift) => drift(v) || 0));
          return slipped(normal((most - DRIFT) / DRIFT_SPREAD));
        };
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
