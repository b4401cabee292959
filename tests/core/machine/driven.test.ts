import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import type { SimulatedRun } from '../../../packages/core/src/machine/index.js';
import type { DeviceDefinition, Shape } from '../../../packages/core/src/define/index.js';
import { coordinate, device, flat, rig, type RigOptions } from '../../support/rig.js';

function play(options: RigOptions): SimulatedRun {
  const { scenario, with: catalogues } = rig(options);
  return simulateWith(catalogues, scenario, { tolerance: 'fine' });
}

const words = (run: SimulatedRun, of: string): string[] =>
  run.log.filter((e) => e.device === of).map((e) => e.to);

const line = (...points: [number, number][]): Shape => ({
  x: points.map(([x]) => x),
  y: points.map(([, y]) => y),
});

/** Twice the leader's angle over its whole travel. */
const twice = { by: 'leg', angle: line([0, 0], [1, 2]) };

describe('a mechanism driven by a linkage', () => {
  it('reflects inertia with the square of its ratio and load with the ratio', () => {
    // I = 1 + 3 x 2^2 = 13, M = 20 - 2 x 2 = 16, friction 1 + 0.5 x 2 = 2: 14/13 rad/s2.
    const run = play({
      parts: {},
      coordinates: {
        leg: coordinate({ moment: flat(20), friction: 1 }),
        door: coordinate({ inertia: flat(3), moment: flat(-2), friction: 0.5, high: 2 }),
      },
      driven: { door: twice },
      duration: 1,
    });
    const speed = run.series('leg.speed')!;
    expect(Math.abs(speed.v.at(-1)! - 14 / 13)).toBeLessThan(1e-6);
    expect(run.series('door.speed')!.v.at(-1)).toBeCloseTo(2 * speed.v.at(-1)!, 10);
    expect(run.series('door.angle')!.v.at(-1)).toBeCloseTo(
      2 * run.series('leg.angle')!.v.at(-1)!,
      10,
    );
  });

  it('follows through two linkages, and viscous damping with the square of the ratio', () => {
    // Terminal speed of 9 N m against 1 + 2 x 3^2 N m s/rad.
    const run = play({
      parts: {},
      coordinates: {
        leg: coordinate({ moment: flat(9), damping: 1, high: 10 }),
        door: coordinate({ inertia: flat(0), high: 15 }),
        fairing: coordinate({ inertia: flat(0), damping: 2, high: 30 }),
      },
      driven: {
        door: { by: 'leg', angle: line([0, 0], [10, 15]) },
        fairing: { by: 'door', angle: line([0, 0], [15, 30]) },
      },
      duration: 5,
    });
    expect(run.series('leg.speed')!.v.at(-1)).toBeCloseTo(9 / 19, 6);
    expect(run.series('fairing.speed')!.v.at(-1)).toBeCloseTo(27 / 19, 6);
  });

  it('keeps energy through a ratio that changes with the angle', () => {
    const bent: Shape = {
      x: Array.from({ length: 81 }, (_, i) => i / 40),
      y: Array.from({ length: 81 }, (_, i) => 0.5 * (i / 40) ** 2),
    };
    const run = play({
      parts: {},
      coordinates: {
        leg: coordinate({ moment: flat(4), high: 2 }),
        door: coordinate({ inertia: flat(2), moment: flat(-1), high: 2 }),
      },
      driven: { door: { by: 'leg', angle: bent } },
      duration: 1.2,
    });
    const { energy } = run.account();
    const q = run.series('leg.angle')!.v.at(-1)!;
    const w = run.series('leg.speed')!.v.at(-1)!;
    // Work of the two moments became the motion of both: 4 q - q^2/2 = w^2 (1 + 2 q^2) / 2.
    expect(0.5 * w * w * (1 + 2 * q * q)).toBeCloseTo(4 * q - 0.5 * q * q, 4);
    expect(Math.abs(energy.gap)).toBeLessThan(1e-4);
  });

  it('has words of its own: turns with the sense of its linkage, dwells, and arrives with its leader', () => {
    const shape = line(
      [0, 0],
      [0.2, 0.6],
      [0.4, 1],
      [0.45, 1],
      [0.5, 1],
      [0.55, 1],
      [0.6, 1],
      [0.8, 0.4],
      [1, 0],
    );
    const run = play({
      parts: {},
      coordinates: {
        leg: coordinate({ moment: flat(1), damping: 2 }),
        door: coordinate({ inertia: flat(0.001), high: 1.2 }),
      },
      driven: { door: { by: 'leg', angle: shape } },
      duration: 6,
    });
    const own = words(run, 'door');
    expect(own).toEqual(['rising', 'held', 'falling', 'at low']);
    const at = (to: string) => run.log.find((e) => e.device === 'door' && e.to === to && e.t > 0)!;
    expect(at('falling').cause).toBe('driven by leg');
    // The dwell runs from 0.4 to 0.6 rad of the leg; its ends are rounded over a few hundredths.
    const leg = run.series('leg.angle')!;
    const legAt = (t: number): number => leg.v[leg.t.findIndex((x) => x >= t)];
    expect(Math.abs(legAt(at('held').t) - 0.4)).toBeLessThan(0.03);
    expect(Math.abs(legAt(at('falling').t) - 0.6)).toBeLessThan(0.03);
    expect(Math.max(...run.series('door.angle')!.v)).toBeLessThan(1.002);
    expect(at('at low').speed).toBeGreaterThan(0);
  });

  it('is held by a lock that hangs on it, within the play of the lock', () => {
    const latch: DeviceDefinition = device('latch', {
      links: { door: { title: 'door', shape: 'plain' } },
      modes: {
        engaged: {
          title: 'engaged',
          bounds: { link: 'door', low: () => -1, high: () => 0.5 },
          guards: [],
        },
      },
    });
    const run = play({
      parts: { latch: { is: latch, links: { door: { to: 'door' } } } },
      coordinates: { leg: coordinate({ moment: flat(5) }), door: coordinate({ high: 2 }) },
      driven: { door: twice },
      duration: 3,
    });
    expect(run.series('door.angle')!.v.at(-1)).toBeCloseTo(0.5, 6);
    expect(run.series('leg.angle')!.v.at(-1)).toBeCloseTo(0.25, 6);
  });

  it('is held the right way round by a lock where its linkage runs backwards', () => {
    const latch = device('latch', {
      links: { door: { title: 'door', shape: 'plain' } },
      modes: {
        engaged: { title: 'engaged', bounds: { link: 'door', low: () => 1.5 }, guards: [] },
      },
    });
    const run = play({
      parts: { latch: { is: latch, links: { door: { to: 'door' } } } },
      coordinates: { leg: coordinate({ moment: flat(5) }), door: coordinate({ high: 2 }) },
      driven: { door: { by: 'leg', angle: line([0, 2], [1, 0]) } },
      duration: 3,
    });
    expect(run.series('door.angle')!.v.at(-1)).toBeCloseTo(1.5, 6);
  });
});

describe('a coordinate in the wind', () => {
  it('feels its airload times the dynamic pressure of the equivalent airspeed', () => {
    // Half rho v^2 = 0.5 x 1.225 x 40^2 = 980 Pa (rho: ISO 2533); 0.01 m3 gives 9.8 N m.
    const run = play({
      parts: {},
      coordinates: { leg: coordinate({ airload: () => flat(0.01), high: 100 }) },
      airspeed: 40,
      duration: 1,
    });
    expect(run.series('leg.speed')!.v.at(-1)).toBeCloseTo(9.8, 6);
  });

  it('does not feel it in a hangar', () => {
    const run = play({
      parts: {},
      coordinates: { leg: coordinate({ airload: () => flat(0.01) }) },
      duration: 1,
    });
    expect(run.series('leg.speed')!.v.at(-1)).toBe(0);
  });
});

describe('friction and damping against angle', () => {
  it('stops a part at the hump it cannot pass', () => {
    // 10 N m against a hump of 12 N m, 0.1 rad wide, at 0.6: what it gathers does not carry it over.
    const hump = {
      x: [-1, 0.5, 0.55, 0.6, 0.65, 0.7, 2],
      y: [9.9, 9.9, 60, 120, 60, 9.9, 9.9],
    };
    const run = play({
      parts: {},
      coordinates: { leg: coordinate({ moment: flat(10), friction: hump, high: 1.5 }) },
      duration: 20,
    });
    expect(words(run, 'leg').at(-1)).toBe('held');
    const rest = run.series('leg.angle')!.v.at(-1)!;
    expect(rest).toBeGreaterThan(0.5);
    expect(rest).toBeLessThan(0.6);
    expect(Math.abs(run.account().energy.gap)).toBeLessThan(1e-3);
  });

  it('runs at the speed that the damping of each place allows', () => {
    const run = play({
      parts: {},
      coordinates: {
        leg: coordinate({
          inertia: flat(1e-3),
          moment: flat(6),
          damping: line([-1, 1], [11, 13]),
          high: 10,
        }),
      },
      duration: 1,
    });
    const { v } = run.series('leg.speed')!;
    const angle = run.series('leg.angle')!.v.at(-1)!;
    expect(v.at(-1)! * (2 + angle)).toBeCloseTo(6, 2);
  });
});
