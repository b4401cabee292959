/**
 * Statics of the wedge: a body pressed on a ramp frees itself only where the tangent of the ramp's
 * angle is above the friction coefficient (any text on engineering mechanics: angle of repose), and
 * F tan(a - phi) is then what pushes it out. Played by the engine on a real leg with a broken link.
 */
import { describe, expect, it } from 'vitest';
import { catalogues } from '../../packages/core/src/index.js';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { rampLoad, rampMargin } from '../../packages/core/src/mechanism/index.js';
import { gasForce } from '../../packages/core/src/mechanism/pose.js';
import { aircraft } from '../support/aircraft.js';

const DEG = Math.PI / 180;
const { scenario } = aircraft('hedgelark');
const leg = scenario.mechanisms['left-leg'].parameters;

/** The leg alone on its ramp: no weight, no bungee, no other friction, no hook, nothing in the jack. */
function alone(angle: number, friction: number, staticRatio = 1) {
  const still = {
    mass: 0.5,
    cog: 0.01,
    slidingMass: 0,
    assistMoment: 0,
    assistRate: 0,
    friction: 0,
  };
  return {
    ...leg,
    ...still,
    rampAngle: angle,
    rampFriction: friction,
    linkShare: 0,
    staticRatio,
  };
}

describe('a tyre on a ramp in the bay', () => {
  it('needs no more and no less than the wedge: F tan(a - phi) out, F tan(a + phi) in', () => {
    for (const a of [5, 14, 30])
      for (const mu of [0.05, 0.15, 0.4]) {
        const p = alone(a * DEG, mu);
        const angle = 90 * DEG;
        const squeeze = 1.12 * Math.tan(a * DEG) * (angle - 84 * DEG);
        const force = gasForce(p, squeeze);
        const { moment, friction } = rampLoad(p, angle);
        const phi = Math.atan(mu);
        expect(-moment - friction).toBeCloseTo(1.12 * force * Math.tan(a * DEG - phi), 6);
        expect(-moment + friction).toBeCloseTo(1.12 * force * Math.tan(a * DEG + phi), 6);
      }
  });

  it('frees itself just where tan(a) passes the friction coefficient', () => {
    const mu = 0.2;
    const edge = Math.atan(mu);
    expect(rampMargin(alone(edge, mu))!.margin).toBeCloseTo(0, 12);
    expect(rampMargin(alone(edge, mu))!.moment).toBeCloseTo(0, 6);
    const moves = (angle: number, ratio = 1): boolean => {
      const mechanisms = {
        ...scenario.mechanisms,
        'left-leg': { ...scenario.mechanisms['left-leg'], parameters: alone(angle, mu, ratio) },
      };
      const { 'left-uplock': hook, 'left-leg-jack': jack } = scenario.components;
      const components = {
        ...scenario.components,
        'left-uplock': { ...hook, parameters: { ...hook.parameters, gap: 0.5 } },
        'left-leg-jack': {
          ...jack,
          parameters: { ...jack.parameters, seals: 0, pressureFriction: 0 },
        },
      };
      const steps = [{ at: 0.2, device: 'selector', input: 'lever', value: 2, text: 'down' }];
      const card = { ...scenario.cards['blow-down'], steps, duration: 3 };
      const made = { ...scenario, mechanisms, components, cards: { 'blow-down': card } };
      const run = simulateWith(catalogues, made, { card: 'blow-down' });
      return run.log.some((e) => e.device === 'left-leg' && e.to === 'falling');
    };
    expect(moves(edge + 0.02 * DEG)).toBe(true);
    expect(moves(edge - 0.02 * DEG)).toBe(false);
    // With more friction at rest than in motion the margin still says what the engine does.
    let [low, high] = [edge, edge + 10 * DEG];
    for (let i = 0; i < 40; i++) {
      const middle = 0.5 * (low + high);
      if (rampMargin(alone(middle, mu, 1.2))!.margin > 0) high = middle;
      else low = middle;
    }
    expect(high).toBeGreaterThan(edge + DEG);
    expect(moves(high + 0.05 * DEG, 1.2)).toBe(true);
    expect(moves(low - 0.05 * DEG, 1.2)).toBe(false);
  });

  it('is no load for a leg whose link is whole', () => {
    expect(rampLoad({ ...leg, linkShare: 1 }, 92 * DEG)).toEqual({
      force: 0,
      moment: 0,
      friction: 0,
    });
  });
});
