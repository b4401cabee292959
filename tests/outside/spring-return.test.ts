/**
 * Spring return of the single-acting actuator.
 *
 * Source: a mass on a linear spring (Hooke), any textbook of mechanics. From rest at x0 against
 * preload F0 and rate c, with w = sqrt(c / m) and s = F0 / c: home after acos(s / (x0 + s)) / w at
 * w sqrt((x0 + s)^2 - s^2); even friction F takes F / c from s. Break-out: p A = F0 + F.
 */
import { describe, expect, it } from 'vitest';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import { coordinate, device, flat, rig } from '../support/rig.js';

const AMBIENT = 101_325;
const MASS = 2;
const PRELOAD = 100;
const RATE = 5000;
const FRICTION = 20;
const STROKE = 0.1;
const BORE = 0.03;
const ROD = 0.012;
const HEAD = (Math.PI / 4) * BORE ** 2;
const ANNULUS = HEAD - (Math.PI / 4) * ROD ** 2;

/** A large vessel, so that the oil offers no resistance. */
const vessel = (pressure: number) =>
  device('vessel', {
    ports: { out: { title: 'out', volume: 0 } },
    vented: { ports: ['out'], pressure: () => pressure, content: () => 1 },
  });

function jack(pushes: string, pressure: number, initial: number, seals: number): SimulatedRun {
  const made = rig({
    parts: {
      vessel: { is: vessel(pressure), ports: { out: 'line' } },
      jack: {
        is: 'single-acting-actuator',
        ports: { port: 'line' },
        links: { rod: { to: 'load', travel: { x: [0, STROKE], y: [0, STROKE] } } },
        parameters: {
          pushes,
          bore: BORE,
          rodDiameter: ROD,
          stroke: STROKE,
          preload: PRELOAD,
          springRate: RATE,
          seals,
          pressureFriction: 0,
          drag: 0,
        },
      },
    },
    coordinates: { load: coordinate({ high: STROKE, inertia: flat(MASS), initial }) },
    duration: 0.2,
  });
  return simulateWith(made.with, made.scenario, { tolerance: 'fine' });
}

describe.each([
  ['extend', STROKE, 'at low', HEAD],
  ['retract', 0, 'at high', ANNULUS],
])('oil that would %s it gone', (pushes, from, to, area) => {
  it.each([0, FRICTION])('comes home as a mass on a spring does, seals %d N', (seals) => {
    const s = (PRELOAD - seals) / RATE;
    const w = Math.sqrt(RATE / MASS);
    const run = jack(pushes, AMBIENT, from, seals);
    const arrival = run.log.find((e) => e.device === 'load' && e.to === to)!;
    expect(Math.abs(arrival.t / (Math.acos(s / (STROKE + s)) / w) - 1)).toBeLessThan(1e-4);
    const speed = w * Math.sqrt((STROKE + s) ** 2 - s ** 2);
    expect(Math.abs(arrival.speed / speed - 1)).toBeLessThan(1e-4);
  });

  it('breaks out where the pressure force is preload and friction together', () => {
    const pressure = (PRELOAD + FRICTION) / area;
    const home = STROKE - from;
    const moved = (share: number): number => {
      const angle = jack(pushes, AMBIENT + share * pressure, home, FRICTION).series('load.angle')!;
      return Math.abs(angle.v.at(-1)! - home);
    };
    expect(moved(0.999)).toBe(0);
    expect(moved(1.001)).toBeGreaterThan(1e-6);
  });

  it('keeps energy, its spring counted', () => {
    const { energy } = jack(pushes, AMBIENT, from, FRICTION).account();
    const spring = 0.5 * RATE * ((STROKE + PRELOAD / RATE) ** 2 - (PRELOAD / RATE) ** 2);
    expect(Math.abs(energy.rubbed / (FRICTION * STROKE) - 1)).toBeLessThan(1e-4);
    expect(Math.abs(energy.struck / (spring - FRICTION * STROKE) - 1)).toBeLessThan(1e-4);
    expect(Math.abs(energy.gap)).toBeLessThan(1e-4 * spring);
  });
});
