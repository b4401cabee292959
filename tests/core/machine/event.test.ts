import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import { coordinate, device, flat, rig } from '../../support/rig.js';

describe('the place of an event', () => {
  /** Trips at 0.5 rad, which a part with 1 rad/s2 reaches after 1 s. */
  const trip = device('trip', {
    links: { leg: { title: 'leg', shape: 'plain' } },
    modes: {
      before: {
        title: 'before',
        guards: [{ to: 'after', when: (d) => d.travel(0) - 0.5, cause: 'there', reads: ['leg'] }],
      },
      after: { title: 'after' },
    },
  });
  /** A guard that stands just below zero all the time. */
  const nearly = device('nearly', {
    modes: {
      calm: { title: 'calm', guards: [{ to: 'wild', when: () => -1e-9, cause: 'never' }] },
      wild: { title: 'wild' },
    },
  });

  it('is not blurred by a guard of another device that stands close below zero', () => {
    const { scenario, with: catalogues } = rig({
      parts: { nearly: { is: nearly }, trip: { is: trip, links: { leg: { to: 'leg' } } } },
      coordinates: { leg: coordinate({ moment: flat(1) }) },
      duration: 2,
    });
    // Bracketed to 50, 1 and 0.001 us, and passed by a few of those; the parabola is exact for these methods.
    const late = { draft: 1e-4, normal: 5e-6, fine: 5e-9 };
    for (const tolerance of ['draft', 'normal', 'fine'] as const) {
      const { log } = simulateWith(catalogues, scenario, { tolerance });
      const { t } = log.find((e) => e.device === 'trip' && e.to === 'after')!;
      expect(Math.abs(t - 1)).toBeLessThan(late[tolerance]);
    }
  });
});

describe('a mass that something stiff holds back', () => {
  it('has a sensible speed inside a long step, and stops at its stop', () => {
    // 1e4 N m against 1e5 N m s/rad: 0.1 rad/s after some hundredths of a millisecond.
    const { scenario, with: catalogues } = rig({
      parts: {},
      coordinates: { leg: coordinate({ moment: flat(1e4), damping: 1e5 }) },
      duration: 20,
    });
    const run = simulateWith(catalogues, scenario);
    const speed = run.series('leg.speed')!;
    const arrival = run.log.find((e) => e.to === 'at high')!;
    expect(Math.abs(arrival.t - 10)).toBeLessThan(1e-3);
    const steady = [...speed.v].filter(
      (_, i) => speed.t[i] > 0.01 && speed.t[i] < arrival.t - 1e-9,
    );
    for (const v of steady) expect(Math.abs(v - 0.1)).toBeLessThan(1e-3);
    expect(Math.max(...run.series('leg.angle')!.v)).toBeLessThanOrEqual(1 + 1e-6);
  });
});
