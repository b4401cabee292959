import { describe, expect, it } from 'vitest';
import {
  bulkModulus,
  contentAt,
  effectiveBulkModulus,
  fluids,
  gasFraction,
  oilAt,
  pressureAt,
} from '../../packages/core/src/medium/index.js';

describe('the fluid catalogue', () => {
  it.each(Object.entries(fluids))(
    '%s is listed under its own kind, with its source',
    (name, fluid) => {
      expect(fluid.kind).toBe(name);
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(fluid.source.length).toBeGreaterThan(20);
      const knots = fluid.viscosity.map(({ temperature }) => temperature);
      expect(knots.length).toBeGreaterThanOrEqual(2);
      expect([...knots].sort((a, b) => a - b)).toEqual(knots);
    },
  );

  it.each(Object.values(fluids))('$kind has plausible figures from -54 to 100 C', (fluid) => {
    for (let t = 219; t <= 373; t += 7) {
      const oil = oilAt(fluid, t);
      expect(oil.density).toBeGreaterThan(750);
      expect(oil.density).toBeLessThan(1100);
      expect(oil.bulkModulus).toBeGreaterThan(0.9e9);
      expect(oil.bulkModulus).toBeLessThan(3.5e9);
      expect(oil.viscosity).toBeGreaterThan(1.5e-6);
      expect(oil.vapourPressure).toBeGreaterThan(0);
      expect(oil.vapourPressure).toBeLessThan(1000);
    }
  });

  it('makes oil softer when warm and stiffer under pressure', () => {
    const oil = fluids['mineral-red'];
    expect(bulkModulus(oil, 350)).toBeLessThan(bulkModulus(oil, 300));
    expect(bulkModulus(oil, 300, 2e7)).toBeGreaterThan(bulkModulus(oil, 300, 1e6));
  });
});

describe('the pressure of a node from its content', () => {
  const law = { bulkModulus: 1.8e9, ambient: 101_325, vapour: 100, freeAir: 0.01 };
  const node = { compliance: 0, pocket: 0 };

  it('undoes the content from the pressure, from near vacuum to high pressure', () => {
    for (const p of [200, 5e3, 1e5, 1e6, 2e7]) {
      const n = contentAt(law, node, 1e-4, p);
      expect(pressureAt(law, node, 1e-4, n) / p).toBeCloseTo(1, 8);
    }
  });

  it('is as stiff as the effective bulk modulus with isothermal air', () => {
    for (const p of [2e5, 1e6, 5e6, 1e7]) {
      const volume = 1e-4;
      const n = contentAt(law, node, volume, p);
      const h = 1e-9;
      const slope =
        (pressureAt(law, node, volume * (1 - h), n) - pressureAt(law, node, volume * (1 + h), n)) /
        (2 * h);
      const fraction = gasFraction(0.01, law.ambient, p, 1);
      const expected = effectiveBulkModulus(law.bulkModulus, fraction, p, 1);
      // Secant against tangent compressibility, and free air counted per oil instead of per mixture: below 2 %.
      expect(Math.abs(slope / expected - 1)).toBeLessThan(0.02);
    }
  });
});
