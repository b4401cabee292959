/**
 * Faults of pressure switch and electric supply as they show, each against the healthy run of the same
 * circuit. Sources beside each; amounts and margins: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { at, gauge } from '../support/one-jack.js';
import { swing, type SmallSwing, type Written } from '../support/small-swing.js';
import { begins } from '../support/engine-supply.js';
import { run, time } from '../support/symptom.js';

const pack: Written = {
  is: 'power-pack',
  ports: { up: 'up', down: 'down', reservoir: 'tank' },
  displacement: '0.6 cm^3/rev',
  'cut-out': '1000 psi',
  'cut-in': '950 psi',
  'relief-up': '1300 psi',
  'relief-down': '700 psi',
};
const command = (at: number, value: string): Written => ({
  at: `${at} s`,
  device: 'supply',
  input: 'command',
  value,
});
const circuit = (
  name: string,
  parts: Readonly<Record<string, Written>>,
  mass = 70,
  steps: readonly Written[] = [command(0.2, 'up')],
): SmallSwing => {
  const leg = { ...swing('plain').scenario.mechanisms.leg.parameters };
  return swing(name, {
    parts: { supply: pack, relief: undefined, selector: undefined, ...parts },
    nodes: { pressure: undefined },
    mechanisms: {
      leg: {
        is: 'leg',
        note: 'made up',
        retract: 'inboard',
        travel: '90 deg',
        mass: `${mass} kg`,
        cog: '550 mm',
        inertia: `${(Number(leg.inertia) * mass) / 70} kg m^2`,
        length: '900 mm',
        friction: '25 N m',
        'tyre-radius': '300 mm',
        'tyre-width': '150 mm',
        damping: '5 N m s/rad',
      },
    },
    steps,
    duration: 60,
  });
};
/** A weep, so that what is shut in falls back. */
const weep: Written = { is: 'orifice', ports: { inlet: 'up', outlet: 'tank' }, bore: '0.2 mm' };
const light = circuit('pack', { weep }, 130);
const sound = run(light);
const locked = (r: Run): number => r.timings.find((t) => t.direction === 'up')?.locked ?? NaN;

describe('pressure switch set low (a public owners’ forum thread; common practice, no source)', () => {
  it('the pump stops short and stutters, where a sound one stops once the leg is home', () => {
    const r = run(light, 'pressure-switch-set-low', 'supply');
    const home = locked(sound);
    const stops = (of: Run): number =>
      begins(of, 'supply', 'up held').filter((t) => t < home).length;
    expect(stops(sound)).toBe(0);
    expect(stops(r)).toBeGreaterThan(10);
    expect(at(r, 'leg.angle', home)).toBeLessThan(at(sound, 'leg.angle', home) - 0.05);
    expect(time(r, 'up')).toBe(Infinity);
  });
  it('so does a motor that a switch of its own stops', () => {
    const host = circuit(
      'pack with a switch beside it',
      {
        weep,
        supply: {
          ...pack,
          'cut-out': '1250 psi',
          'cut-in': '1240 psi',
          signals: { raise: 'switch.closed' },
        },
        switch: {
          is: 'pressure-switch',
          ports: { pressure: 'up' },
          opens: '1000 psi',
          closes: '950 psi',
        },
      },
      130,
      [],
    );
    const [a, b] = [run(host), run(host, 'pressure-switch-set-low', 'switch', 1)];
    const first = (of: Run): number => begins(of, 'switch', 'open')[0];
    expect(at(a, 'leg.angle', first(a))).toBeGreaterThan(1.5);
    expect(at(b, 'leg.angle', first(b))).toBeLessThan(1.5);
    expect(gauge(b, 'up', 19)).toBeLessThan(0.6 * gauge(a, 'up', 19));
  });
});

describe('weak electric supply (a public owners’ forum thread; common practice, no source)', () => {
  const weak = { supply: { ...pack, 'stall-torque': '0.6 N m' } };
  it('slower but all right unloaded, stops with the load that the air adds in flight', () => {
    // Weight of the leg stands for the air's load.
    const [bare, loaded] = [circuit('unloaded', weak), circuit('loaded', weak, 130)];
    const of = (host: SmallSwing, severity: number): number =>
      time(run(host, 'electric-supply-weak', 'supply', severity), 'up');
    expect(of(bare, 0.5)).toBeLessThan(60);
    expect(of(bare, 0.5)).toBeGreaterThan(1.2 * of(bare, 0));
    expect(of(loaded, 0)).toBeLessThan(60);
    expect(of(loaded, 0.5)).toBe(Infinity);
  });
  it('a coil does not pull: nothing moves', () => {
    const host = swing('solenoid selector', {
      parts: {
        selector: {
          is: 'solenoid-selector',
          ports: {
            pressure: 'pressure',
            return: 'selector-return',
            up: 'selector-up',
            down: 'selector-down',
          },
          bore: '6 mm',
        },
      },
      steps: [{ at: '0.2 s', device: 'selector', input: 'up', value: 'on' }],
    });
    const fault = (severity: number): Run =>
      run(host, 'electric-supply-weak', 'selector', severity);
    expect(time(fault(0), 'up')).toBeLessThan(5);
    expect(time(fault(0.3), 'up')).toBeCloseTo(time(fault(0), 'up'), 2);
    expect(time(fault(0.7), 'up')).toBe(Infinity);
    expect(at(fault(0.7), 'leg.angle', 19)).toBeLessThan(0.05);
  });
});
