/** The likelihood of a sheet against closed forms of the normal distribution, and its mixture by hand. */
import { describe, expect, it } from 'vitest';
import type { Evidences } from '../../../packages/core/src/analysis/diagnosis/entry.js';
import { normal } from '../../../packages/core/src/analysis/diagnosis/fact.js';
import { lookFinds } from '../../../packages/core/src/analysis/diagnosis/look.js';
import { Keys } from '../../../packages/core/src/analysis/diagnosis/keys.js';
import { UNKNOWN } from '../../../packages/core/src/analysis/diagnosis/hypothesis.js';
import { Likelihood, logSum } from '../../../packages/core/src/analysis/diagnosis/likelihood.js';
import { unknownCause } from '../../../packages/core/src/analysis/diagnosis/posterior.js';

const figure = (key: string, value: number, spread: number) => ({
  swing: 0,
  setup: 0,
  label: key,
  kind: 'time' as const,
  key,
  value,
  spread,
  error: 2 * spread,
});
const evidences = (figures: Evidences['figures']): Evidences => ({
  figures,
  facts: [],
  looks: [],
  unused: [],
});
type Named = Readonly<Record<string, number>>;
/** The likelihood of figures, asked with what is foretold by name. */
function likelihoodOf(
  figures: Evidences['figures'],
  scatter: readonly (readonly number[])[],
  healthy: Named = {},
) {
  const keys = new Keys();
  const l = new Likelihood(evidences(figures), scatter, [keys.vector(healthy)], keys);
  return {
    of: (s: Named) => l.of([keys.vector(s)]),
    fitsBadly: (s: Named) => l.fitsNoBetter('bad', [keys.vector(s)]),
    distance: (a: Named, b: Named) => l.distance([keys.vector(a)], [keys.vector(b)]),
    atMost: (played: Named, s: Named, slack: number) =>
      l.atMost([keys.vector(played)], [keys.vector(s)], slack, () => false),
  };
}
/** The model's own spread, beside a reading's. */
const spreadOf = (value: number, spread: number): number => Math.hypot(spread, 0.015 * value);
const density = (x: number, sigma: number): number =>
  Math.exp(-0.5 * (x / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI));

describe('the normal distribution function', () => {
  it('is that of the tables (Abramowitz and Stegun, table 26.1: 0.84134 at 1, 0.97725 at 2)', () => {
    expect(normal(0)).toBeCloseTo(0.5, 6);
    expect(normal(1)).toBeCloseTo(0.8413447, 6);
    expect(normal(2)).toBeCloseTo(0.9772499, 6);
    expect(normal(-1.5)).toBeCloseTo(1 - normal(1.5), 12);
  });
});

describe('a bad fit', () => {
  /** So many figures, each off by so many spreads. */
  const badly = (count: number, by: (i: number) => number): boolean => {
    const figures = Array.from({ length: count }, (_, i) => figure(`f${i}`, 5, 0.1));
    const off = figures.map(({ key }, i) => [key, 5 + by(i) * spreadOf(5, 0.1)] as const);
    const none = figures.map(() => []);
    return likelihoodOf(figures, none).fitsBadly(Object.fromEntries(off));
  };

  it('is none where all are off as readings are, or one of many is wrong', () => {
    expect(badly(8, () => 0)).toBe(false);
    // Chi squared of 8 degrees of freedom has its 0.9 quantile at 13.36 (tables), here eight times 1.29 squared.
    expect(badly(8, () => 1.29)).toBe(false);
    expect(badly(16, (i) => (i === 0 ? 30 : 0.5))).toBe(false);
  });

  it('is one where chi squared is far beyond its 0.999 quantile, or two are far off', () => {
    // 26.12 (tables); here eight times 2.3 squared is 42: half of it lies beyond 4 and three times 2.
    expect(badly(8, () => 2.3)).toBe(true);
    expect(badly(16, (i) => (i < 2 ? 8 : 0.5))).toBe(true);
  });
});

describe('the likelihood of figures', () => {
  it('of one figure is the mixture of right and wrong, by hand', () => {
    const l = likelihoodOf([figure('a', 5, 0.1)], [[]]);
    const sigma = spreadOf(5, 0.1);
    for (const foretold of [5, 5.1, 7]) {
      const wanted = 0.995 * density(5 - foretold, sigma) + 0.005 / (2 * 5 + 5);
      expect(l.of({ a: foretold })).toBeCloseTo(Math.log(wanted), 9);
    }
  });

  it('of two that scatter together is the bivariate normal, and either may be wrong', () => {
    const [a, b] = [figure('a', 5, 0.1), figure('b', 6, 0.1)];
    const shared = 0.3;
    const l = likelihoodOf([a, b], [[shared], [shared]]);
    const va = spreadOf(5, 0.1) ** 2 + shared ** 2;
    const vb = spreadOf(6, 0.1) ** 2 + shared ** 2;
    const c = shared ** 2;
    const [x, y] = [5 - 4.6, 6 - 5.7];
    const det = va * vb - c * c;
    const both =
      Math.exp(-0.5 * ((vb * x * x - 2 * c * x * y + va * y * y) / det)) /
      (2 * Math.PI * Math.sqrt(det));
    const wanted =
      0.995 ** 2 * both +
      0.005 * 0.995 * density(y, Math.sqrt(vb)) * (1 / (2 * 5 + 5)) +
      0.005 * 0.995 * density(x, Math.sqrt(va)) * (1 / (2 * 6 + 5));
    expect(l.of({ a: 4.6, b: 5.7 })).toBeCloseTo(Math.log(wanted), 9);
  });

  it('does not let one wrong entry sink what the others bear out', () => {
    const l = likelihoodOf(
      [figure('a', 5, 0.1), figure('b', 5, 0.1), figure('c', 25, 0.1)],
      [[], [], []],
    );
    const fitting = l.of({ a: 5, b: 5, c: 5 });
    const other = l.of({ a: 7, b: 7, c: 5 });
    expect(fitting - other).toBeGreaterThan(20);
  });

  it('weighs what is foretold never to come against a time that was noted', () => {
    const l = likelihoodOf([figure('a', 5, 0.1)], [[]]);
    expect(l.of({})).toBeLessThan(l.of({ a: 6 }));
    expect(l.of({})).toBeCloseTo(Math.log(1e-3 / 15), 9);
  });

  it('takes facts of one swing that are foretold wrongly for one mistake, of two swings for two', () => {
    const fact = (swing: number, p: number) => ({
      ...{ swing, setup: 0, label: '', kind: 'fact' as const },
      seen: () => () => p,
    });
    const of = (...facts: readonly ReturnType<typeof fact>[]) =>
      new Likelihood({ ...evidences([]), facts }, [], [], new Keys()).of([new Float64Array(0)]);
    const wrong = 1e-4;
    // By hand: right together, or the swing was not understood and each fact is a coin.
    expect(of(fact(0, 0.9), fact(0, wrong))).toBeCloseTo(
      Math.log(0.999 * 0.9 * wrong + 0.001 / 4),
      9,
    );
    expect(of(fact(0, wrong), fact(1, wrong))).toBeCloseTo(2 * of(fact(0, wrong)), 9);
    expect(of(fact(0, wrong), fact(0, wrong))).toBeGreaterThan(1.5 * of(fact(0, wrong)));
  });

  it('takes times of one swing that are foretold never to come for one mistake', () => {
    const l = likelihoodOf([figure('a', 5, 0.1), figure('b', 5, 0.1)], [[], []]);
    expect(l.of({})).toBeCloseTo(Math.log(1e-3 / 15 ** 2), 9);
  });

  it('puts two causes apart by squared standard deviations', () => {
    const l = likelihoodOf([figure('a', 5, 0.1)], [[]]);
    const sigma = spreadOf(5, 0.1);
    expect(l.distance({ a: 5 }, { a: 5 + 3 * sigma })).toBeCloseTo(9, 9);
    expect(l.distance({ a: 5 }, { a: 5 })).toBe(0);
  });
});

describe('how a slow aircraft scatters', () => {
  const [read, scatter] = [0.1, 0.15];
  const l = likelihoodOf([figure('a', 12, read)], [[scatter]], { a: 6 });
  it('is by the square of how much slower it is, by the rate that is left, and by some of the delay', () => {
    // A stand that gives so much more or less, and a leak that takes half of it: 1 / t = (Q - L) / V.
    const [supply, leak, volume] = [2, 1, 12];
    const time = (q: number, gone: number) => volume / (q - gone);
    const step = 1e-6;
    const [sound, slow] = [0, leak].map(
      (gone) => (time(supply + step, gone) - time(supply, gone)) / step,
    );
    const [t, healthy] = [time(supply, leak), time(supply, 0)];
    expect(slow / sound).toBeCloseTo((t / healthy) ** 2, 4);
    const sigma = Math.hypot(
      spreadOf(12, read),
      (t / healthy) ** 2 * scatter,
      0.04 * (t - healthy),
    );
    expect(l.distance({ a: t }, { a: t + 2 * sigma })).toBeCloseTo(4, 6);
    expect(l.of({ a: t })).toBeCloseTo(Math.log(0.995 * density(0, sigma) + 0.005 / 29), 9);
  });
  it('is as it was where it is not slower', () => {
    const sigma = Math.hypot(spreadOf(12, read), scatter);
    expect(l.distance({ a: 6 }, { a: 6 + 2 * sigma })).toBeCloseTo(4, 9);
    expect(l.distance({ a: 4 }, { a: 4 + 2 * sigma })).toBeCloseTo(4, 9);
  });
});

describe('a swing that was not understood', () => {
  const keys = new Keys();
  const never = (p: number): Evidences['facts'][number] => ({
    ...{ swing: 0, setup: 0, label: '', kind: 'fact' },
    seen: () => () => p,
  });
  const sound = { up: 1, 'up/left/moved': 1, 'up/left/locked': 5 };
  const figures = [{ ...figure('up/left/locked', 5, 0.1) }];
  const healthy = [keys.vector(sound)];
  const l = new Likelihood({ ...evidences(figures), facts: [never(1e-4)] }, [[]], healthy, keys);
  const without = new Likelihood(evidences(figures), [[]], healthy, keys);
  /** What the one fact that is foretold wrongly takes away. */
  const cost = (s: Named): number => l.of([keys.vector(s)]) - without.of([keys.vector(s)]);
  it('is one in a thousand where it goes otherwise than a sound one, one in a hundred thousand where it goes alike', () => {
    const wrong = (lapse: number) => Math.log((1 - lapse) * 1e-4 + lapse / 2);
    expect(cost(sound)).toBeCloseTo(wrong(1e-5), 9);
    expect(cost({ ...sound, 'up/left/locked': 6 })).toBeCloseTo(wrong(1e-5), 9);
    // By more than a quarter later, or not at all: another swing.
    expect(cost({ ...sound, 'up/left/locked': 6.5 })).toBeCloseTo(wrong(1e-3), 9);
    expect(cost({ up: 1, 'up/left/moved': 1 })).toBeCloseTo(wrong(1e-3), 9);
    expect(cost({ ...sound, 'up/left/moved': 0 })).toBeCloseTo(wrong(1e-3), 9);
  });
});

describe('what lies between two foretellings', () => {
  const keys = new Keys();
  const facts: Evidences['facts'] = [
    {
      ...{ swing: 0, setup: 0, label: '', kind: 'fact' },
      seen: (of) => {
        const [moved, locked] = [of('up/left/moved'), of('up/left/locked')];
        return (v) => (moved(v) === 1 && Number.isNaN(locked(v)) ? 0.9 : 1e-4);
      },
    },
  ];
  const l = new Likelihood({ ...evidences([]), facts }, [], [], keys);
  const amid = (a: Named, b: Named) => l.amid([keys.vector(a)], [keys.vector(b)], () => false);
  it('may be later than both where something else of the swing runs away', () => {
    const own = new Keys();
    const figures = [figure('up/left/locked', 9, 0.1), figure('up/right/locked', 9.5, 0.1)];
    const both = new Likelihood(
      evidences(figures),
      [[], []],
      [own.vector({ up: 1, 'up/left/locked': 6, 'up/right/locked': 6 })],
      own,
    );
    const of = (left: number, right: number) =>
      own.vector({ up: 1, 'up/left/locked': left, 'up/right/locked': right });
    const never = own.vector({ up: 1, 'up/left/locked': 5 });
    const most = (b: ReturnType<typeof of>) => both.amid([of(6, 6)], [b], () => false);
    // The left waits for the right, which never comes at the other end.
    expect(most(never)).toBeCloseTo(both.of([of(9, 9.5)]), 6);
    expect(most(of(5, 20))).toBeCloseTo(both.of([of(6, 9.5)]), 6);
    // What is earlier than both it is not.
    const early = both.amid(
      [of(12, 12)],
      [own.vector({ up: 1, 'up/left/locked': 11 })],
      () => false,
    );
    expect(early).toBeLessThan(both.of([of(9, 9.5)]) - 5);
  });
  it('may be under a higher gauge than both where a time runs away, but not under a lower one', () => {
    const own = new Keys();
    const of = (bar: number, locked?: number) =>
      own.vector({
        ...{ up: 1, 'up/gauge/p/moving': 1e5 * bar, 'up/gauge/p/dead-head': 1e5 * bar },
        ...(locked !== undefined && { 'up/left/locked': locked }),
      });
    const most = (moment: string, bar: number, b: ReturnType<typeof of>) => {
      const entry = { ...figure(`up/gauge/p/${moment}`, 1e5 * bar, 1e5), kind: 'gauge' as const };
      const l = new Likelihood(
        evidences([figure('up/left/locked', 6, 0.1), entry]),
        [[], []],
        [of(50, 6)],
        own,
      );
      return l.amid([of(50, 6)], [b], () => false) - l.of([of(bar, 6)]);
    };
    expect(most('moving', 80, of(40))).toBeCloseTo(0, 6);
    expect(most('moving', 80, of(40, 20))).toBeLessThan(-5);
    expect(most('moving', 20, of(40))).toBeLessThan(-5);
    expect(most('dead-head', 80, of(40))).toBeLessThan(-5);
  });
  it('may be what is in neither: to stop short, between coming home and not moving', () => {
    const home = { up: 1, 'up/left/moved': 1, 'up/left/locked': 5 };
    const stays = { up: 1, 'up/left/moved': 0 };
    expect(amid(home, stays)).toBeCloseTo(0, 2);
    expect(amid(home, { ...home, 'up/left/locked': 9 })).toBeLessThan(-6);
  });
});

describe('what a cause could come to at most', () => {
  it('is its likelihood where what is foretold was played, and never less', () => {
    const l = likelihoodOf([figure('a', 5, 0.1), figure('b', 6, 0.1)], [[0.1], [0.1]]);
    const foretold = { a: 7, b: 6.5 };
    expect(l.atMost(foretold, foretold, 0.2)).toBeCloseTo(l.of(foretold), 9);
    let before = l.of(foretold);
    for (const slack of [0.1, 0.2, 0.5, 1]) {
      const now = l.atMost({ a: 4, b: 4 }, foretold, slack);
      expect(now).toBeGreaterThanOrEqual(before);
      before = now;
    }
    // With as much room as it needs, nothing is lost but what one entry may be wrong.
    expect(l.atMost({ a: 1e4, b: 1e4 }, foretold, 1)).toBeCloseTo(l.of({ a: 5, b: 6 }), 1);
  });
});

describe('between two severities', () => {
  const keys = new Keys();
  const between = (a: object, b: object, share: number) =>
    keys.named(
      keys.between(
        keys.vector(a as Record<string, number>),
        keys.vector(b as Record<string, number>),
        share,
      ),
    );
  it('rates of times and pressures go straight, counts and facts jump', () => {
    const a = { up: 1, 'up/left/locked': 4, 'up/gauge/p/peak': 10, 'up/left/pauses': 0 };
    const b = { up: 1, 'up/left/locked': 12, 'up/gauge/p/peak': 20, 'up/left/pauses': 2 };
    const half = between(a, b, 0.5);
    expect(half['up/left/locked']).toBeCloseTo(2 / (1 / 4 + 1 / 12), 9);
    expect(half['up/gauge/p/peak']).toBeCloseTo(15, 9);
    expect(between(a, b, 0.4)['up/left/pauses']).toBe(0);
    expect(between(a, b, 0.6)['up/left/pauses']).toBe(2);
  });

  it('a time runs away towards a severity at which it never comes', () => {
    const a = { 'up/left/locked': 4 };
    expect(between(a, {}, 0.5)['up/left/locked']).toBeCloseTo(8, 9);
    expect(between(a, {}, 0.9)['up/left/locked']).toBeCloseTo(40, 9);
    expect(between({}, a, 0.5)['up/left/locked']).toBeCloseTo(8, 9);
    // And beyond it stays away.
    expect(between(a, {}, 1.3)['up/left/locked']).toBeUndefined();
    expect(between(a, { 'up/left/locked': 8 }, 2.5)['up/left/locked']).toBeUndefined();
  });
});

describe('sums of logs', () => {
  it('hold where the exponentials would not', () => {
    expect(logSum([-1000, -1000])).toBeCloseTo(-1000 + Math.log(2), 12);
    expect(logSum([-Infinity, -Infinity])).toBe(-Infinity);
  });
});

describe('a look at a part', () => {
  it('finds what the check is for, where it looks, and seldom anything else', () => {
    const cause = [{ fault: 'piston-seal-bypass', on: 'left-jack' }];
    expect(lookFinds('by-pass-flow', 'left-jack', cause)).toBe(0.95);
    expect(lookFinds('by-pass-flow', 'right-jack', cause)).toBe(0.03);
    expect(lookFinds('wet-look', 'left-jack', cause)).toBe(0.03);
    expect(lookFinds('by-pass-flow', 'left-jack', [])).toBe(0.03);
  });
});

describe('a cause that is in no catalogue', () => {
  it('explains wild figures no worse than a known cause under which they cannot come', () => {
    const seen = { a: 4, b: 5, c: 0.1, d: 19, e: 8 };
    const wild = Object.entries(seen).map(([key, value]) => figure(key, value, 0.1));
    const never = likelihoodOf(
      wild,
      wild.map(() => []),
    ).of({});
    // As a sound gear moves and locks: most of these are far from it.
    const unknown = unknownCause(evidences(wild), [0.1, 6, 0.1, 6.2, 0.1]);
    expect(unknown - Math.log(UNKNOWN)).toBeGreaterThan(never);
    // By hand: where nothing is near, it is half of what any figures at all are worth.
    const any = Object.values(seen).reduce((sum, t) => sum - Math.log(2 * t + 5), 0);
    expect(unknown).toBeCloseTo(Math.log(UNKNOWN / 2) + any, 3);
  });
});
