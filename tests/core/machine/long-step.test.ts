/**
 * Steps are held short only where something might be strided over: a galled place that the rod nears, a tank that is
 * just being emptied. What hangs, or is dry, costs no more steps than what goes. Demos' data, invented.
 */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../packages/core/src/index.js';
import { expectedSwings } from '../../../packages/core/src/observation/index.js';
import { aircraft } from '../../support/aircraft.js';

const { scenario: gear } = aircraft('hedgelark');
const play = (fault: string, on: string, severity: number, tolerance?: 'draft' | 'fine') =>
  simulate(gear, {
    card: 'healthy',
    faults: [{ fault, on, severity }],
    ...(tolerance && { tolerance }),
  });
const attempts = ({ statistics: s }: ReturnType<typeof play>): number => s.steps + s.rejected;

describe('steps', () => {
  const sound = attempts(simulate(gear, { card: 'healthy' }));

  it.each([
    ['bore-galled', 'left-leg-jack'],
    ['seal-fragment-jam', 'left-leg-jack'],
    ['seal-iced', 'left-door-jack'],
    ['reservoir-low', 'tank'],
    ['fitting-leak', 'left-up-line'],
  ])('are not many where %s on %s leaves the gear hanging', (fault, on) => {
    const run = play(fault, on, 1);
    expect(expectedSwings(run)[0].times.gear?.total).toBeUndefined();
    expect(attempts(run)).toBeLessThan(sound);
  });

  it.each([
    ['left-leg-jack', 0.1],
    ['left-door-jack', 0.3],
    ['right-door-jack', 0.3],
  ])('do not miss what %s galled by %d costs', (on, severity) => {
    const total = (tolerance: 'draft' | 'fine'): number =>
      expectedSwings(play('bore-galled', on, severity, tolerance))[0].times.gear?.total ?? NaN;
    expect(total('fine')).not.toBeCloseTo(
      expectedSwings(simulate(gear, { card: 'healthy' }))[0].times.gear.total!,
      3,
    );
    // A draft is within 2 ms of the exact one, as where nothing is galled.
    expect(Math.abs(total('draft') - total('fine'))).toBeLessThan(2e-3);
  });
});
