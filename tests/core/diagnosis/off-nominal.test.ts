/** What hangs on more than its severity, and how likely two faults at once are. Invented data. */
import { describe, expect, it } from 'vitest';
import type { Evidences } from '../../../packages/core/src/analysis/diagnosis/entry.js';
import {
  hypothesesOf,
  priorOfBoth,
} from '../../../packages/core/src/analysis/diagnosis/hypothesis.js';
import { Keys } from '../../../packages/core/src/analysis/diagnosis/keys.js';
import { Likelihood } from '../../../packages/core/src/analysis/diagnosis/likelihood.js';
import {
  chilledSwings,
  drawsOf,
} from '../../../packages/core/src/analysis/diagnosis/off-nominal.js';
import { believe } from '../../../packages/core/src/analysis/diagnosis/posterior.js';
import { Profile } from '../../../packages/core/src/analysis/diagnosis/profile.js';
import type { Hypothesis } from '../../../packages/core/src/analysis/diagnosis/shapes.js';
import { unknownsOf } from '../../../packages/core/src/analysis/diagnosis/unknown.js';
import { catalogues, simulate, underConditions } from '../../../packages/core/src/index.js';
import { trace } from '../../../packages/core/src/monitor/index.js';
import { aircraft } from '../../support/aircraft.js';

const keys = new Keys();
const at = (locked: number) => keys.vector({ down: 1, 'down/left/locked': locked });
const figures: Evidences['figures'] = [
  {
    ...{ swing: 0, setup: 0, label: 'left locked', kind: 'time', value: 7.2 },
    ...{ key: 'down/left/locked', spread: 0.2, error: 0.4 },
  },
];
const likelihood = new Likelihood(
  { figures, facts: [], looks: [], unused: [] },
  [[]],
  [at(5)],
  keys,
);
const hypothesis: Hypothesis = { causes: [{ fault: 'a', on: 'b' }], prior: 0.01 };
const locked = (profile: Profile, severity: number, cold?: number): number =>
  keys.reader('down/left/locked')(profile.at(severity, cold)[0]);

describe('what hangs on the temperature by itself', () => {
  /** A second later at its worst, and two in oil colder by a standard deviation. */
  const stiff = (): Profile => {
    const profile = new Profile(hypothesis, keys, [at(5)]);
    profile.put(1, 0, at(6));
    profile.chill([at(7)]);
    return profile;
  };

  it('is as much worse in the cold as it is bad, and in the warm no better than sound', () => {
    const profile = stiff();
    expect(locked(profile, 1, 1)).toBeCloseTo(7, 9);
    expect(locked(profile, 1, 1.5)).toBeCloseTo(7.5, 9);
    expect(locked(profile, 0.5, 1)).toBeCloseTo(locked(profile, 0.5) + 0.5, 9);
    expect(locked(profile, 1, -1)).toBeCloseTo(5, 9);
    expect(locked(profile, 1, -1.5)).toBe(5);
    expect(locked(profile, 1)).toBe(6);
  });

  it('explains what it could not at the temperature that was noted, as likely as that is', () => {
    const known = new Profile(hypothesis, keys, [at(5)]);
    known.put(1, 0, at(6));
    const [open, fixed] = [believe(likelihood, stiff()), believe(likelihood, known)];
    expect(open.log).toBeGreaterThan(fixed.log + 2);
    // What is foretold of it is that of colder oil.
    expect(keys.reader('down/left/locked')(open.foretold[0])).toBeGreaterThan(6.5);
    expect(open.cold).toBeGreaterThan(0);
    expect(fixed.cold).toBeUndefined();
    // Summed up by hand over how cold it may be, with a normal distribution's shares of five places.
    const colds = [-1.5, -0.75, 0, 0.75, 1.5];
    const shares = colds.map((z) => Math.exp(-z * z * 0.5));
    const all = shares.reduce((a, b) => a + b, 0);
    const severities = Array.from({ length: 24 }, (_, i) => 0.05 + (0.95 * (i + 0.5)) / 24);
    const profile = stiff();
    let sum = 0;
    for (const [k, z] of colds.entries())
      for (const s of severities)
        sum += (shares[k] / all / 24) * Math.exp(likelihood.of(profile.at(s, z)));
    // The worst is a place of its own, half as wide as the others, and its neighbour's share is less by that.
    expect(open.log).toBeCloseTo(Math.log(0.01 * sum), 1);
  });

  it('is played in colder oil beside a sound gear, and so is nothing else', () => {
    const { scenario } = aircraft('fenwren');
    const all = hypothesesOf(catalogues, scenario, { looks: [] });
    const [sound, ...others] = chilledSwings(catalogues, scenario, all);
    expect(sound.faults).toEqual([]);
    expect(others.length).toBeGreaterThan(0);
    for (const { faults } of others) expect(faults[0]).toMatchObject({ fault: 'downlock-stiff' });
    const { moved } = unknownsOf(catalogues, scenario)[sound.unknown!];
    expect(moved(scenario, 1).fluid.temperature).toBe(scenario.fluid.temperature - 2);
    expect(chilledSwings(catalogues, scenario, [hypothesis])).toEqual([]);
  });
});

describe('what hangs on a hair', () => {
  const usual = new Profile(hypothesis, keys, [at(5)]);
  const bouncing = (): Profile => new Profile({ ...hypothesis, hangsOn: 'bounce' }, keys, [at(5)]);

  it('is drawn at half its worst on other aircraft, the rest where it fits best', () => {
    const draws = drawsOf([usual, bouncing()], [0, 1], () => 0.3);
    const own = draws.filter(({ profile }) => profile === usual);
    expect(own.map(({ drawn }) => drawn)).toEqual([0, 1]);
    expect(own[0].severity).toBe(0.3);
    const rest = draws.filter(({ profile }) => profile !== usual);
    expect(new Set(rest.map(({ drawn }) => drawn)).size).toBe(6);
    for (const { severity } of rest) expect(severity).toBe(0.5);
  });

  it('is not drawn twice, and pays nothing for the one severity that was drawn', () => {
    const [drawn, other] = [bouncing(), new Profile(hypothesis, keys, [at(5)])];
    for (const profile of [drawn, other]) {
      profile.put(0.5, 0, at(7.1));
      profile.put(1, 0, at(20));
      profile.draw(0.5, [at(7.2)]);
    }
    expect(drawsOf([drawn], [0, 1], () => 0.3)).toEqual([]);
    const [a, b] = [believe(likelihood, drawn), believe(likelihood, other)];
    // As bad as where it was drawn.
    expect(a).toMatchObject({ offNominal: true, severity: 0.5 });
    // Half by the nominal aircraft and half by the drawn one (Bayes' theorem).
    const nominal = believe(
      likelihood,
      ((): Profile => {
        const same = new Profile(hypothesis, keys, [at(5)]);
        same.put(0.5, 0, at(7.1));
        same.put(1, 0, at(20));
        return same;
      })(),
    );
    const best = 0.01 * Math.exp(likelihood.of([at(7.2)]));
    const half = (x: number, y: number): number => Math.log((x + y) / 2);
    expect(a.log).toBeCloseTo(half(Math.exp(nominal.log), best), 9);
    expect(b.log).toBeCloseTo(half(Math.exp(nominal.log), best * Math.exp(nominal.narrowness)), 9);
  });
});

describe('two faults at once', () => {
  it.each(['hedgelark', 'fenwren', 'tarnswift'])(
    'are one in ten of what may be wrong with the %s, all of them together',
    (name) => {
      const { scenario } = aircraft(name);
      const [, ...singles] = hypothesesOf(catalogues, scenario, { looks: [] });
      let two = 0;
      for (const [i, a] of singles.entries())
        for (const b of singles.slice(i + 1)) two += priorOfBoth(a, b);
      const one = singles.reduce((sum, h) => sum + h.prior, 0);
      const share = two / (one + two);
      expect(share).toBeGreaterThan(0.08);
      expect(share).toBeLessThan(0.12);
    },
  );
});

describe('a supply that gives less', () => {
  const { scenario } = aircraft('tarnswift');
  const [card] = Object.keys(scenario.cards);
  const { flow } = scenario.components['ground-supply'].parameters;
  const selected = (of: typeof scenario): number =>
    of.cards[card].steps.find(({ device }) => device === 'gear-control')!.at;
  const standing = (of: typeof scenario): number => {
    const pressure = trace(simulate(of, { card }), 'pressure.pressure')!;
    const before = [...pressure.t].filter((t) => t < selected(of)).length - 1;
    return pressure.v[before];
  };

  it('is waited for until it has filled the accumulator as it does on the whole of its flow', () => {
    const half = underConditions(scenario, card, { supplyFlow: Number(flow) / 2 });
    expect(selected(half) - 0.2).toBeCloseTo(2 * (selected(scenario) - 0.2), 9);
    expect(Math.abs(standing(half) / standing(scenario) - 1)).toBeLessThan(0.03);
    // What comes after something else comes as long after it.
    const last = half.cards[card].steps.at(-1);
    expect(last).toEqual(scenario.cards[card].steps.at(-1));
  });

  it('is not waited for where it gives more, and not for ever where it gives nothing', () => {
    const more = underConditions(scenario, card, { supplyFlow: 2 * Number(flow) });
    expect(selected(more)).toBe(selected(scenario));
    const none = underConditions(scenario, card, { supplyFlow: 0 });
    expect(selected(none)).toBeLessThan(60);
  });
});
