import { describe, expect, it } from 'vitest';
import { placeOf } from '../../../packages/core/src/solver/index.js';
import type { Network } from '../../../packages/core/src/network/index.js';
import { gearUnits, type GearUnitsOptions } from '../../support/gear-units.js';
import { probe } from '../../support/probe.js';

interface Finding {
  readonly t: number;
  readonly row: string;
  readonly column: string;
  readonly analytic: number;
  readonly difference: number;
}

/** Central differences of the rates against one state, at a step of `share` of the state's scale. */
function differences(
  network: Network,
  t: number,
  y: Float64Array,
  j: number,
  share: number,
): Float64Array {
  const step = network.scale[j] * share;
  const low = new Float64Array(network.size);
  const high = new Float64Array(network.size);
  const moved = y.slice();
  moved[j] = y[j] - step;
  const from = moved[j];
  network.derivatives(t, moved, low);
  moved[j] = y[j] + step;
  network.derivatives(t, moved, high);
  return low.map((l, i) => (high[i] - l) / (moved[j] - from));
}

/** Entries, in units of the states' scales, where Jacobian and differences disagree. */
function compare(
  network: Network,
  t: number,
  y: Float64Array,
): { wrong: Finding[]; outside: Finding[]; checked: number } {
  const values = new Float64Array(network.pattern.column.length);
  const rate = new Float64Array(network.size);
  network.jacobian(t, y, rate, values);
  const wrong: Finding[] = [];
  const outside: Finding[] = [];
  let checked = 0;
  // The angle of a held coordinate is constant: whatever stands in its column multiplies zero.
  const held = new Set(
    [...network.wiring.angleState].filter((_, c) => network.workspace.direction[c] === 0),
  );
  for (let j = 0; j < network.size; j++) {
    if (held.has(j)) continue;
    const shares = [1e-4, 1e-5, 1e-6, 1e-7, 1e-8].map((s) => differences(network, t, y, j, s));
    for (let i = 0; i < network.size; i++) {
      const place = placeOf(network.pattern, i, j);
      const unit = network.scale[j] / network.scale[i];
      const analytic = place < 0 ? 0 : values[place] * unit;
      // Curvature spoils long steps, rounding short ones: the best counts.
      const tried = shares.map((d) => d[i] * unit);
      // Where the curvature jumps (the edge of a land) the error is proportional to the step.
      tried.push((10 * tried[2] - tried[1]) / 9, (10 * tried[3] - tried[2]) / 9);
      const difference = tried.reduce((a, b) =>
        Math.abs(b - analytic) < Math.abs(a - analytic) ? b : a,
      );
      // Rounding, and what the edge of a land leaves of the extrapolation.
      const noise = (1e-15 / 1e-5) * (Math.abs(rate[i]) / network.scale[i]) + 3e-6;
      checked++;
      const found = {
        t,
        row: network.wiring.stateNames[i],
        column: network.wiring.stateNames[j],
        analytic,
        difference,
      };
      if (place < 0 && tried.every((d) => Math.abs(d) > noise)) outside.push(found);
      if (!(Math.abs(analytic - difference) <= noise + 2e-4 * Math.abs(analytic)))
        wrong.push(found);
    }
  }
  return { wrong, outside, checked };
}

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
    return compare(p.network, t, y);
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
