/** What a search goes by: what could still be, how long was watched, what is played before it is believed. */
import { describe, expect, it } from 'vitest';
import { endingAt, endsWith } from '../../../packages/core/src/analysis/diagnosis/ending.js';
import type { Evidences } from '../../../packages/core/src/analysis/diagnosis/entry.js';
import { neverFacts, orderFacts } from '../../../packages/core/src/analysis/diagnosis/fact.js';
import { Keys } from '../../../packages/core/src/analysis/diagnosis/keys.js';
import { Likelihood } from '../../../packages/core/src/analysis/diagnosis/likelihood.js';
import { believe } from '../../../packages/core/src/analysis/diagnosis/posterior.js';
import { Profile } from '../../../packages/core/src/analysis/diagnosis/profile.js';
import { hope, promise } from '../../../packages/core/src/analysis/diagnosis/promise.js';
import type { Evidence, LogEntry } from '../../../packages/core/src/define/index.js';
import { diagnose, expectedSwings, simulate } from '../../../packages/core/src/index.js';
import type {
  ObservedSwing,
  ObservationSheet,
} from '../../../packages/core/src/observation/index.js';
import { likelihoodOfFact } from '../../support/fact-of.js';
import { oneLeg } from '../../support/one-leg.js';

const row: ObservedSwing = {
  ...{ direction: 'up', conditions: {}, times: {}, gauges: {}, order: [], remarks: {} },
  ...{ recordings: [], note: '' },
};

describe('how long was watched', () => {
  const [never] = neverFacts({ ...row, never: [{ unit: 'left', event: 'doors' }] });
  const at = (t: number) => likelihoodOfFact(never, { 'up/window': 10, 'up/left/doors': t });
  it('tells what never came: surely what comes long after, hardly what comes long before', () => {
    expect(at(5)).toBeLessThan(1e-3);
    expect(at(20)).toBeGreaterThan(0.999);
    expect(likelihoodOfFact(never, { 'up/window': 10 })).toBeGreaterThan(0.999);
  });
  it('leaves open what comes just then', () => {
    expect(at(10)).toBeCloseTo(0.5, 6);
    expect(at(9.8)).toBeGreaterThan(0.2);
    expect(at(10.2)).toBeLessThan(0.8);
  });
  it('lets nothing that comes too late stand in an order', () => {
    const event = (unit: string) => ({ unit, event: 'locked' as const });
    const [fact] = orderFacts({ ...row, order: [event('left'), event('right')] });
    const seen = (right: number) =>
      likelihoodOfFact(fact, { 'up/window': 10, 'up/left/locked': 4, 'up/right/locked': right });
    expect(seen(6)).toBeGreaterThan(0.9);
    expect(seen(30)).toBeLessThan(1e-3);
  });
});

describe('a cause that fits at one severity alone', () => {
  const keys = new Keys();
  const at = (t: number) => keys.vector({ up: 1, 'up/left/locked': t });
  const figures: Evidences['figures'] = [
    {
      ...{ swing: 0, setup: 0, label: 'left locked', kind: 'time', value: 9 },
      ...{ key: 'up/left/locked', spread: 0.05, error: 0.1 },
    },
  ];
  const likelihood = new Likelihood(
    { figures, facts: [], looks: [], unused: [] },
    [[]],
    [at(5)],
    keys,
  );
  const profile = new Profile({ causes: [{ fault: 'a', on: 'b' }], prior: 0.01 }, keys, [at(5)]);
  // Between two of the places that evidence is summed up at anyway.
  const fits = 0.17;
  for (const [severity, t] of [
    [fits - 0.004, 5],
    [fits, 9],
    [fits + 0.004, 5],
    [1, 5],
  ])
    profile.put(severity, 0, at(t));

  it('is looked at there, and counts for as little as lies about it', () => {
    const { log, peak, narrowness } = believe(likelihood, profile);
    expect(peak).toBe(fits);
    const best = Math.log(0.01) + likelihood.of([at(9)]);
    // By hand: from half way to one neighbour to half way to the other, of 0.05 to 1; the rest is a slip of the hand.
    const share = 0.004 / 0.95;
    const slip = Math.log(0.01) + likelihood.of([at(5)]);
    const sum = share * Math.exp(best) + (1 - share) * Math.exp(slip);
    expect(log).toBeCloseTo(Math.log(sum), 6);
    expect(narrowness).toBeCloseTo(log - best, 9);
    expect(promise(likelihood, profile)).toMatchObject({ severity: fits, log: best });
  });

  it('leaves the sum as it is where all severities fit alike', () => {
    const even = new Profile({ causes: [{ fault: 'a', on: 'b' }], prior: 0.01 }, keys, [at(9)]);
    for (const severity of [0.19, 0.5, 0.501, 1]) even.put(severity, 0, at(9));
    const { log, severityRange } = believe(likelihood, even);
    expect(log).toBeCloseTo(Math.log(0.01) + likelihood.of([at(9)]), 9);
    expect(severityRange[0]).toBeLessThan(0.12);
    expect(severityRange[1]).toBeGreaterThan(0.93);
  });
});

describe('where a run ends', () => {
  const act = (t: number, device: string, to: string): LogEntry => ({
    ...{ index: 0, t, device, from: '', to, cause: '', by: -1, kind: 'operator', speed: NaN },
  });
  const log = [act(1, 'lever', 'up'), act(9, 'lever', 'down'), act(20, 'lever', 'up')];
  it('is the same act of the operator, whenever that comes', () => {
    const end = endingAt({ log } as unknown as Evidence, 20)!;
    expect(end).toEqual({ device: 'lever', to: 'up', time: 2 });
    const ends = endsWith(end);
    const late = [act(1, 'lever', 'up'), act(31, 'lever', 'down'), act(44, 'lever', 'up')];
    expect(late.map(ends)).toEqual([false, false, true]);
  });
  it('is nowhere where the operator does nothing', () => {
    expect(endingAt({ log } as unknown as Evidence, 10)).toBeUndefined();
  });
});

describe('what a cause could still come to', () => {
  const figure = (key: string, value: number): Evidences['figures'][number] => ({
    ...{ swing: 0, setup: 0, label: key, kind: 'time', key: `up/left/${key}`, value },
    ...{ spread: 0.1, error: 0.2 },
  });
  /** Healthy all at 5; at its worst 20 and, the others, 12; the sheet has one late and the others as they were. */
  const made = (seen = 19, others = 12) => {
    const keys = new Keys();
    const figures = [figure('locked', seen), figure('doors', 5), figure('moving', 5)];
    const vector = (locked: number, others: number) =>
      keys.vector({
        up: 1,
        'up/left/locked': locked,
        'up/left/doors': others,
        'up/left/moving': others,
      });
    const likelihood = new Likelihood(
      { figures, facts: [], looks: [], unused: [] },
      [[], [], []],
      [vector(5, 5)],
      keys,
    );
    const hypothesis = { causes: [{ fault: 'a', on: 'b' }], prior: 0.01 };
    const profile = new Profile(hypothesis, keys, [vector(5, 5)]);
    profile.put(1, 0, vector(20, others));
    return { likelihood, profile, vector };
  };
  it('is as high as the highest of many severities, if all goes straight', () => {
    for (const seen of [6, 7, 9, 14]) {
      const { likelihood, profile } = made(seen, 5);
      const { most, severity } = promise(likelihood, profile);
      // Two fifths of how far it is to what was played cost nothing.
      const at = (s: number) => likelihood.atMost(profile.nearest(s), profile.at(s), 0.4);
      const all = Array.from({ length: 951 }, (_, i) => at(0.05 + i / 1000));
      expect(most).toBe(at(severity));
      expect(most).toBeGreaterThan(Math.max(...all) - 0.1);
    }
  });
  it('is more where each figure may go over at its own severity, and asks to be played half way', () => {
    const { likelihood, profile, vector } = made();
    const straight = promise(likelihood, profile);
    const hoped = hope(likelihood, profile, 0.12)!;
    expect(hoped.log).toBeGreaterThan(straight.log + 8);
    // The gap is all that there is: nothing is taken off for how narrow it is.
    expect(hoped.log).toBeCloseTo(Math.log(0.01) + hoped.most, 9);
    expect(hoped.severity).toBe(0.5);
    // All of the sheet lies between the two: nothing speaks against it.
    expect(hoped.most).toBeCloseTo(likelihood.of([vector(19, 5)]), 9);
  });
  it('is less in a narrow gap, for only so many severities lie in it', () => {
    const { likelihood, profile, vector } = made();
    const wide = hope(likelihood, profile, 0.12)!;
    profile.put(0.75, 0, vector(5, 5));
    const narrow = hope(likelihood, profile, 0.12)!;
    // Half way, or near it what is preferred.
    expect(narrow.severity).toBe(0.9);
    expect(narrow.most).toBeCloseTo(wide.most, 9);
    expect(wide.log - narrow.log).toBeCloseTo(Math.log(4), 9);
  });
  it('is nothing more once it was played as closely as is worth it', () => {
    const { likelihood, profile, vector } = made();
    for (let s = 0.1; s < 0.95; s += 0.1) profile.put(s, 0, vector(5, 5));
    expect(hope(likelihood, profile, 0.12)).toBeUndefined();
  });
});

describe('two faults at once', () => {
  it('are told together, and played before they are believed', async () => {
    const scenario = oneLeg();
    // The one slows both ways, the other the way down alone.
    const faults = [
      { fault: 'ground-supply-weak', on: 'stand', severity: 0.4 },
      { fault: 'restrictor-blocked', on: 'restrictor', severity: 0.7 },
    ];
    const swings = expectedSwings(simulate(scenario, { faults })).map(
      ({ direction, times, gauges }): ObservedSwing => ({
        ...row,
        direction,
        times: Object.fromEntries(
          Object.entries(times).map(([unit, t]) => [
            unit,
            Object.fromEntries(Object.entries(t).map(([e, x]) => [e, { at: x, error: 0.05 }])),
          ]),
        ),
        gauges,
      }),
    );
    const sheet: ObservationSheet = {
      ...{ aircraft: '', scenario: '', card: Object.keys(scenario.cards)[0], date: '', by: '' },
      ...{ note: '', readingError: 0.05, conditions: {}, swings, looks: [] },
    };
    const memory = new Map<string, Readonly<Record<string, number>>>();
    const { groups } = await diagnose(scenario, sheet, { memory });
    const played = [...memory.keys()].map((key) => (JSON.parse(key) as [string, unknown[]])[1]);
    expect(played.some((of) => of.length === 2)).toBe(true);
    // It is told as one explanation, the weak supply as weak as it is.
    const found = groups[0].members.find((m) =>
      faults.every(({ fault }) => m.causes.some((c) => c.fault === fault)),
    );
    const [supply] = found?.severities ?? [];
    expect(supply.range[0]).toBeLessThan(0.4);
    expect(supply.range[1]).toBeGreaterThan(0.4);
    // Whatever else explains it: a likely pair has been played.
    for (const { causes, probability } of groups.flatMap((g) => g.members))
      if (causes.length === 2 && probability > 0.01)
        expect(played).toContainEqual(
          causes.map((c) => expect.objectContaining(c) as Record<string, unknown>),
        );
  });
});
