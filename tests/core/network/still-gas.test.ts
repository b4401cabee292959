import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../../packages/core/src/machine/simulate.js';
import { bottle, valve } from '../../support/gas-rig.js';
import { device, rig, step } from '../../support/rig.js';

const steps = [step(0.2, 'valve', 'handle', 1)];

/** A bottle behind a valve that lets it out overboard, worked or left alone. */
function overboard(works: boolean) {
  const made = rig({
    parts: {
      bottle: { is: bottle({}), ports: { outlet: 'gas-out' } },
      valve: { is: valve({}), ports: { inlet: 'gas-out', outlet: 'outside' } },
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 4e-3, level: 2e-3 },
      },
      bleed: {
        is: device('rig-nothing', { ports: { one: { title: 'one', volume: 1e-6 } } }),
        ports: { one: 'oil' },
      },
    },
    duration: 3,
    steps: works ? steps : [],
  });
  return simulateWith(made.with, made.scenario);
}

describe('a bottle whose gas touches no oil', () => {
  it('empties when its valve is worked', () => {
    const { v } = overboard(true).series('bottle.inlet.pressure')!;
    expect(v[v.length - 1]).toBeLessThan(0.8 * v[0]);
  });

  it('rests at its charge when nobody works it', () => {
    const { v } = overboard(false).series('bottle.inlet.pressure')!;
    expect(v[0]).toBeGreaterThan(11.9e6);
    expect(v[v.length - 1]).toBe(v[0]);
  });
});
