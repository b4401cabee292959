/**
 * Accumulator: oil taken in and given back against the polytropic change of state p V^n = const
 * (thermodynamics textbooks; the isothermal case is Boyle's law).
 */
import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import type { Run } from '../../packages/core/src/define/index.js';
import { rig, step } from '../support/rig.js';

const AMBIENT = 101_325;
const VOLUME = 1e-3;
const last = (run: Run, name: string): number => run.series(name)!.v.at(-1)!;

/** Filled by a stand to its limit and shut in. */
function charged(precharge: number, index: number, limit: number): Run {
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
        parameters: { flow: 5e-5, pressure: limit, on: true },
      },
      accumulator: {
        is: 'accumulator',
        ports: { oil: 'line' },
        parameters: { volume: VOLUME, precharge, index },
      },
    },
    duration: 40,
  });
  return simulateWith(catalogues, scenario, { tolerance: 'fine' });
}

describe('an accumulator charged to rest', () => {
  it.each([
    [3e6, 1, 10e6],
    [4e6, 1.25, 10e6],
    [6.9e6, 1.4, 20.7e6],
  ])(
    'of precharge %d Pa and index %d, at a stand of %d Pa, holds V (1 - (p0 / p)^(1/n))',
    (precharge, index, limit) => {
      const run = charged(precharge, index, limit);
      const p = last(run, 'accumulator.cushion.pressure');
      expect(p - AMBIENT).toBeGreaterThan(0.9 * limit);
      const wanted = VOLUME * (1 - ((precharge + AMBIENT) / p) ** (1 / index));
      // At rest, and both are read at the same point: only the run's tolerance is left.
      expect(Math.abs(last(run, 'accumulator.stored') / wanted - 1)).toBeLessThan(1e-6);
      expect(last(run, 'accumulator.gas')).toBeCloseTo(VOLUME - wanted, 9);
    },
  );

  it('takes nothing from a line below its precharge', () => {
    const run = charged(6e6, 1.25, 4e6);
    // The poppet's band of 0.4 % of the volume.
    expect(last(run, 'accumulator.stored')).toBeLessThan(0.004 * VOLUME);
  });
});

describe('an accumulator that feeds a system after the pump has gone', () => {
  const parameters = { volume: VOLUME, precharge: 4e6, index: 1.25 };
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
        parameters: { flow: 5e-5, pressure: 10e6, on: true },
      },
      bleed: {
        is: 'orifice',
        ports: { inlet: 'line', outlet: 'tank' },
        parameters: { bore: 4e-4 },
      },
      accumulator: { is: 'accumulator', ports: { oil: 'line' }, parameters },
    },
    // The later ones change nothing: a step of the solver ends there, where readings are exact.
    steps: [30, 31, 45].map((t) => step(t, 'supply', 'on', 0)),
    duration: 120,
  });
  const run = simulateWith(catalogues, scenario, { tolerance: 'fine' });

  it('gives between two pressures V p0^(1/n) (p2^(-1/n) - p1^(-1/n))', () => {
    const p = run.series('accumulator.cushion.pressure')!;
    const oil = run.series('accumulator.stored')!;
    const when = (t: number): number => p.t.findIndex((x) => x >= t);
    const [a, b] = [when(31), when(45)];
    expect(p.v[b]).toBeGreaterThan(4.2e6);
    expect(p.v[b]).toBeLessThan(p.v[a] - 1e6);
    const of = (pressure: number): number => ((4e6 + AMBIENT) / pressure) ** (1 / 1.25);
    const wanted = VOLUME * (of(p.v[b]) - of(p.v[a]));
    const at = (t: number): number => oil.v[oil.t.findIndex((x) => x >= t)];
    expect(Math.abs((at(p.t[a]) - at(p.t[b])) / wanted - 1)).toBeLessThan(1e-5);
  });

  it('is empty below its precharge, and the line falls at once', () => {
    const line = run.series('line.pressure')!;
    const gone = line.t[line.v.findIndex((v, i) => line.t[i] > 31 && v < AMBIENT + 3.9e6)];
    const low = line.t[line.v.findIndex((v, i) => line.t[i] > 31 && v < AMBIENT + 1e6)];
    expect(low - gone).toBeLessThan(0.5);
  });
});
