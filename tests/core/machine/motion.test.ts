import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import type { SimulatedRun } from '../../../packages/core/src/machine/index.js';
import type { CoordinateData } from '../../../packages/core/src/define/index.js';
import { coordinate, flat, rig } from '../../support/rig.js';

function swing(own: Partial<CoordinateData>, duration = 10): SimulatedRun {
  const { scenario, with: catalogues } = rig({
    parts: {},
    coordinates: { arm: coordinate(own) },
    duration,
  });
  return simulateWith(catalogues, scenario, { tolerance: 'fine' });
}
const words = (run: SimulatedRun): string[] =>
  run.log.filter((e) => e.device === 'arm').map((e) => e.to);

describe('a part between its stops', () => {
  it('bounces as a falling body does, each rebound at its closed-form time, then rests', () => {
    // Constant moment -2 N m on 1 kg m2 from 1 rad: falls for 1 s, arrives at 2 rad/s.
    const e = 0.5;
    const run = swing({ moment: flat(-2), initial: 1, high: 1.5, restitution: e });
    const hits = run.log.filter((l) => l.speed > 0);
    // 2 x 0.5^k; the sixth would rebound at 0.03 rad/s, below what counts as rebound.
    expect(hits).toHaveLength(6);
    let t = 1;
    hits.forEach((hit, k) => {
      expect(Math.abs(hit.t - t)).toBeLessThan(1e-6);
      expect(Math.abs(hit.speed - 2 * e ** k)).toBeLessThan(1e-6);
      t += 2 * e ** (k + 1);
    });
    expect(words(run).at(-1)).toBe('at low');
    const { v } = run.series('arm.angle')!;
    expect(v.at(-1)).toBe(0);
  });

  it('without restitution rests at once, at the stop exactly', () => {
    const run = swing({ moment: flat(3), initial: 0.2 });
    expect(words(run)).toEqual(['rising', 'at high']);
    expect(run.series('arm.angle')!.v.at(-1)).toBe(1);
    expect(run.series('arm.speed')!.v.at(-1)).toBe(0);
  });

  it('does not move while static friction holds', () => {
    const run = swing({ moment: flat(1.19), friction: 1, staticRatio: 1.2, initial: 0.5 });
    expect(words(run)).toEqual(['held']);
    expect([...run.series('arm.angle')!.v].every((v) => v === 0.5)).toBe(true);
  });

  it('breaks away when static friction is exceeded, and then feels the sliding friction only', () => {
    const run = swing({ moment: flat(1.21), friction: 1, staticRatio: 1.2, initial: 0 }, 1);
    expect(words(run)).toEqual(['rising']);
    // (1.21 - 1) / 1 kg m2 over one second.
    expect(Math.abs(run.series('arm.speed')!.v.at(-1)! - 0.21)).toBeLessThan(1e-6);
  });

  it('a spring with Coulomb friction comes to rest after the half swings that the closed form counts', () => {
    // Moment 100 (0.5 - angle), friction 4: each half swing loses 2 x 4/100 rad of amplitude, from 0.3.
    const spring = { x: [-10, 10], y: [1050, -950] };
    const run = swing({ moment: spring, friction: 4, initial: 0.2 });
    // 0.30, 0.22, 0.14, 0.06, then 0.02 lies within the 0.04 that friction holds: four half swings.
    expect(words(run)).toEqual(['rising', 'falling', 'rising', 'falling', 'held']);
    const { v } = run.series('arm.angle')!;
    // Starts 0.3 below the middle and ends after an even number of half swings, on the same side.
    expect(Math.abs(v.at(-1)! - (0.5 + 0.02))).toBeLessThan(1e-3);
    const half = Math.PI / 10;
    run.log
      .filter((l) => l.kind === 'motion')
      .slice(1)
      .forEach((l, k) => {
        expect(Math.abs(l.t - (k + 1) * half)).toBeLessThan(1e-4);
      });
  });

  it('a moment that changes sign carries it back from a stop', () => {
    const run = swing(
      {
        moment: { x: [-10, 10], y: [10, -10] },
        low: -1,
        high: 0.5,
        initial: -0.9,
        restitution: 0.8,
      },
      8,
    );
    expect(words(run).slice(0, 4)).toEqual(['rising', 'falling', 'rising', 'falling']);
    // A guard ends its step just past zero: some 1e-7 rad into the stop.
    const angle = run.series('arm.angle')!.v;
    expect(Math.max(...angle)).toBeLessThan(0.5 + 1e-6);
  });
});
