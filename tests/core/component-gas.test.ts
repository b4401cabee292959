/** Bottle, blow-down valve, gas check valve and gas line at work. */
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { anrDensity, gases } from '../../packages/core/src/medium/index.js';
import {
  gasBench,
  handle,
  vent,
  CLOSED,
  HALF,
  OPEN,
  ROOM,
  type GasBench,
} from '../support/gas-bench.js';
import { AMBIENT, at, last, told, when } from '../support/one-jack.js';
import { SURROUNDINGS } from '../support/sample-parameters.js';

/** Into the open air, throttled by the valve alone. */
const vented = (own: GasBench) => gasBench({ extra: { open: vent('gas', 0.01) }, ...own });

describe('a gas bottle', () => {
  it('shows its charge at the temperature at which it was read, and less in the cold', () => {
    expect(at(vented({ duration: 0.1 }), 'bottle.gauge', 0)).toBeCloseTo(12e6, 0);
    const cold = vented({ duration: 0.1, temperature: 233.15 });
    // Gay-Lussac; nitrogen at some 90 bar and -40 degC stays a few percent below it (tests/outside).
    const ideal = ((12e6 + AMBIENT) * 233.15) / ROOM - AMBIENT;
    const shown = at(cold, 'bottle.gauge', 0);
    expect(shown).toBeLessThan(ideal);
    expect(shown).toBeGreaterThan(0.9 * ideal);
    expect(at(cold, 'bottle.left', 0)).toBeCloseTo(1, 12);
    expect(at(cold, 'bottle.warmth', 0)).toBeCloseTo(233.15, 9);
  });

  it('gives what its reading of gas left says', () => {
    const run = vented({ steps: [handle(0.2, OPEN)], duration: 4 });
    const charge = at(run, 'bottle.store.gas', 0);
    // Boyle: a litre at 121 times the ambient holds some 120 litres of free gas.
    expect(charge).toBeGreaterThan(0.11);
    expect(charge).toBeLessThan(0.13);
    const left = last(run, 'bottle.left');
    expect(left).toBeLessThan(0.6);
    const out = last(run, 'outside.gas') - at(run, 'outside.gas', 0);
    // The bottle's neck holds a few cubic centimetres under pressure.
    expect((charge * (1 - left)) / out).toBeCloseTo(1, 2);
  });

  it('cools as it empties, never below the adiabatic line, and its wall warms it again', () => {
    const run = vented({ steps: [handle(0.2, OPEN), handle(2, CLOSED)], duration: 60 });
    const coldest = at(run, 'bottle.warmth', 2.4);
    const share = (at(run, 'bottle.gauge', 2.4) + AMBIENT) / (12e6 + AMBIENT);
    // T / T0 = (p / p0)^(0.4 / 1.4), ideal diatomic gas; a hundredth for the real one.
    expect(coldest).toBeGreaterThan(0.99 * ROOM * share ** (0.4 / 1.4));
    expect(coldest).toBeLessThan(ROOM - 25);
    expect(last(run, 'bottle.warmth')).toBeGreaterThan(coldest + 0.7 * (ROOM - coldest));
    expect(last(run, 'bottle.gauge')).toBeGreaterThan(at(run, 'bottle.gauge', 2.4));
  });

  // Vapour pressure of carbon dioxide at 70 degF: 853 psia (from memory of gas suppliers' tables).
  it('refuses a charge that would be liquid when it is read', () => {
    const complaint = (gas: string, charge: number, chargeTemperature = 294.26): number =>
      components['gas-bottle'].check!({ gas, charge, chargeTemperature }).length;
    const vapour = 853 * 6894.757 - AMBIENT;
    expect(complaint('carbon-dioxide', 0.98 * vapour)).toBe(0);
    expect(complaint('carbon-dioxide', 1.02 * vapour)).toBe(1);
    // Above the critical temperature, 31 degC, there is no liquid.
    expect(complaint('carbon-dioxide', 1.02 * vapour, 308)).toBe(0);
    expect(complaint('nitrogen', 30e6)).toBe(0);
  });
});

describe('a blow-down valve', () => {
  const isothermal = { charge: 2e6, exchange: 1e-3 };
  /** Free gas through it, m3/s at ANR, per Pa upstream: what stays alike while a choked bottle empties. */
  const perPressure = (valve: Parameters, position = OPEN): number => {
    const run = vented({ bottle: isothermal, valve, steps: [handle(0.2, position)], duration: 2 });
    return at(run, 'valve.through-gas', 1) / at(run, 'neck.pressure', 1);
  };
  const full = perPressure({});

  it('passes the choked flow of its nozzle: 0.039746 Cd A p / sqrt T, nitrogen, ideal gas', () => {
    const area = 0.25 * Math.PI * 0.0015 ** 2;
    const coefficient = components['blow-down-valve'].parameters.dischargeCoefficient
      .default as number;
    const mass = full * anrDensity(gases.nitrogen);
    const ideal = (0.039746 * coefficient * area) / Math.sqrt(ROOM);
    expect(mass / ideal).toBeCloseTo(1, 2);
  });

  it('passes half of it with the handle half way', () => {
    expect(perPressure({}, HALF) / full).toBeCloseTo(0.5, 3);
  });

  it('passes the share that a seized one opens', () => {
    expect(perPressure({ opens: 0.3 }) / full).toBeCloseTo(0.3, 3);
  });

  it('takes its time, stops half way, and turns back', () => {
    const run = vented({
      valve: { openingTime: 0.4 },
      steps: [handle(0.2, HALF), handle(1, OPEN), handle(2, CLOSED)],
    });
    expect(told(run, 'valve')).toEqual(['opening', 'half', 'opening', 'open', 'closing', 'closed']);
    expect(when(run, 'valve', 'half')).toBeCloseTo(0.4, 4);
    expect(when(run, 'valve', 'open')).toBeCloseTo(1.2, 4);
    expect(when(run, 'valve', 'closed')).toBeCloseTo(2.4, 4);
    const hasty = vented({ steps: [handle(0.2, OPEN), handle(0.3, CLOSED)] });
    expect(told(hasty, 'valve')).toEqual(['opening', 'closing', 'closed']);
  });

  it('keeps its charge while it stands, sound or with its cable broken', () => {
    const broken = vented({ valve: { linked: false }, steps: [handle(0.2, OPEN)] });
    expect(told(broken, 'valve')).toEqual([]);
    for (const run of [broken, vented({ duration: 60 })]) {
      // The few cubic centimetres between bottle and seat fill first, and the bottle warms again after it.
      expect(at(run, 'bottle.left', 1)).toBeGreaterThan(0.995);
      expect(last(run, 'bottle.left')).toBeCloseTo(at(run, 'bottle.left', 1), 5);
    }
  });

  it('loses its charge standing through a nicked seat or past a leaking one', () => {
    const nicked = vented({ bottle: isothermal, valve: { ajar: 0.01 }, duration: 1 });
    const loses = at(nicked, 'valve.through-gas', 1) / at(nicked, 'neck.pressure', 1);
    expect(loses / full).toBeCloseTo(0.01, 4);
    const left = (duration: number): number =>
      last(vented({ valve: { leak: 1e-14 }, duration }), 'bottle.left');
    expect(left(60)).toBeLessThan(left(30));
    expect(left(30)).toBeLessThan(1 - 1e-6);
  });
});

describe('a gas check valve', () => {
  /** Two bottles on one line, the strong one opened: gas left in the weak one, whose valve was left open too. */
  const weakLeft = (between: string, own: Parameters): number =>
    last(
      gasBench({
        extra: {
          joint: { is: between, ports: { inlet: 'weak-neck', outlet: 'gas' }, parameters: own },
          weak: {
            is: 'gas-bottle',
            ports: { outlet: 'weak-neck' },
            parameters: { volume: 1e-3, charge: 2e6, chargeTemperature: ROOM },
          },
        },
        steps: [handle(0.2, OPEN)],
        duration: 6,
      }),
      'weak.left',
    );

  it('keeps the gas of a full bottle out of a weak one', () => {
    // What fills the line of some cubic centimetres before the strong one is opened.
    expect(weakLeft('gas-check-valve', {})).toBeGreaterThan(0.98);
    expect(weakLeft('gas-check-valve', {})).toBeLessThanOrEqual(1);
    expect(weakLeft('gas-line', { length: 1 })).toBeGreaterThan(2);
    expect(weakLeft('gas-check-valve', { stick: 0.05 })).toBeGreaterThan(1.05);
  });

  it('lets the bottle behind it through, unless it sticks shut', () => {
    const passed = (own: Parameters): number =>
      last(
        gasBench({
          extra: {
            check: {
              is: 'gas-check-valve',
              ports: { inlet: 'gas', outlet: 'end' },
              parameters: own,
            },
            open: vent('end', 0.01),
          },
          steps: [handle(0.2, OPEN)],
        }),
        'bottle.left',
      );
    expect(passed({})).toBeLessThan(0.7);
    expect(passed({ stuckShut: 1 })).toBeGreaterThan(0.98);
  });
});

describe('a gas line', () => {
  const law = (own: Parameters) =>
    components['gas-line'].flows!.through.law!(
      { bore: 0.005, fittings: 4, ...own },
      SURROUNDINGS.mild,
    );

  // Darcy-Weisbach, dp = (f L / d + sum K + 1) rho v^2 / 2, f = 0.02: 10 m of 5 mm lose 45 velocity heads.
  it('loses the velocity heads of its length and its fittings', () => {
    const { density } = SURROUNDINGS.mild;
    const speed = (law({ length: 10 }).constant * Math.sqrt(1e5)) / (0.25 * Math.PI * 0.005 ** 2);
    expect(1e5 / (0.5 * density * speed ** 2)).toBeCloseTo(45, 6);
  });

  it('delays and throttles the more the longer it is', () => {
    const left = (length: number): number =>
      last(
        gasBench({
          valve: { bore: 0.003 },
          extra: {
            line: {
              is: 'gas-line',
              ports: { inlet: 'gas', outlet: 'end' },
              parameters: { length },
            },
            open: vent('end', 0.01),
          },
          steps: [handle(0.2, OPEN)],
          duration: 1.5,
        }),
        'bottle.left',
      );
    expect(left(40)).toBeGreaterThan(left(5) + 0.05);
    expect(left(5)).toBeGreaterThan(left(0.1));
  });
});
