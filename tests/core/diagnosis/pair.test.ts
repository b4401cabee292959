/** Two faults at once, on a made-up aircraft whose figures are known in closed form. */
import { describe, expect, it } from 'vitest';
import type { Evidences } from '../../../packages/core/src/analysis/diagnosis/entry.js';
import { Keys } from '../../../packages/core/src/analysis/diagnosis/keys.js';
import { Likelihood } from '../../../packages/core/src/analysis/diagnosis/likelihood.js';
import {
  bestFit,
  climb,
  narrowness,
  type Severities,
} from '../../../packages/core/src/analysis/diagnosis/pair-fit.js';
import { likeliestTwos } from '../../../packages/core/src/analysis/diagnosis/pair-sift.js';
import { Profile } from '../../../packages/core/src/analysis/diagnosis/profile.js';

const UNITS = ['left', 'right', 'nose'] as const;
const SOUND = { left: 6, right: 6, nose: 8, gauge: 9e6 };
type Swing = Readonly<Record<keyof typeof SOUND, number>>;

const figure = (key: string, kind: 'time' | 'gauge', value: number, spread: number) => ({
  ...{ swing: 0, setup: 0, label: key, kind, key, value, spread, error: 2 * spread },
});

/** What was noted of a swing, to be explained. */
function sheetOf(swing: Swing) {
  const keys = new Keys();
  const vector = (s: Swing) =>
    keys.vector({
      up: 1,
      ...Object.fromEntries(UNITS.map((u) => [`up/${u}/locked`, s[u]])),
      'up/gauge/pressure/moving': s.gauge,
    });
  const figures: Evidences['figures'] = [
    ...UNITS.map((u) => figure(`up/${u}/locked`, 'time', swing[u], 0.05)),
    figure('up/gauge/pressure/moving', 'gauge', swing.gauge, 1e5),
  ];
  const evidences = { figures, facts: [], looks: [], unused: [] };
  const likelihood = new Likelihood(evidences, [[], [], [], []], [vector(SOUND)], keys);
  /** A cause that does this at its worst; between, rates go straight. */
  const cause = (fault: string, on: string, worst: Partial<Swing>, prior = 0.01): Profile => {
    const profile = new Profile({ causes: [{ fault, on }], prior }, keys, [vector(SOUND)]);
    profile.put(1, 0, vector({ ...SOUND, ...worst }));
    return profile;
  };
  return { keys, vector, likelihood, cause };
}

describe('the pairs that could explain a sheet', () => {
  // The left one half as fast, the right at two thirds; the gauge as the left alone has it.
  const { likelihood, cause } = sheetOf({ left: 12, right: 9, nose: 8, gauge: 11e6 });
  const left = cause('blocked', 'left-line', { left: 24, gauge: 12.5e6 });
  const right = cause('blocked', 'right-line', { right: 12, gauge: 10e6 });
  const nose = cause('blocked', 'nose-line', { nose: 16, gauge: 11e6 });
  const both = cause('weak', 'pump', { left: 12, right: 12, nose: 16, gauge: 6e6 });
  const nothing = cause('bent', 'pointer', {});

  it('have the two first that together come to it, at about the severities that do', () => {
    const [first] = likeliestTwos(likelihood, [nothing, both, right, nose, left], 100);
    expect(new Set(first.profiles)).toEqual(new Set([left, right]));
    const [a, b] = first.profiles[0] === left ? first.severities : [...first.severities].reverse();
    // Half the rate at its worst is a quarter: 2/3 of the way there. For the other all of 2/3.
    expect(a).toBeCloseTo(2 / 3, 1);
    expect(b).toBeCloseTo(2 / 3, 1);
  });

  it('are as many as were asked for, the likelier first, and none of a cause that adds nothing', () => {
    const found = likeliestTwos(likelihood, [nothing, both, right, nose, left], 3);
    expect(found).toHaveLength(3);
    expect(found.map(({ log }) => log)).toEqual(found.map(({ log }) => log).sort((x, y) => y - x));
    const all = likeliestTwos(likelihood, [nothing, both, right, nose, left], 1000);
    expect(all.some(({ profiles }) => profiles.includes(nothing))).toBe(false);
  });

  it('are never two faults of one part', () => {
    const other = cause('leaking', 'left-line', { right: 12, gauge: 10e6 });
    expect(likeliestTwos(likelihood, [left, other], 100)).toEqual([]);
  });

  it('weigh a reading by the cause that changes it more, not by the sum', () => {
    // At two thirds of their worst the one makes the gauge 11.3 MPa, the other 9.7: the sum of both changes is 12.0.
    const log = (gauge: number): number => {
      const of = sheetOf({ left: 12, right: 9, nose: 8, gauge });
      const two = [
        of.cause('blocked', 'left-line', { left: 24, gauge: 12.5e6 }),
        of.cause('blocked', 'right-line', { right: 12, gauge: 10e6 }),
      ];
      return likeliestTwos(of.likelihood, two, 1)[0].log;
    };
    expect(log(11.33e6)).toBeGreaterThan(log(12e6) + 5);
  });
});

describe('the severities at which two faults fit', () => {
  const { vector, likelihood } = sheetOf({ left: 12, right: 9, nose: 8, gauge: 9e6 });
  /** Both change both times, so that they hang together. */
  const at = ([a, b]: Severities) => [
    vector({ left: 6 + 8 * a + 2 * b, right: 6 + 2 * a + 5 * b, nose: 8, gauge: 9e6 }),
  ];
  // 8 a + 2 b = 6 and 2 a + 5 b = 3.
  const [a, b] = [24 / 36, 12 / 36];

  it('are found from anywhere, to the step they are looked for in', () => {
    for (const from of [
      [0.05, 1],
      [1, 1],
      [0.1, 0.1],
    ] as const) {
      const { severities, log } = bestFit(likelihood, at, from);
      expect(Math.abs(severities[0] - a)).toBeLessThan(0.02);
      expect(Math.abs(severities[1] - b)).toBeLessThan(0.02);
      expect(log).toBeLessThanOrEqual(likelihood.of(at([a, b])) + 1e-9);
    }
  });

  it('are on the higher of two hills, where climbing ends on the nearer one', () => {
    const two = ([x, y]: Severities) => at([x < 0.5 ? x + 0.1 : x, y]);
    const start = { severities: [0.05, 0.3], log: -Infinity } as const;
    expect(climb(likelihood, two, start).severities[0]).toBeLessThan(0.5);
    const [found] = bestFit(likelihood, two, start.severities).severities;
    expect(Math.abs(found - a)).toBeLessThan(0.02);
  });

  it('cost what a sum over all severities says, and are known as sharply', () => {
    const peak = likelihood.of(at([a, b]));
    const steps = 400;
    let [sum, mean, square] = [0, 0, 0];
    for (let i = 0; i < steps; i++)
      for (let j = 0; j < steps; j++) {
        const [x, y] = [(i + 0.5) / steps, (j + 0.5) / steps];
        const weight = Math.exp(likelihood.of(at([x, y])) - peak);
        sum += weight;
        mean += weight * x;
        square += weight * x * x;
      }
    const { log, spreads } = narrowness(likelihood, at, [a, b]);
    // The reading errors of a slow time are larger on its slow side: the sum is not quite normal.
    expect(log).toBeCloseTo(Math.log(sum / (steps * steps)), 0);
    const spread = Math.sqrt(square / sum - (mean / sum) ** 2);
    expect(spreads[0] / spread).toBeGreaterThan(0.75);
    expect(spreads[0] / spread).toBeLessThan(1.33);
  });

  it('cost nothing where all fit alike', () => {
    const flat = () => [vector(SOUND)];
    expect(narrowness(likelihood, flat, [0.5, 0.5]).log).toBeCloseTo(0, 9);
  });
});
