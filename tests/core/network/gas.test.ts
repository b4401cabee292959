import { describe, expect, it } from 'vitest';
import { compareJacobian } from '../../support/jacobian.js';
import { gasRig, type GasRig } from '../../support/gas-rig.js';
import { probe } from '../../support/probe.js';

const cases: Readonly<Record<string, GasRig>> = {
  'a jack blown out': {},
  'a leaking piston lets gas into the other side': { bypass: 3e-11 },
  'no oil at all on the way': { gas: { 'tube-in': Infinity, 'tube-out': Infinity } },
  'bubbles in the oil, cold': { gas: { 'tube-in': 4e-6, back: 2e-6 }, temperature: 233.15 },
  'a heavy load that just moves': { load: 12e3, duration: 3 },
};

describe.each(Object.entries(cases))('%s', (_, options) => {
  const made = gasRig(options);
  const p = probe(made.scenario, { with: made.with });
  const { network: n } = p;
  const all = (states: Int32Array, y: Float64Array): number =>
    states.reduce((sum, s) => (s < 0 ? sum : sum + y[s]), 0);
  const first = p.at(0, 0).y;

  it('every entry of the Jacobian agrees with central differences', () => {
    const results: ReturnType<typeof compareJacobian>[] = [];
    const stride = Math.max(1, Math.floor(p.record.count / 250));
    for (let k = 0; k < p.record.count; k += stride) {
      const { t, y } = p.at(k, 0.37);
      const found = compareJacobian(n, t, y);
      // Where nothing flows, oil one way meets gas the other way: a kink. And a chamber of next to
      // no volume, its cushion about to open, bends too much for differences.
      const { pressure, angle } = n.workspace;
      const still = n.wiring.gas.paths.some((g) => Math.abs(pressure[g.from] - pressure[g.to]) < 5);
      if (!still && angle[0] > 0.02) results.push(found);
    }
    expect(results.length).toBeGreaterThanOrEqual(25);
    expect(results.flatMap((r) => r.wrong)).toEqual([]);
    expect(results.flatMap((r) => r.outside)).toEqual([]);
  });

  it('gas and oil are kept to 1e-9 of what there is', () => {
    for (let k = 0; k < p.record.count; k++) {
      const { y } = p.at(k, 1);
      const { gasState, contentState } = n.states;
      expect(Math.abs(all(gasState, y) / all(gasState, first) - 1)).toBeLessThan(1e-9);
      expect(Math.abs(all(contentState, y) / all(contentState, first) - 1)).toBeLessThan(1e-9);
    }
  });
});
