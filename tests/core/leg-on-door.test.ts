/**
 * A leg on its own door against statics and an energy balance by hand (virtual work: a moment m on
 * the door is ratio x m on the leg; engineering mechanics textbooks).
 */
import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { coordinate, flat, rig } from '../support/rig.js';

const RATIO = 2;
const MEETS = 0.5;
/** Holds the door shut, N m. */
const SHUT = 40;

/** The leg is let go at 0.8 rad, pressed down by `load`, N m. */
function drop(load: number, damping = 60) {
  const { scenario, with: catalogues } = rig({
    parts: {
      contact: {
        is: 'leg-on-door',
        links: { leg: { to: 'leg' }, door: { to: 'door' } },
        parameters: { meets: MEETS, ratio: RATIO, stiffness: 3000, damping, onset: 0.01 },
      },
    },
    coordinates: {
      leg: coordinate({ inertia: flat(20), moment: flat(-load), high: 1.5, initial: 0.8 }),
      door: coordinate({ inertia: flat(2), moment: flat(-SHUT), high: 1.5, damping: 30 }),
    },
    duration: 12,
  });
  return simulateWith(catalogues, scenario, { tolerance: 'fine' });
}
const last = (run: ReturnType<typeof drop>, channel: string): number =>
  run.series(channel)?.v.at(-1) ?? NaN;

describe('a leg that comes down on its door', () => {
  it('hangs on it while its load is less than the ratio times what holds the door', () => {
    // It comes to rest: a slow leg, so that it does not carry the door away by its speed.
    const run = drop(30, 2000);
    expect(last(run, 'leg.angle')).toBeGreaterThan(0.4);
    expect(last(run, 'leg.speed')).toBeCloseTo(0, 3);
    expect(RATIO * last(run, 'contact.press')).toBeCloseTo(30, 1);
    expect(run.log.some((e) => e.device === 'contact' && e.to === 'pushing')).toBe(true);
  });

  it('comes down through it with more, and the door stands open by the ratio of what the leg has passed', () => {
    const run = drop(2.5 * RATIO * SHUT);
    expect(last(run, 'leg.angle')).toBeCloseTo(0, 6);
    // At rest the tyre holds the door: its spring is pressed by what shuts the door.
    expect(last(run, 'contact.press')).toBeCloseTo(SHUT, 1);
    expect(last(run, 'door.angle')).toBeCloseTo(RATIO * MEETS - SHUT / 3000, 1);
  });
});
