/** One swing for all causes that it tells of: what does the same, at which severity, and the other side. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Effects } from '../../../packages/core/src/analysis/diagnosis/effect.js';
import type { Evidences } from '../../../packages/core/src/analysis/diagnosis/entry.js';
import { hypothesesOf } from '../../../packages/core/src/analysis/diagnosis/hypothesis.js';
import { Keys } from '../../../packages/core/src/analysis/diagnosis/keys.js';
import { Likelihood } from '../../../packages/core/src/analysis/diagnosis/likelihood.js';
import { mirrored, oddSide } from '../../../packages/core/src/analysis/diagnosis/mirror.js';
import { Profile } from '../../../packages/core/src/analysis/diagnosis/profile.js';
import { Sharing } from '../../../packages/core/src/analysis/diagnosis/share.js';
import { Weighing } from '../../../packages/core/src/analysis/diagnosis/weighing.js';
import type { Cause } from '../../../packages/core/src/analysis/diagnosis/shapes.js';
import type { Scenario } from '../../../packages/core/src/define/index.js';
import { catalogues } from '../../../packages/core/src/index.js';
import { patchScenario } from '../../../packages/core/src/scenario/index.js';
import { aircraft } from '../../support/aircraft.js';

const names = ['hedgelark', 'fenwren', 'tarnswift'];
const demos = names.map((name) => aircraft(name).scenario);

const causesOf = (scenario: Scenario): readonly Cause[] =>
  hypothesesOf(catalogues, scenario, {}).flatMap((h) => h.causes);
/** What describes the part as it is with a fault, by its path. */
function partWith(scenario: Scenario, { fault, on }: Cause, severity: number): [string, unknown][] {
  const [card] = Object.values(scenario.cards);
  const faults = [{ fault, on, severity }];
  const { scenario: patched } = patchScenario(
    scenario,
    { ...card, faults: [] },
    faults,
    catalogues,
  );
  return leaves(patched.components[on] ?? patched.mechanisms[on] ?? patched.fluid);
}

function leaves(value: unknown, path = ''): [string, unknown][] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, own]) => leaves(own, `${path}/${key}`));
}

/** A figure that is another's to one part in ten thousand; anything else as it is. */
const near = (value: unknown): unknown =>
  typeof value === 'number' ? expect.closeTo(value, 4 - Math.log10(Math.abs(value) + 1e-9)) : value;

describe('what does the same', () => {
  it.each(names.map((name, i) => [name, demos[i]] as const))(
    'leaves the same part behind, whatever it is called: %s',
    (_, scenario) => {
      const effects = new Effects(catalogues, scenario);
      const causes = causesOf(scenario);
      let found = 0;
      fc.assert(
        fc.property(
          fc.constantFrom(...causes),
          fc.double({ min: 0.07, max: 1, noNaN: true }),
          (cause, severity) => {
            for (const other of causes.filter((c) => c.on === cause.on && c !== cause)) {
              const alike = effects.alike(cause, severity, other);
              if (alike === undefined) continue;
              found++;
              expect(alike).toBeGreaterThan(0);
              expect(alike).toBeLessThanOrEqual(1);
              expect(partWith(scenario, other, alike)).toEqual(
                partWith(scenario, cause, severity).map(([path, value]) => [path, near(value)]),
              );
            }
          },
        ),
        { numRuns: 300 },
      );
      expect(found).toBeGreaterThan(10);
    },
  );

  it('is found for holes by hand: 3 mm times the square, against 1 mm straight', () => {
    const effects = new Effects(catalogues, demos[0]);
    const on = 'left-up-line';
    const [pinhole, leak] = ['line-pinhole', 'fitting-leak'].map((fault) => ({ fault, on }));
    expect(effects.alike(pinhole, 1, leak)).toBeCloseTo(Math.sqrt(1 / 3), 5);
    expect(effects.alike(leak, 0.5, pinhole)).toBeCloseTo(0.75, 5);
    // A hole of 3 mm is more than a pinhole ever comes to.
    expect(effects.alike(leak, 1, pinhole)).toBeUndefined();
    expect(effects.alike(leak, 1, { ...leak, on: 'right-up-line' })).toBeUndefined();
  });
});

describe('what is as bad at any severity', () => {
  it('is what leaves the same part behind at all of them, and nothing else is', () => {
    for (const scenario of demos) {
      const effects = new Effects(catalogues, scenario);
      for (const cause of causesOf(scenario)) {
        const parts = [0.1, 0.4, 1].map((s) => JSON.stringify(partWith(scenario, cause, s)));
        expect([cause, effects.abrupt(cause)]).toEqual([cause, new Set(parts).size === 1]);
      }
    }
  });

  it('is known everywhere once it was played anywhere, and asks for no more', () => {
    const keys = new Keys();
    const [healthy, faulty] = [keys.vector({ 'up/left/locked': 5 }), keys.vector({ up: 1 })];
    const hypothesis = { causes: [{ fault: 'a', on: 'b' }], prior: 0.1 };
    const profile = new Profile(hypothesis, keys, [healthy], true);
    profile.put(1, 0, faulty);
    for (const s of [0.05, 0.5, 1]) {
      expect(profile.at(s)[0]).toEqual(faulty);
      expect(profile.has(s, 0, 0.01)).toBe(true);
    }
  });
});

describe('one for all', () => {
  const [scenario] = demos;
  const hypotheses = hypothesesOf(catalogues, scenario, {}).filter((h) => h.causes.length > 0);
  const sharing = new Sharing(catalogues, scenario, hypotheses);
  const find = (fault: string, on: string) =>
    hypotheses.find(({ causes: [c] }) => c.fault === fault && c.on === on)!;

  it('tells of every cause at its worst', () => {
    const tellers = sharing.tellers(1);
    const told = tellers.flatMap((h) =>
      sharing.told(h, 1, {}, {}).filter(({ severity }) => severity === 1),
    );
    expect(new Set(told.map((t) => t.hypothesis))).toEqual(new Set(hypotheses));
    expect(tellers.length).toBeLessThan(0.8 * hypotheses.length);
  });

  it('tells without borrowing of both sides by themselves', () => {
    const [one, both] = [true, false].map((borrowing) => sharing.tellers(1, { borrowing }));
    const sided = (all: readonly { causes: readonly Cause[] }[]) =>
      all.filter(({ causes: [c] }) => /^(?:left|right)/.test(c.on)).length;
    expect(sided(both)).toBe(2 * sided(one));
    expect(both.length - sided(both)).toBe(one.length - sided(one));
  });

  it('tells of what does the same as played, of the other side as borrowed', () => {
    const leak = find('fitting-leak', 'left-up-line');
    const signature = { 'up/left/locked': 9, 'up/right/locked': 6 };
    const healthy = { 'up/left/locked': 5, 'up/right/locked': 5.2 };
    const told = sharing.told(leak, 0.5, signature, healthy);
    const of = (h: unknown) => told.find(({ hypothesis }) => hypothesis === h);
    expect(of(leak)).toMatchObject({ severity: 0.5, borrowed: false, signature });
    expect(of(find('line-pinhole', 'left-up-line'))).toMatchObject({ borrowed: false, signature });
    const other = of(find('fitting-leak', 'right-up-line'))!;
    expect(other.borrowed).toBe(true);
    // So much later than on the healthy aircraft, on the other side.
    expect(other.signature['up/right/locked']).toBeCloseTo(5.2 + 4, 9);
    expect(other.signature['up/left/locked']).toBeCloseTo(5 + 0.8, 9);
  });

  it('lends nothing of a swing in which the card waited in vain for one side', () => {
    const jammed = find('actuator-reversed', 'right-door-jack');
    const healthy = { up: 1, down: 1, 'up/left/doors': 7, 'up/right/doors': 7 };
    const told = sharing.told(jammed, 1, { up: 1, 'up/left/doors': 7 }, healthy);
    expect(told.map(({ hypothesis: { causes } }) => causes[0].on)).not.toContain('left-door-jack');
    const goesOn = sharing.told(jammed, 1, { up: 1, down: 1, 'up/left/doors': 7 }, healthy);
    expect(goesOn.map(({ hypothesis: { causes } }) => causes[0].on)).toContain('left-door-jack');
  });

  it('goes by what was played where it is near to what was borrowed', () => {
    const keys = new Keys();
    const at = (t: number) => keys.vector({ up: 1, 'up/left/locked': t });
    const profile = new Profile(find('fitting-leak', 'left-up-line'), keys, [at(5)]);
    profile.put(0.5, 0, at(8), true);
    expect(profile.borrowed(0.5)).toBe(true);
    expect(profile.has(0.5, 0, 0.1)).toBe(false);
    profile.put(0.52, 0, at(7));
    profile.put(0.54, 0, at(9), true);
    expect(profile.severities).toEqual([0, 0.52]);
    expect(profile.borrowed(0.5)).toBe(false);
  });
});

describe('the side that is off', () => {
  const keys = new Keys();
  const figure = (unit: string, value: number): Evidences['figures'][number] => ({
    ...{ swing: 0, setup: 0, label: `${unit} locked`, kind: 'time', value },
    ...{ key: `up/${unit}/locked`, spread: 0.1, error: 0.2 },
  });
  const healthy = [keys.vector({ up: 1, 'up/left/locked': 5, 'up/right/locked': 5.5 })];
  const side = (left: number, right: number, ...facts: Evidences['facts']) =>
    oddSide(
      new Likelihood(
        { figures: [figure('left', left), figure('right', right)], facts, looks: [], unused: [] },
        [[], []],
        healthy,
        keys,
      ),
      healthy,
    );
  it('is the one whose times are further from the sound ones, or of which more was seen that is not theirs', () => {
    expect(side(5.1, 7)).toBe('right');
    expect(side(6, 5.4)).toBe('left');
    const never: Evidences['facts'][number] = {
      ...{ swing: 0, setup: 0, label: 'right doors never', kind: 'fact' },
      seen: () => () => 1e-4,
    };
    expect(side(5.3, 5.5, never)).toBe('right');
  });
});

describe('what was worked out of a cause', () => {
  it('stays until more is known of it', () => {
    const keys = new Keys();
    const at = (t: number) => keys.vector({ up: 1, 'up/left/locked': t });
    const figures: Evidences['figures'] = [
      {
        ...{ swing: 0, setup: 0, label: 'left locked', kind: 'time', value: 7 },
        ...{ key: 'up/left/locked', spread: 0.1, error: 0.2 },
      },
    ];
    const evidences = { figures, facts: [], looks: [], unused: [] };
    const weighing = new Weighing(new Likelihood(evidences, [[]], [at(5)], keys));
    const hypothesis = { causes: [{ fault: 'a', on: 'b' }], prior: 0.1 };
    const profile = new Profile(hypothesis, keys, [at(5)]);
    profile.put(1, 0, at(6));
    const [promised, believed] = [weighing.promise(profile), weighing.quick(profile)];
    expect(weighing.promise(profile)).toBe(promised);
    expect(weighing.quick(profile)).toBe(believed);
    profile.put(0.9, 0, at(7));
    expect(weighing.promise(profile).log).toBeGreaterThan(promised.log);
    expect(weighing.quick(profile).log).toBeGreaterThan(believed.log);
    expect(weighing.highest([profile])).toBe(weighing.quick(profile).log);
  });
});

describe('the other side', () => {
  const [hedgelark, , tarnswift] = demos;
  const other = (scenario: Scenario, on: string) => mirrored(scenario, { fault: 'any', on })?.on;

  it('is what has the same name there, and is of the same kind', () => {
    expect(other(hedgelark, 'left-up-line')).toBe('right-up-line');
    expect(other(tarnswift, 'right-leg-jack')).toBe('left-leg-jack');
    expect(other(tarnswift, 'pressure-filter')).toBeUndefined();
  });

  it('is none for two doors of one unit, which move in an order of their own', () => {
    expect(other(tarnswift, 'left-door-jack')).toBe('right-door-jack');
    expect(other(tarnswift, 'nose-left-door-jack')).toBeUndefined();
    expect(other(hedgelark, 'tail-left-door')).toBeUndefined();
  });
});
