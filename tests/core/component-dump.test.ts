/** Dump valve at work, and a whole emergency line from bottle to jack. */
import { describe, expect, it } from 'vitest';
import type { CardStep, Parameters } from '../../packages/core/src/define/index.js';
import type { SimulatedRun } from '../../packages/core/src/machine/index.js';
import {
  around,
  gasBench,
  handle,
  stand,
  tank,
  vent,
  HALF,
  OPEN,
  type GasBench,
} from '../support/gas-bench.js';
import { AMBIENT, at, gauge, last, told, when } from '../support/one-jack.js';
import { coordinate, flat, step } from '../support/rig.js';

const pull = [handle(0.2, OPEN)];

describe('a dump valve', () => {
  const PILOT = 1.4e6;
  const dumped = (
    parameters: Parameters,
    steps: readonly CardStep[] = [],
    own: GasBench & { to?: string } = {},
  ): SimulatedRun =>
    gasBench({
      steps,
      ...own,
      extra: {
        tank,
        stand: stand('up'),
        bleed: vent('gas', 1e-3),
        dump: {
          is: 'dump-valve',
          ports: { line: 'up', return: own.to ?? 'tank', pilot: 'gas' },
          parameters: { pilot: PILOT, ...parameters },
        },
      },
    });
  const lever = (t: number, value: number): CardStep => step(t, 'dump', 'lever', value);

  it('opens by its lever, in its time, and shuts again', () => {
    const run = dumped({ openingTime: 0.5 }, [lever(0.5, 1), lever(1.5, 0)]);
    expect(told(run, 'dump')).toEqual(['opening', 'open', 'closing', 'closed']);
    expect(when(run, 'dump', 'open')).toBeCloseTo(1, 4);
    expect(gauge(run, 'up', 0.4)).toBeGreaterThan(4.5e6);
    // 0.1 L/s of oil through 5 mm: dp = rho (q / Cd A)^2 / 2, some 30 kPa with Cd of 0.6 to 0.7.
    expect(gauge(run, 'up', 1.4)).toBeLessThan(4e4);
    expect(last(run, 'up.pressure') - AMBIENT).toBeGreaterThan(4.5e6);
  });

  it('opens by gas at its pilot port, and shuts when that has fallen to half', () => {
    const bottle = { volume: 1e-4, charge: 4e6 };
    const run = dumped({}, [handle(0.2, OPEN)], { bottle, duration: 20 });
    expect(told(run, 'dump')).toEqual(['opening', 'open', 'closing', 'closed']);
    const pilot = (mode: string): number[] =>
      around(run, 'gas.pressure', when(run, 'dump', mode)).map((p) => p - AMBIENT);
    expect(pilot('opening')[0]).toBeLessThan(PILOT);
    expect(pilot('opening')[1]).toBeGreaterThan(PILOT);
    expect(pilot('closing')[0]).toBeGreaterThan(0.5 * PILOT);
    expect(pilot('closing')[1]).toBeLessThan(0.5 * PILOT);
  });

  it('with its cable broken answers its pilot only', () => {
    expect(told(dumped({ linked: false }, [lever(0.5, 1)]), 'dump')).toEqual([]);
    const piloted = dumped({ linked: false }, [lever(0.5, 1), handle(1, OPEN)]);
    expect(when(piloted, 'dump', 'opening')).toBeGreaterThan(1);
  });

  it('with its lever pulled stays open whatever the pilot does', () => {
    const bottle = { volume: 1e-4, charge: 4e6 };
    const run = dumped({}, [lever(0.1, 1), handle(0.2, OPEN)], { bottle, duration: 20 });
    expect(told(run, 'dump')).toEqual(['opening', 'open']);
  });

  it('passes the share it opens, and what it leaves ajar', () => {
    const conductance = (p: Parameters, steps: CardStep[]): number => {
      const run = dumped({ bore: 0.002, ...p }, steps);
      return last(run, 'dump.through') / Math.sqrt(last(run, 'up.pressure') - AMBIENT);
    };
    const full = conductance({}, [lever(0.5, 1)]);
    expect(conductance({ opens: 0.25 }, [lever(0.5, 1)]) / full).toBeCloseTo(0.25, 3);
    expect(conductance({ ajar: 0.25 }, []) / full).toBeCloseTo(0.25, 3);
    expect(conductance({ opens: 0 }, [lever(0.5, 1)]) / full).toBeLessThan(1e-3);
  });

  it('overboard takes the oil out of the aircraft', () => {
    const run = dumped({}, [lever(0.5, 1)], { to: 'outside' });
    const lost = last(run, 'outside.content') - at(run, 'outside.content', 0);
    expect(lost).toBeGreaterThan(2e-4);
    expect(at(run, 'tank.content', 0) - last(run, 'tank.content')).toBeCloseTo(lost, 6);
    const home = dumped({}, [lever(0.5, 1)]);
    expect(last(home, 'tank.content')).toBeCloseTo(at(home, 'tank.content', 0), 6);
  });
});

describe('a bottle, its valve, a line, a check, a shuttle, a jack, and a dump by pilot', () => {
  const blown = (parts: Record<string, Parameters>, steps = pull): SimulatedRun =>
    gasBench({
      steps,
      duration: 8,
      bottle: parts.bottle,
      valve: parts.valve,
      extra: {
        tank,
        pipe: { is: 'gas-line', ports: { inlet: 'gas', outlet: 'end' }, parameters: { length: 3 } },
        check: { is: 'gas-check-valve', ports: { inlet: 'end', outlet: 'far' } },
        shuttle: {
          is: 'shuttle-valve',
          ports: { normal: 'oil', emergency: 'far', outlet: 'down' },
          parameters: parts.shuttle,
        },
        oil: { is: 'orifice', ports: { inlet: 'oil', outlet: 'tank' }, parameters: { bore: 3e-3 } },
        dump: {
          is: 'dump-valve',
          ports: { line: 'up', return: 'tank', pilot: 'far' },
          parameters: parts.dump,
        },
        jack: {
          is: 'double-acting-actuator',
          ports: { head: 'down', rod: 'up' },
          parameters: { bore: 0.05, rodDiameter: 0.025, stroke: 0.3 },
          links: { rod: { to: 'load', travel: { x: [0, 0.3], y: [0, 0.3] } } },
        },
      },
      coordinates: {
        load: coordinate({ high: 0.3, inertia: flat(200), moment: flat(-3000), friction: 100 }),
      },
    });
  const sound = blown({});

  it('extends the jack, everything in its order, while the bottle falls', () => {
    const order = [
      ['valve', 'opening'],
      ['shuttle', 'shifting'],
      ['shuttle', 'emergency'],
      ['dump', 'opening'],
      ['load', 'rising'],
      ['load', 'at high'],
    ].map(([device, to]) => when(sound, device, to));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order.every((t) => t > 0)).toBe(true);
    expect(sound.log.find((e) => e.device === 'load' && e.to === 'rising')?.cause).toContain(
      'shuttle',
    );
    // Boyle: a litre into 0.59 L of jack and some 0.06 L of line leaves at most 0.61 of the charge.
    const swept = 0.25 * Math.PI * 0.05 ** 2 * 0.3;
    const share = (last(sound, 'bottle.gauge') + AMBIENT) / (12e6 + AMBIENT);
    expect(share).toBeLessThan(1e-3 / (1e-3 + swept));
    expect(share).toBeGreaterThan((1e-3 / (1e-3 + swept + 1e-4)) ** 1.4);
    // The weight needs 1.6 MPa under the piston; the oil has gone home.
    expect(gauge(sound, 'down', 8)).toBeGreaterThan(1.6e6);
    expect(last(sound, 'up.pressure') - AMBIENT).toBeLessThan(2e4);
  });

  it.each<[string, Record<string, Parameters>]>([
    ['with its shuttle stuck normal', { shuttle: { stuck: 'normal' } }],
    ['with its cable broken', { valve: { linked: false } }],
    ['with a charge below what the weight needs', { bottle: { charge: 1.5e6 } }],
    ['with its dump valve seized', { dump: { opens: 0 } }],
  ])('leaves the jack where it was %s', (_, parts) => {
    const run = blown(parts);
    expect(when(run, 'load', 'at high')).toBeNaN();
    // Gas may press the oil together, no more.
    expect(last(run, 'load.angle')).toBeLessThan(0.003);
  });

  it('is slower with the handle half way or half the charge, and done all the same', () => {
    const arrives = when(sound, 'load', 'at high');
    expect(when(blown({}, [handle(0.2, HALF)]), 'load', 'at high')).toBeGreaterThan(arrives + 0.3);
    const weak = blown({ bottle: { charge: 6e6 } });
    expect(when(weak, 'load', 'at high')).toBeGreaterThan(arrives + 0.1);
  });
});
