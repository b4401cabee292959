import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import { rig, step } from '../../support/rig.js';

describe('a tank that a supply pumps out', () => {
  const { scenario, with: catalogues } = rig({
    parts: {
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank' },
        parameters: { capacity: 1e-3, level: 5e-4 },
      },
      supply: {
        is: 'ground-supply',
        ports: { inlet: 'tank', outlet: 'line' },
        parameters: { flow: 2.5e-4, pressure: 9e6 },
      },
      burst: {
        is: 'orifice',
        ports: { inlet: 'line', outlet: 'outside' },
        parameters: { bore: 5e-3 },
      },
    },
    steps: [step(0.1, 'supply', 'on', 1)],
    duration: 20,
  });
  const run = simulateWith(catalogues, scenario);

  it('runs dry when its oil has been used up, and the log says when', () => {
    const dry = run.log.find((e) => e.device === 'tank' && e.to === 'nearly dry')!;
    // 0.45 L at 0.25 L/s, less what fills the line.
    expect(dry.t).toBeGreaterThan(1.7);
    expect(dry.t).toBeLessThan(2);
  });

  it('never holds less than nothing', () => {
    const level = run.series('tank.content')!;
    expect(Math.min(...level.v)).toBeGreaterThan(-1e-6);
    expect(level.v.at(-1)!).toBeLessThan(2e-6);
  });
});
