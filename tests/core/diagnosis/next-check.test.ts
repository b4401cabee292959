/** Expected information against values worked out by hand (entropy: any text on information theory). */
import { describe, expect, it } from 'vitest';
import { checkMade } from '../../../packages/core/src/analysis/diagnosis/check-conditions.js';
import {
  apartInTimes,
  possibleLooks,
  rankedChecks,
} from '../../../packages/core/src/analysis/diagnosis/next-check.js';
import {
  catalogues,
  readObservations,
  type ObservedLook,
  type Scenario,
} from '../../../packages/core/src/index.js';
import { handPumped } from '../../support/case-small.js';
import { swing } from '../../support/small-swing.js';
import { checks } from '../../../packages/core/src/check/index.js';
import { faults } from '../../../packages/core/src/fault/index.js';

const bits = (p: number): number => -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);
const seal = { causes: [{ fault: 'piston-seal-bypass', on: 'left-jack' }], probability: 0.5 };
const dry = { causes: [{ fault: 'dry-bearing', on: 'left-leg' }], probability: 0.5 };

describe('which check comes next', () => {
  it('a look tells the entropy of its outcome less that which is left, for each minute', () => {
    const [best] = rankedChecks([seal, dry], []).filter((c) => c.check === 'by-pass-flow');
    const finds = 0.5 * 0.95 + 0.5 * 0.03;
    const wanted = bits(finds) - 0.5 * bits(0.95) - 0.5 * bits(0.03);
    expect(best.information).toBeCloseTo(wanted, 9);
    expect(best.finds).toBeCloseTo(finds, 9);
    expect(best.perMinute).toBeCloseTo(wanted / checks['by-pass-flow'].minutes, 9);
  });

  it('a swing that sets two causes wide apart tells one bit, and none where they stay together', () => {
    const outlook = (apart: number) => ({
      check: 'second-flow',
      places: [0, 1],
      apart: (a: number, b: number) => (a === b ? 0 : apart),
    });
    const told = (apart: number): number =>
      rankedChecks([seal, dry], [outlook(apart)]).find((c) => c.check === 'second-flow')
        ?.information ?? 0;
    expect(told(400)).toBeCloseTo(1, 6);
    expect(told(0)).toBe(0);
    expect(told(4)).toBeGreaterThan(0.2);
    expect(told(4)).toBeLessThan(0.8);
  });

  it('a look that is on the sheet is not asked for again, nor the handle of a pump that is not there', () => {
    const heavy = { causes: [{ fault: 'dry-bearing', on: 'left-leg' }], probability: 0.5 };
    const { scenario } = swing('plain');
    const told = (looks: readonly ObservedLook[], gear: Scenario): string[] =>
      rankedChecks([seal, heavy], [], possibleLooks(catalogues, gear, { looks })).map(
        (c) => `${c.check} ${c.on}`,
      );
    expect(told([], scenario)).toContain('by-pass-flow left-jack');
    const made = [{ check: 'by-pass-flow', on: 'left-jack', found: false }];
    expect(told(made, scenario)).not.toContain('by-pass-flow left-jack');
    expect(told([], scenario)).not.toContain('handle-heavy gear');
    expect(told([], handPumped)).toContain('handle-heavy gear');
  });

  it('a swing that is on the sheet is not asked for again', () => {
    const { scenario } = swing('plain');
    const [, { parameters }] = Object.entries(scenario.components).find(
      ([, { is }]) => catalogues.components[is].role === 'supply',
    )!;
    const made = (check: string, conditions: string): boolean => {
      const text = `wheelwell-observations: 1\nswings:\n- direction: up\n- direction: up\n  conditions: ${conditions}\n`;
      const { sheet } = readObservations(text);
      return checkMade(catalogues, scenario, sheet!, check);
    };
    const half = `{ supply-flow: ${(parameters.flow as number) / 2} m^3/s }`;
    expect(made('second-flow', half)).toBe(true);
    expect(made('second-flow', '{}')).toBe(false);
    expect(made('warm-oil', half)).toBe(false);
    expect(made('doors-off', '{ doors: disconnected }')).toBe(true);
    expect(made('by-pass-flow', half)).toBe(false);
  });

  it('looks at the second part where two faults at once stand against one of them', () => {
    const two = { causes: [...seal.causes, ...dry.causes], probability: 0.5 };
    const found = rankedChecks([{ ...seal, probability: 0.5 }, two], []);
    expect(found.length).toBeGreaterThan(0);
    // A look at what both have wrong tells nothing.
    for (const { on } of found) expect(on).not.toBe(seal.causes[0].on);
  });

  it('nothing is left to check when the cause is certain', () => {
    expect(rankedChecks([{ ...seal, probability: 1 }], [])).toEqual([]);
  });

  it('swings lie apart by what a hand can time', () => {
    expect(apartInTimes({ 'up/left/total': 5 }, { 'up/left/total': 5.5 })).toBeCloseTo(
      0.25 / (0.01 + (0.03 * 5.5) ** 2),
      9,
    );
    expect(apartInTimes({ 'up/left/total': 5 }, {})).toBe(14);
    expect(apartInTimes({ 'up/left/moving': 5 }, { 'up/left/moving': 9 })).toBe(0);
  });
});

describe('the catalogue of checks', () => {
  it('shows every fault that can be met, and names none that is not there', () => {
    const shown = new Set(Object.values(checks).flatMap((c) => c.shows ?? []));
    for (const fault of shown) expect(Object.keys(faults)).toContain(fault);
    expect(Object.keys(faults).filter((f) => !shown.has(f))).toEqual([]);
  });

  it.each(Object.entries(checks))(
    '%s says how long it takes, what it needs and what to beware of',
    (kind, c) => {
      expect(c.kind).toBe(kind);
      expect(c.minutes).toBeGreaterThan(0);
      for (const text of [c.title, c.how, c.tools, c.caution, c.source]) expect(text).not.toBe('');
      expect((c.swing === undefined) !== (c.shows === undefined)).toBe(true);
    },
  );
});
