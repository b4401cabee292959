/**
 * Orifices: Crane TP 410, ISO 5167-2 flow coefficients, the free-streamline slot and the Lohm
 * definition of a miniature-valve handbook.
 */
import { describe, expect, it } from 'vitest';
import {
  orificeConstant,
  orificeFlow,
  orificeSlope,
  transitionDrop,
} from '../../packages/core/src/medium/index.js';
import { components } from '../../packages/core/src/component/index.js';

const INCH = 0.0254;
const GPM = (231 * INCH ** 3) / 60;
const PSI = 6894.757;
const circle = (d: number): number => 0.25 * Math.PI * d * d;
const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);

describe('Crane TP 410', () => {
  it('example 7-23: 2 in orifice, 4.4 in of mercury under water, coefficient 0.625: 106 gpm', () => {
    // Conventional inches of mercury (13 595.1 kg/m3), less the water above it (60 F, 999.0 kg/m3).
    const drop = 4.4 * INCH * (13_595.1 - 999) * 9.80665;
    const c = orificeConstant(0.625, circle(2 * INCH), 999);
    expect(relative(orificeFlow(c, drop, 1) / GPM, 106)).toBeLessThan(0.005);
  });

  it('example 7-29 (metric): 50 mm in 73.66 mm, 17 kPa, water: 478 L/min (ISO 5167-2 C 0.6150)', () => {
    const beta = 50 / 73.66;
    const c = orificeConstant(0.615 / Math.sqrt(1 - beta ** 4), circle(0.05), 999.1);
    expect(relative(orificeFlow(c, 17_000, 1) * 60_000, 478)).toBeLessThan(0.01);
  });
});

describe('miniature-valve handbook, Lohm: 100 gpm of water at 25 psi and 80 F', () => {
  it('one Lohm is a hole with L Cd d^2 = 0.6696 (d in inches; recomputed from the definition)', () => {
    const d = 0.5;
    const lohm = 0.6696 / (0.611 * d * d);
    const c = orificeConstant(0.611, circle(d * INCH), 996.6);
    expect(relative(orificeFlow(c, 25 * PSI, 1) / GPM, 100 / lohm)).toBeLessThan(0.003);
  });
});

describe('discharge coefficient', () => {
  it('is by default that of the free-streamline slot, pi/(pi+2) (closed form; from memory)', () => {
    const p = components.orifice.parameters.dischargeCoefficient as { readonly default: number };
    expect(Math.abs(p.default - Math.PI / (Math.PI + 2))).toBeLessThan(5e-4);
  });
});

describe('laminar core', () => {
  const density = 850;
  const c = orificeConstant(0.611, circle(0.002), density);
  const dc = transitionDrop(0.611, 0.002, density, 15e-6, 100);

  it('begins where the turbulent law reaches the transition Reynolds number', () => {
    const velocity = 0.611 * Math.sqrt((2 * dc) / density);
    expect((velocity * 0.002) / 15e-6).toBeCloseTo(100, 9);
  });

  it('is proportional to the drop and to 1/viscosity far below it, turbulent far above', () => {
    const thick = transitionDrop(0.611, 0.002, density, 30e-6, 100);
    const small = 1e-3 * dc;
    expect(relative(orificeFlow(c, 2 * small, dc), 2 * orificeFlow(c, small, dc))).toBeLessThan(
      1e-5,
    );
    expect(relative(orificeFlow(c, small, dc), 2 * orificeFlow(c, small, thick))).toBeLessThan(
      1e-5,
    );
    const large = 1e3 * dc;
    expect(relative(orificeFlow(c, large, dc), c * Math.sqrt(large))).toBeLessThan(1e-6);
  });

  it('has a slope that integrates to its flow, through zero', () => {
    let sum = orificeFlow(c, -2 * dc, dc);
    const h = dc / 500;
    for (let i = 0; i < 2000; i++) sum += h * orificeSlope(c, -2 * dc + (i + 0.5) * h, dc);
    expect(relative(sum, orificeFlow(c, 2 * dc, dc))).toBeLessThan(1e-5);
  });
});
