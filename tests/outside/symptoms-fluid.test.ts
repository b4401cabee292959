/**
 * Faults of the oil and of what it does to valves and seals, as they show, each against the run of the
 * same circuit without the fault. Where no source is named: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { simulate } from '@wheelwell/core';
import type { Run } from '@wheelwell/core';
import { at, gauge, PSI } from '../support/one-jack.js';
import { door, hosts } from '../support/fault-hosts.js';
import { leg, lever, swing, type SmallSwing } from '../support/small-swing.js';

type Fault = readonly [fault: string, on: string, severity?: number];
const run = (host: SmallSwing, ...faults: readonly Fault[]): Run =>
  simulate(host.scenario, {
    faults: faults.map(([fault, on, severity = 1]) => ({ fault, on, severity })),
  });
const time = (r: Run, way: 'up' | 'down'): number =>
  r.timings.find((t) => t.direction === way)?.total ?? NaN;
const plain = swing('plain');
const tubes = {
  up: { is: 'line', bore: '7 mm', length: '4 m' },
  down: { is: 'line', bore: '7 mm', length: '4 m' },
};
const lines = swing('lines', {
  between: tubes,
  steps: [lever(0.2, 'up'), lever(25, 'down')],
  duration: 60,
});
/** Pressure that supply and lines take while the leg rises, and what the falling leg pushes back through its line, Pa. */
const moving = (r: Run): readonly [number, number] => [
  gauge(r, 'pressure', 2),
  gauge(r, 'up', 25.9) - gauge(r, 'tank', 25.9),
];

/** A selector with tight seats: the lands of a spool would let what is trapped out in seconds. */
const tight = {
  is: 'selector-valve',
  ports: {
    pressure: 'pressure',
    return: 'selector-return',
    up: 'selector-up',
    down: 'selector-down',
  },
  bore: '6 mm',
  leak: '1e-17 m^3/(s Pa)',
};

describe('air in the system', () => {
  const host = hosts.find((h) => h.name === 'hand-pump')!;
  const [sound, airy] = [run(host), run(host, ['free-air', 'fluid'])];
  const strokes = (r: Run): number => at(r, 'supply.strokes', 0.2 + time(r, 'up'));
  it('needs more strokes', () => {
    expect(strokes(airy)).toBeGreaterThan(strokes(sound) + 0.3);
  });
  it('the gauge rises slowly', () => {
    // From the start of the stand to 800 psi against a shut line.
    const first = (r: Run): number => {
      const s = r.series('pressure.pressure')!;
      return s.t[s.v.findIndex((p) => p > 101_325 + 800 * PSI)];
    };
    expect(first(run(plain, ['free-air', 'fluid']))).toBeGreaterThan(3 * first(run(plain)));
  });
});

describe('cold oil', () => {
  const sound = run(lines);
  it('moving pressure is up both ways while times stay, as long as no limit is reached', () => {
    const cool = run(lines, ['cold-oil', 'fluid', 0.5]);
    expect(moving(cool)[0]).toBeGreaterThan(moving(sound)[0] + 30 * PSI);
    expect(moving(cool)[1]).toBeGreaterThan(moving(sound)[1] + 15 * PSI);
    expect(time(cool, 'up')).toBeLessThan(1.01 * time(sound, 'up'));
  });
  it('at the limit of the supply both ways are slow', () => {
    const cold = run(lines, ['cold-oil', 'fluid']);
    for (const way of ['up', 'down'] as const)
      expect(time(cold, way)).toBeGreaterThan(1.5 * time(sound, way));
  });
  it('leaks get smaller: less flow at stall', () => {
    const worn: Fault = ['piston-seal-bypass', 'jack'];
    const leak = (r: Run): number => at(r, 'jack.bypass', 20);
    expect(leak(run(lines, worn, ['cold-oil', 'fluid', 0.5]))).toBeLessThan(
      0.5 * leak(run(lines, worn)),
    );
  });
});

describe('too thick an oil', () => {
  const sound = run(lines);
  it('is cold oil on a warm day', () => {
    const thick = run(lines, ['oil-too-thick', 'fluid']);
    expect(moving(thick)[0]).toBeGreaterThan(moving(sound)[0] + 30 * PSI);
    expect(moving(thick)[1]).toBeGreaterThan(moving(sound)[1] + 15 * PSI);
    expect(time(thick, 'up')).toBeLessThan(1.01 * time(sound, 'up'));
  });
  it('and worse in the cold, where the right oil still manages', () => {
    const cold: Fault = ['cold-oil', 'fluid', 0.7];
    const thick = run(lines, cold, ['oil-too-thick', 'fluid']);
    expect(time(thick, 'up')).toBeGreaterThan(1.3 * time(run(lines, cold), 'up'));
  });
});

describe('too thin an oil', () => {
  const worn: Fault = ['piston-seal-bypass', 'jack', 0.5];
  const [right, thin] = [run(plain, worn), run(plain, worn, ['oil-too-thin', 'fluid'])];
  it('every leak is larger: more flow at stall, later up', () => {
    expect(at(thin, 'jack.bypass', 6.5)).toBeGreaterThan(2 * at(right, 'jack.bypass', 6.5));
    expect(time(thin, 'up')).toBeGreaterThan(time(right, 'up') + 0.1);
  });
});

describe('oil of the wrong base (US Army course AL0907; how it goes on: common practice, no source)', () => {
  const sound = run(plain);
  const [swollen, soft] = [0.5, 1].map((s) => run(plain, ['wrong-base-fluid', 'jack', s]));
  it('first the actuator sticks, and nothing leaks', () => {
    expect(gauge(swollen, 'up', 2)).toBeGreaterThan(gauge(sound, 'up', 2) + 50 * PSI);
    expect(at(swollen, 'jack.bypass', 6.5)).toBeLessThan(1.1 * at(sound, 'jack.bypass', 6.5));
  });
  it('then it leaks too, and is late', () => {
    expect(at(soft, 'jack.bypass', 6.5)).toBeGreaterThan(100 * at(sound, 'jack.bypass', 6.5));
    expect(time(soft, 'up')).toBeGreaterThan(time(sound, 'up') + 0.05);
  });
});

describe('particles in the oil (NTSB report ERA09IA338: gear hung up; amounts: common practice, no source)', () => {
  const host = hosts.find((h) => h.name === 'door')!;
  const sound = run(host);
  const locked = (r: Run): number => r.timings[0].locked;
  it('hang what one valve feeds and leave the rest alone', () => {
    const hung = run(host, ['contaminated-oil', 'close-valve']);
    expect(locked(hung)).toBeLessThan(locked(sound) + 0.02);
    // Not home before the lever goes down again.
    expect(time(hung, 'up')).toBeNaN();
    expect(time(sound, 'up')).toBeLessThan(6);
  });
  it('wherever they lodge: in a restrictor’s check, more pressure going up', () => {
    const hung = run(plain, ['contaminated-oil', 'restrictor']);
    expect(gauge(hung, 'up', 2)).toBeGreaterThan(gauge(run(plain), 'up', 2) + 50 * PSI);
    expect(time(hung, 'down')).toBeCloseTo(time(run(plain), 'down'), 2);
  });
});

describe('water in the oil (NTSB report ANC20LA013: a corroded valve; amounts: common practice, no source)', () => {
  const speed = (t: number, rpm: number): Record<string, string> => ({
    at: `${t} s`,
    device: 'supply',
    input: 'speed',
    value: `${rpm} rpm`,
  });
  const host = swing('pump with its check valve', {
    parts: {
      supply: {
        is: 'engine-pump',
        ports: { inlet: 'suction', outlet: 'stand' },
        displacement: '0.36 in^3/rev',
        'rated-speed': '2000 rpm',
      },
    },
    between: { delivery: { is: 'check-valve' } },
    steps: [speed(0.05, 2000), lever(0.2, 'up'), speed(5, 0)],
  });
  const [sound, rusty] = [run(host), run(host, ['water-in-oil', 'in-delivery'])];
  it('the valve is stiff: the way through it costs pressure', () => {
    const drop = (r: Run): number => gauge(r, 'stand', 1.2) - gauge(r, 'pressure', 1.2);
    expect(drop(rusty)).toBeGreaterThan(drop(sound) + 100 * PSI);
  });
  it('and not tight: pressure goes as soon as the pump stops', () => {
    // Two seconds after: on its way down the valve still opens and shuts, and no two steps agree when.
    expect(gauge(sound, 'pressure', 7)).toBeGreaterThan(800 * PSI);
    expect(gauge(rusty, 'pressure', 7)).toBeLessThan(0.3 * gauge(sound, 'pressure', 7));
  });
});

describe('trapped oil that has cooled (owners’ public forum; one to three strokes: the same)', () => {
  // Gear up and locked, its door held shut by oil alone, the lever in neutral; at 3 s somebody pumps.
  const host = swing('door held by oil', {
    ...door,
    parts: {
      ...door.parts,
      selector: tight,
      supply: {
        is: 'hand-pump',
        ports: { inlet: 'suction', outlet: 'stand' },
        'stroke-volume': '12 cm^3',
      },
    },
    between: { delivery: { is: 'check-valve' } },
    mechanisms: {
      leg: { ...leg, initial: '90 deg' },
      door: { ...door.mechanisms.door, initial: '0 deg' },
    },
    steps: [lever(3, 'up'), { at: '3.3 s', device: 'supply', input: 'pumping', value: 'on' }],
    duration: 12,
  });
  const [same, cold] = [run(host), run(host, ['thermal-contraction', 'fluid', 0.5])];
  const droop = (r: Run): number => (at(r, 'door.angle', 2.9) * 180) / Math.PI;
  it('lets the door droop; at one temperature it does not', () => {
    // A little: oil at no pressure is soft with its air.
    expect(droop(same)).toBeLessThan(1);
    expect(droop(cold)).toBeGreaterThan(4);
  });
  it('one to three strokes bring it home', () => {
    const home = cold.log.find((e) => e.t > 3.3 && e.device === 'door' && e.to === 'at closed');
    const strokes = at(cold, 'supply.strokes', home?.t ?? Infinity);
    expect(strokes).toBeGreaterThan(0.3);
    expect(strokes).toBeLessThan(3);
  });
});

describe('trapped oil that has warmed (a home builders’ public archive: both gauges high, the pump refuses)', () => {
  const host = (guard: boolean): SmallSwing =>
    swing(`shut in, ${guard ? 'with' : 'without'} thermal relief`, {
      parts: {
        selector: tight,
        switch: {
          is: 'pressure-switch',
          ports: { pressure: 'up' },
          opens: '600 psi',
          closes: '400 psi',
        },
        ...(guard && {
          guard: {
            is: 'thermal-relief',
            ports: { inlet: 'up', outlet: 'tank' },
            crack: '1500 psi',
            full: '1650 psi',
          },
        }),
        supply: {
          is: 'ground-supply',
          ports: { inlet: 'suction', outlet: 'stand' },
          flow: '3 gal/min',
          pressure: '1000 psi',
        },
      },
      steps: [lever(2, 'down')],
      duration: 4,
    });
  const [cool, warm] = [run(host(false)), run(host(false), ['thermal-expansion', 'fluid', 0.5])];
  it('both gauges are high before anything is switched on, and the switch of the pump is open', () => {
    for (const line of ['up', 'down']) {
      expect(gauge(cool, line, 1)).toBeLessThan(20 * PSI);
      expect(gauge(warm, line, 1)).toBeGreaterThan(600 * PSI);
    }
    const opens = (r: Run): boolean =>
      r.log.some((e) => e.device === 'switch' && e.to === 'open' && e.t < 1);
    expect(opens(cool)).toBe(false);
    expect(opens(warm)).toBe(true);
  });
  it('as expansion times bulk modulus says, less what air and play give', () => {
    // 8.3e-4 per K x 10 K, less 0.5 % of air that is squeezed into next to nothing, x some 1.8 GPa.
    // The piston shifts within the play of the downlock until both sides balance: up to a third less.
    const rigid = (8.3e-4 * 10 - 0.005) * 1.8e9;
    expect(gauge(warm, 'up', 1)).toBeLessThan(1.05 * rigid);
    expect(gauge(warm, 'up', 1)).toBeGreaterThan(0.67 * rigid);
  });
  it('opening the way home cures it at once', () => {
    expect(gauge(warm, 'up', 3)).toBeLessThan(20 * PSI);
  });
  it('a thermal relief valve holds the line at its setting', () => {
    const fault: Fault = ['thermal-expansion', 'fluid'];
    const [guarded, unguarded] = [run(host(true), fault), run(host(false), fault)];
    expect(gauge(guarded, 'up', 1.9)).toBeLessThan(1700 * PSI);
    expect(gauge(unguarded, 'up', 1.9)).toBeGreaterThan(2000 * PSI);
  });
});
