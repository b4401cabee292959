import { describe, expect, it } from 'vitest';
import { compareJacobian } from '../../support/jacobian.js';
import { gearUnits, type GearUnitsOptions } from '../../support/gear-units.js';
import { probe } from '../../support/probe.js';

const psi = 6894.757;
const cases: Readonly<Record<string, GearUnitsOptions>> = {
  healthy: { units: 2, duration: 12, down: 6 },
  // A weak supply cannot follow the falling legs: chambers run empty.
  cavitating: {
    units: 2,
    duration: 12,
    down: 6,
    freeAir: 0.001,
    change: { 'ground-supply': { flow: 1.5e-4 }, 'one-way-restrictor': { bore: 0.006 } },
  },
  cold: { units: 2, duration: 12, down: 6, temperature: 248.15 },
  'leaking and foamy': {
    units: 1,
    duration: 12,
    down: 6,
    freeAir: 0.04,
    change: {
      'double-acting-actuator': { bypass: 2e-12, rodSealLeak: 1e-13, pressureFriction: 0.05 },
      'selector-valve': { leak: 1e-12, centre: 'lines-to-return' },
      'relief-valve': { crack: 900 * psi, full: 1100 * psi },
    },
  },
};

describe.each(Object.entries(cases))('%s swing', (name, options) => {
  const p = probe(gearUnits(options));
  const stride = Math.max(1, Math.floor(p.record.count / 60));
  const results = Array.from({ length: Math.floor(p.record.count / stride) }, (_, k) => {
    const { t, y } = p.at(k * stride, 0.37);
    return compareJacobian(p.network, t, y);
  });

  it('every entry of the Jacobian agrees with central differences', () => {
    expect(results.length).toBeGreaterThanOrEqual(50);
    expect(results.flatMap((r) => r.wrong)).toEqual([]);
  });

  it('nothing depends on anything outside the pattern', () => {
    expect(results.flatMap((r) => r.outside)).toEqual([]);
  });

  if (name === 'cavitating') {
    it('does cavitate', () => {
      const rate = new Float64Array(p.network.size);
      let least = Infinity;
      for (let k = 0; k < p.record.count; k++) {
        const { t, y } = p.at(k, 1);
        p.network.derivatives(t, y, rate);
        least = Math.min(least, ...p.network.workspace.pressure);
      }
      expect(least).toBeLessThan(0.2 * p.network.around.ambient);
      expect(least).toBeGreaterThan(0);
    });
  }
});
