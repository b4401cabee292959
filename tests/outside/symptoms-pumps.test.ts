/**
 * Faults of pump, tank, suction and relief valve as they show, each against the healthy run of the same
 * circuit. Sources beside each; amounts and margins: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { at, gauge, PSI } from '../support/one-jack.js';
import { lever, swing, type SmallSwing } from '../support/small-swing.js';
import { begins, enginePump, turning } from '../support/engine-supply.js';
import { run, time } from '../support/symptom.js';

/** The engine's pump raises and lowers the leg, at a speed and an oil temperature. */
const engine = (rpm = 2000, temperature = 20, suction?: Record<string, unknown>): SmallSwing =>
  swing(`engine pump at ${rpm} rpm and ${temperature} degC`, {
    parts: { supply: enginePump },
    ...(suction && { between: { suction } }),
    fluid: { temperature: `${temperature} degC` },
    steps: [turning(0.05, rpm), lever(0.2, 'up'), lever(12, 'down')],
    duration: 18,
  });
const plain = engine();
const sound = run(plain);
/** How many times as long the leg takes to go up with a fault. */
const longer = (host: SmallSwing, fault: string, on: string, severity: number): number =>
  time(run(host, fault, on, severity), 'up') / time(run(host), 'up');

/** The engine's pump behind a check valve, beside another supply. */
const beside = (rpm: number, supply: Record<string, unknown>, steps: object[]): SmallSwing =>
  swing('two supplies', {
    parts: {
      pump: { ...enginePump, ports: { inlet: 'suction', outlet: 'pump-out' } },
      check: { is: 'check-valve', ports: { inlet: 'pump-out', outlet: 'pressure' } },
      supply: { ...supply, ports: { inlet: 'suction', outlet: 'stand' } },
    },
    steps: [
      { at: '0.05 s', device: 'pump', input: 'speed', value: `${rpm} rpm` },
      lever(0.2, 'up'),
      ...(steps as Record<string, unknown>[]),
    ],
    duration: 40,
  });

describe('pump joint leaks under pressure (NTSB summary 20180601X62529)', () => {
  /** Flow into the system, with the selector's centre open to the return until the lever goes up. */
  const circulating = swing('pump that circulates', {
    parts: {
      supply: enginePump,
      selector: {
        is: 'selector-valve',
        ports: {
          pressure: 'pressure',
          return: 'selector-return',
          up: 'selector-up',
          down: 'selector-down',
        },
        bore: '8 mm',
        centre: 'open',
        overlap: '40 %',
      },
    },
    fluid: { temperature: '40 degC' },
    steps: [turning(0.05), lever(1, 'up')],
  });
  const useful = (r: Run, t: number): number =>
    at(r, 'supply.delivery', t) - at(r, 'supply.slip', t) - at(r, 'supply.weep', t);
  const [healthy, leaking] = [run(circulating), run(circulating, 'pump-joint-leak', 'supply')];
  it('all right at idle, no pressure under load', () => {
    expect(useful(leaking, 0.9)).toBeGreaterThan(0.95 * useful(healthy, 0.9));
    expect(gauge(leaking, 'pressure', 8)).toBeLessThan(0.7 * gauge(healthy, 'pressure', 8));
    expect(time(leaking, 'up')).toBeGreaterThan(1.2 * time(healthy, 'up'));
  });
  it('oil is lost at the pump: the tank empties', () => {
    expect(at(healthy, 'tank.level', 10) - at(leaking, 'tank.level', 10)).toBeGreaterThan(1e-4);
  });
  it('all normal on an outside supply', () => {
    const stand = beside(
      0,
      { is: 'ground-supply', flow: '3 gal/min', pressure: '1000 psi', on: true },
      [],
    );
    expect(longer(stand, 'pump-joint-leak', 'pump', 1)).toBeCloseTo(1, 2);
  });
});

describe('pump shaft sheared (common practice, no source)', () => {
  it('no flow and no pressure with the engine running', () => {
    const r = run(plain, 'pump-shaft-sheared', 'supply');
    expect(gauge(r, 'pressure', 5)).toBeLessThan(5 * PSI);
    expect(gauge(sound, 'pressure', 5)).toBeGreaterThan(1000 * PSI);
    expect(r.log.some((e) => e.device === 'leg' && e.to === 'rising')).toBe(false);
  });
  it('the hand pump is as ever', () => {
    const pumping = [{ at: '0.3 s', device: 'supply', input: 'pumping', value: 'on' }];
    const hand = { is: 'hand-pump', 'stroke-volume': '30 cm^3', force: '500 N' };
    const still = run(beside(0, hand, pumping));
    const sheared = run(beside(2000, hand, pumping), 'pump-shaft-sheared', 'pump');
    expect(time(still, 'up')).toBeLessThan(40);
    expect(time(sheared, 'up') / time(still, 'up')).toBeCloseTo(1, 2);
  });
});

describe('suction draws air (a maker’s service manual of a light twin)', () => {
  it('slow at any speed, warm or cold: of every turn a share is air', () => {
    for (const rpm of [1000, 2000])
      for (const temperature of [10, 40])
        expect(longer(engine(rpm, temperature), 'suction-air-leak', 'supply', 0.6)).toBeGreaterThan(
          1.5,
        );
  });
});

describe('reservoir low (a maker’s service manual of a light twin)', () => {
  it('the cycle is not finished at the position that holds most oil; the other way it comes back', () => {
    const r = run(plain, 'reservoir-low', 'tank', 0.97);
    expect(time(sound, 'up')).toBeLessThan(3);
    expect(time(r, 'up')).toBe(Infinity);
    expect(begins(r, 'tank', 'nearly dry').length).toBeGreaterThan(0);
    expect(at(r, 'supply.delivery', 8)).toBeLessThan(0.5 * at(sound, 'supply.delivery', 8));
    expect(at(r, 'leg.angle', 11.9)).toBeLessThan(at(sound, 'leg.angle', 11.9) - 0.1);
    // Down again from there: oil comes back.
    expect(at(r, 'leg.angle', 17.9)).toBeLessThan(0.01);
  });
  it('sound as long as the outlet is covered', () => {
    expect(longer(plain, 'reservoir-low', 'tank', 0.5)).toBeCloseTo(1, 3);
  });
});

describe('reservoir vent blocked (common practice, no source)', () => {
  it('loses flow at high speed, next to none at low', () => {
    const suction = { is: 'line', bore: '12 mm', length: '1.5 m' };
    const at = (rpm: number): number =>
      longer(engine(rpm, 20, suction), 'reservoir-vent-blocked', 'tank', 0.8);
    expect(at(800)).toBeLessThan(1.02);
    expect(at(3000)).toBeGreaterThan(1.08);
  });
});

describe('suction hose collapsed (common practice, no source)', () => {
  const up = (rpm: number, temperature: number): number =>
    longer(engine(rpm, temperature), 'suction-line-collapsed', 'supply', 0.5 / 0.9);
  it('loses flow at high speed, next to none at low when warm', () => {
    expect(up(800, 40)).toBeLessThan(1.02);
    expect(up(3000, 40)).toBeGreaterThan(1.2);
  });
  it('worse cold', () => {
    expect(up(800, -10)).toBeGreaterThan(1.3);
  });
});

describe('relief valve set high (common practice, no source)', () => {
  it('times as ever, pressure at the end of the stroke high', () => {
    const r = run(plain, 'relief-set-high', 'relief');
    expect(time(r, 'up') / time(sound, 'up')).toBeCloseTo(1, 2);
    expect(gauge(r, 'pressure', 11)).toBeGreaterThan(1.7 * gauge(sound, 'pressure', 11));
  });
  it('the stand’s own limit acts first', () => {
    const host = swing('stand above the relief valve', {
      parts: {
        supply: {
          is: 'ground-supply',
          ports: { inlet: 'suction', outlet: 'stand' },
          flow: '3 gal/min',
          pressure: '1800 psi',
          on: true,
        },
      },
    });
    const [healthy, high] = [run(host), run(host, 'relief-set-high', 'relief')];
    expect(at(healthy, 'relief.through', 6.5)).toBeGreaterThan(1e-4);
    expect(at(high, 'relief.through', 6.5)).toBeLessThan(1e-6);
    expect(gauge(high, 'pressure', 6.5)).toBeGreaterThan(1650 * PSI);
    expect(gauge(healthy, 'pressure', 6.5)).toBeLessThan(1420 * PSI);
  });
});
