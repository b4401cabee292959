/**
 * A leg that falls freely is a physical pendulum. Released at rest at angle a from plumb it takes
 * K(sin(a/2)) sqrt(I / (m g L)) to plumb, with K the complete elliptic integral of the first kind
 * (closed form; K(sin 45 deg) = 1.8541, any table), and arrives at sqrt(2 m g L (1 - cos a) / I).
 */
import { describe, expect, it } from 'vitest';
import { catalogues } from '../../packages/core/src/index.js';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { rig } from '../support/rig.js';

const DEG = Math.PI / 180;
const G = 9.80665;
const MASS = 82;
const ARM = 0.61;
const INERTIA = 41;

/** By the arithmetic-geometric mean (Gauss): K(k) = pi / (2 agm(1, sqrt(1 - k^2))). */
function completeElliptic(k: number): number {
  let [a, b] = [1, Math.sqrt(1 - k * k)];
  for (let i = 0; i < 8; i++) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  return Math.PI / (2 * a);
}

/** A leg of the catalogue, no friction, no oil, let go at `from`. */
function drop(
  from: number,
  own: Parameters = {},
  tolerance: 'normal' | 'fine' = 'fine',
): SimulatedRun {
  const made = rig({ parts: {}, duration: 6 });
  const defaults = Object.entries(catalogues.mechanisms.leg.parameters).map(([n, d]) => [
    n,
    d.default,
  ]);
  const parameters = {
    ...Object.fromEntries(defaults.filter(([, v]) => v !== undefined)),
    travel: 120 * DEG,
    retract: 'aft',
    mass: MASS,
    cog: ARM,
    inertia: INERTIA,
    length: 0.9,
    tyreRadius: 0.3,
    tyreWidth: 0.1,
    friction: 0,
    damping: 0,
    restitution: 0,
    initial: from,
    ...own,
  } as Parameters;
  const scenario = { ...made.scenario, mechanisms: { leg: { is: 'leg', note: '', parameters } } };
  return simulateWith({ ...made.with, mechanisms: catalogues.mechanisms }, scenario, { tolerance });
}
const arrival = (run: SimulatedRun) => run.log.find((e) => e.device === 'leg' && e.speed > 0)!;
const unit = Math.sqrt(INERTIA / (MASS * G * ARM));

describe('a leg falling freely', () => {
  it('takes 1.8541 sqrt(I/(m g L)) from horizontal to plumb', () => {
    expect(Math.abs(completeElliptic(Math.SQRT1_2) - 1.8541)).toBeLessThan(5e-5);
    expect(Math.abs(arrival(drop(90 * DEG)).t / (1.8541 * unit) - 1)).toBeLessThan(1e-4);
  });

  it.each([5, 30, 60, 110])(
    'let go at %d degrees it meets the elliptic integral and arrives with the energy of its height',
    (degrees) => {
      const from = degrees * DEG;
      const { t, speed } = arrival(drop(from));
      expect(Math.abs(t / (completeElliptic(Math.sin(from / 2)) * unit) - 1)).toBeLessThan(1e-5);
      expect(Math.abs(speed / (Math.sqrt(2 * (1 - Math.cos(from))) / unit) - 1)).toBeLessThan(1e-5);
    },
  );

  it('keeps the promised millisecond with the normal tolerance', () => {
    const exact = completeElliptic(Math.SQRT1_2) * unit;
    expect(Math.abs(arrival(drop(90 * DEG, {}, 'normal')).t - exact)).toBeLessThan(1e-3);
  });

  it('swings about plumb for small angles with the period of a pendulum', () => {
    // Plumb in the middle of the travel: a lean of -60 degrees when down.
    const run = drop(70 * DEG, { rake: -60 * DEG });
    const turns = run.log.filter((e) => e.kind === 'motion' && e.t > 0).map((e) => e.t);
    const half = 2 * completeElliptic(Math.sin(5 * DEG)) * unit;
    expect(turns.length).toBeGreaterThan(3);
    turns.forEach((t, k) => expect(Math.abs(t / ((k + 1) * half) - 1)).toBeLessThan(1e-4));
  });
});
