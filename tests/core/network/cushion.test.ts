import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cushionPressure } from '../../../packages/core/src/medium/index.js';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import type { DeviceDefinition } from '../../../packages/core/src/define/index.js';
import { device, rig, step } from '../../support/rig.js';

const AMBIENT = 101_325;
const at = (n: number, precharge = 6e6, index = 1.2): { pressure: number; slope: number } => {
  const out = { pressure: 0, slope: 0 };
  cushionPressure({ precharge, volume: 1e-3, index }, AMBIENT, n, out);
  return out;
};

describe('oil against a gas cushion', () => {
  it('follows p V^n = constant from the precharge (polytropic change of state)', () => {
    for (const share of [0.01, 0.2, 0.5, 0.8]) {
      const { pressure } = at(share * 1e-3);
      expect((pressure * (1 - share) ** 1.2) / 6e6).toBeCloseTo(1, 12);
    }
  });

  it('an empty one gives nothing, and its pressure never falls below zero', () => {
    expect(at(0).pressure).toBe(AMBIENT);
    for (const n of [-1e-7, -1e-5, -1e-3]) {
      expect(at(n).pressure).toBeLessThan(AMBIENT);
      expect(at(n).pressure).toBeGreaterThan(0);
    }
  });

  it('rises with every drop, without a jump, and its slope is the derivative', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2e-5, max: 0.99e-3, noNaN: true }),
        fc.double({ min: 1, max: 1.4, noNaN: true }),
        (n, index) => {
          const h = 1e-10;
          const slope = (at(n + h, 6e6, index).pressure - at(n - h, 6e6, index).pressure) / (2 * h);
          const own = at(n, 6e6, index).slope;
          expect(own).toBeGreaterThanOrEqual(0);
          expect(Math.abs(own - slope)).toBeLessThanOrEqual(1e-4 * Math.abs(own) + 2e8);
        },
      ),
    );
  });
});

describe('a node with a cushion in a network', () => {
  /** A way in that shuts, and a store behind it. */
  const store: DeviceDefinition = device('store', {
    ports: {
      oil: { title: 'oil', volume: 1e-5 },
      inside: {
        title: 'inside',
        volume: 0,
        optional: true,
        cushion: () => ({ precharge: 4e6, volume: 5e-4, index: 1.3, content: 1e-4 }),
      },
    },
    flows: {
      way: {
        from: 'oil',
        to: 'inside',
        law: () => ({ constant: 3e-8, transition: 2e4, open: 1, leak: 0 }),
      },
    },
  });
  const { scenario, with: catalogues } = rig({
    parts: {
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 4e-3, level: 3e-3 },
      },
      supply: {
        is: 'ground-supply',
        ports: { inlet: 'tank', outlet: 'line' },
        parameters: { flow: 5e-5, pressure: 9e6 },
      },
      bleed: {
        is: 'orifice',
        ports: { inlet: 'line', outlet: 'tank' },
        parameters: { bore: 6e-4 },
      },
      store: { is: store, ports: { oil: 'line' } },
    },
    steps: [step(0.2, 'supply', 'on', 1), step(5, 'supply', 'on', 0)],
    duration: 30,
  });
  const run = simulateWith(catalogues, scenario);

  it('loses no oil and no energy while it fills and empties', () => {
    const { oil, energy } = run.account();
    expect(Math.abs(oil.end - oil.start) / oil.start).toBeLessThan(1e-12);
    expect(energy.supplied).toBeGreaterThan(100);
    expect(Math.abs(energy.gap)).toBeLessThan(1e-3 * energy.supplied);
  });

  it('holds the pressure after the supply has gone, and at last gives all its oil back', () => {
    const line = run.series('line.pressure')!;
    const when = (t: number): number => line.v[line.t.findIndex((x) => x >= t)];
    expect(when(0.1)).toBeGreaterThan(4e6);
    expect(when(5.5)).toBeGreaterThan(4e6);
    expect(line.v.at(-1)!).toBeLessThan(2e5);
    const inside = run.series('store.inside.content')!;
    expect(Math.abs(inside.v.at(-1)!)).toBeLessThan(5e-6);
  });
});

describe('oil that was shut in and has been warmed', () => {
  it('rises by expansion times bulk modulus in a rigid space, and not where a way leads to the tank', () => {
    const { scenario, with: catalogues } = rig({
      parts: {
        tank: {
          is: 'reservoir',
          ports: { outlet: 'tank', return: 'tank' },
          parameters: { capacity: 4e-3, level: 3e-3 },
        },
        open: {
          is: 'orifice',
          ports: { inlet: 'tank', outlet: 'near' },
          parameters: { bore: 1e-3 },
        },
        check: {
          is: 'check-valve',
          ports: { inlet: 'near', outlet: 'far' },
          parameters: { leak: 0 },
        },
      },
      nodes: { near: { volume: 1e-4 }, far: { volume: 1e-4 } },
      oil: { bulkModulus: 1.4e9 },
      warmedBy: 10,
      duration: 0.1,
    });
    const run = simulateWith(catalogues, scenario);
    // dp = K alpha dT = 1.4e9 x 8e-4 x 10 = 11.2 MPa, to first order; K here is the secant one.
    const far = run.series('far.pressure')!.v.at(-1)!;
    expect(far / 11.2e6).toBeGreaterThan(0.95);
    expect(far / 11.2e6).toBeLessThan(1.05);
    expect(run.series('near.pressure')!.v[0]).toBeCloseTo(AMBIENT, -1);
  });

  it('stands at one pressure from the start where a line joins a stiff space and one with air', () => {
    const { scenario, with: catalogues } = rig({
      parts: {
        line: { is: 'line', ports: { inlet: 'stiff', outlet: 'soft' }, parameters: { length: 1 } },
      },
      nodes: { stiff: { volume: 1e-4 }, soft: { volume: 1e-4, air: 1e-6 } },
      warmedBy: 10,
      duration: 0.1,
    });
    const run = simulateWith(catalogues, scenario);
    for (const node of ['stiff', 'soft']) {
      const { v } = run.series(`${node}.pressure`)!;
      expect(v[0]).toBeGreaterThan(3e5);
      for (const p of v) expect(Math.abs(p / v[0] - 1)).toBeLessThan(1e-6);
    }
  });
});

describe('a pocket of air larger than the space it was given', () => {
  it('brings its own room, so that no node begins with less than no oil', () => {
    const { scenario, with: catalogues } = rig({
      parts: {
        orifice: {
          is: 'orifice',
          ports: { inlet: 'near', outlet: 'far' },
          parameters: { bore: 1e-3 },
        },
      },
      nodes: { near: { volume: 2e-5, air: 1e-4 }, far: { volume: 2e-5 } },
      duration: 0.1,
    });
    const { oil } = simulateWith(catalogues, scenario).account();
    // A tenth of the air's volume in oil, and what the other node holds.
    expect(oil.start).toBeGreaterThan(2.9e-5);
    expect(oil.start).toBeLessThan(3.5e-5);
  });
});
