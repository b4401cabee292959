/**
 * Hose: what it swells by adds to what its oil gives, dp/dt = Q / (V / B + C) (compliances in
 * series: Merritt, Hydraulic Control Systems, from memory; the same sum in Rabie, Fluid Power
 * Engineering, equation 2.57, with air in the place of the wall).
 */
import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { rig } from '../support/rig.js';

const FLOW = 1e-5;
const BULK = 1.7e9;
const BORE = 0.0064;
const LENGTH = 3;
/** Passage of the stand, see its ports. */
const STAND = 20e-6;

/** Mean rate of pressure, Pa/s, from 1 to 4 MPa in a hose blanked off at its far end. */
function rate(own: object): number {
  const made = rig({
    parts: {
      tank: { is: 'reservoir', ports: { outlet: 'tank', return: 'tank' } },
      stand: {
        is: 'ground-supply',
        ports: { inlet: 'tank', outlet: 'near' },
        parameters: { flow: FLOW, pressure: 15e6, on: true },
      },
      hose: {
        is: 'hose',
        ports: { inlet: 'near', outlet: 'far' },
        parameters: { bore: BORE, length: LENGTH, ...own },
      },
    },
    oil: { bulkModulus: BULK },
    duration: 2,
  });
  const { t, v } = simulateWith(made.with, made.scenario, { tolerance: 'fine' }).series(
    'far.pressure',
  )!;
  const when = (p: number): number => {
    const i = v.findIndex((x) => x >= p);
    return t[i - 1] + ((t[i] - t[i - 1]) * (p - v[i - 1])) / (v[i] - v[i - 1]);
  };
  return 3e6 / (when(4e6) - when(1e6));
}

const VOLUME = 0.25 * Math.PI * BORE ** 2 * LENGTH;

describe('a blanked hose that a stand fills', () => {
  it.each([
    ['new', 0.02, 1],
    ['that swells four times as much', 0.02, 4],
    ['stiff as a tube', 0, 1],
  ])('%s gains pressure at Q / (V / B + C)', (_, expansion, softening) => {
    const compliance = (VOLUME * expansion * softening) / 6.9e6;
    const expected = FLOW / ((VOLUME + STAND) / BULK + compliance);
    // The oil stiffens by its own compression, 0.3 % at 4 MPa; traces have steps.
    expect(Math.abs(rate({ expansion, softening }) / expected - 1)).toBeLessThan(0.015);
  });
});
