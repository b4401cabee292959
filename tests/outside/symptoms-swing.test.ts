/**
 * Symptoms of the first faults, on the whole Hedgelark: each beside the healthy run of the same card.
 * Sources: order and plungers, US Army TM 1-1500-204-23-2 on sequence valves; order of events and slow
 * first swing, FAA-H-8083-31 landing gear chapter (through public study texts); a restrictor lost after
 * a failed hose as an unsafe condition, FAA AD 2017-05-11 (2012 proposal). The rest is common
 * practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { SimulatedRun } from '../../packages/core/src/machine/index.js';
import { aircraft, valueAt, when } from '../support/aircraft.js';

const PSI = 6894.757;
const { scenario, run, play } = aircraft('hedgelark');
const healthy = run('healthy');
/** Up at 1 s and down at 16 s, whatever happens in between. */
const steps = scenario.cards['doors-early'].steps;
const patient = play('healthy', { steps });

function faulty(fault: string, on: string, severity = 1, more = {}): SimulatedRun {
  return play('healthy', { steps, faults: [{ fault, on, severity }], ...more });
}
const total = (r: SimulatedRun, unit: string, direction: 'up' | 'down'): number =>
  r.timings.find((t) => t.unit === unit && t.direction === direction)?.total ?? NaN;
const gauge = (r: SimulatedRun, node: string, t: number): number =>
  valueAt(r, `${node}.pressure`, t) - 101_325;

describe('a loaded pressure filter', () => {
  const r = faulty('filter-loaded', 'pressure-filter', 0.9);
  it('shows two gauges apart while the gear moves, and alike at stall (common practice, no source)', () => {
    const drop = (x: SimulatedRun, t: number): number =>
      gauge(x, 'supply', t) - gauge(x, 'pressure', t);
    expect(drop(r, 4)).toBeGreaterThan(drop(patient, 4) + 20 * PSI);
    expect(drop(r, 15)).toBeLessThan(2 * PSI);
  });
});

describe('a weak ground supply', () => {
  it('makes every unit slow going up (common practice, no source)', () => {
    const r = faulty('ground-supply-weak', 'ground-supply', 0.3);
    for (const unit of ['left', 'right', 'tail'])
      expect(total(r, unit, 'up')).toBeGreaterThan(total(patient, unit, 'up') * 1.05);
    expect(total(r, 'left', 'up')).toBeGreaterThan(total(patient, 'left', 'up') + 1);
  });
});

describe('a door plunger rigged early', () => {
  it('starts the door before its leg is home (TM 1-1500-204-23-2: the valve senses position)', () => {
    const r = faulty('plunger-rigged-early', 'left-door-close-valve');
    expect(when(r, 'left-door', 'falling', 1)).toBeLessThan(
      when(r, 'left-uplock', 'engaged') - 0.5,
    );
    expect(when(patient, 'left-door', 'falling', 1)).toBeGreaterThan(
      when(patient, 'left-uplock', 'engaged'),
    );
    // The other side keeps its order.
    expect(when(r, 'right-door', 'falling', 1)).toBeGreaterThan(when(r, 'right-uplock', 'engaged'));
  });
});

describe('a door plunger rigged late', () => {
  it('leaves the door open with the leg locked and the gauge at stall (common practice, no source)', () => {
    const r = faulty('plunger-rigged-late', 'right-door-close-valve', 1);
    expect(when(r, 'right-uplock', 'engaged')).toBeLessThan(10);
    expect(when(r, 'right-door', 'at closed', 1)).toBeNaN();
    expect(gauge(r, 'supply', 15)).toBeGreaterThan(0.95 * gauge(patient, 'supply', 15));
    expect(when(r, 'left-door', 'at closed', 1)).toBeLessThan(10);
  });
});

describe('a relief valve that dirt holds open', () => {
  it('shows at stall by the flow that goes on, less by the gauge of a strong stand, and takes time (common practice, no source)', () => {
    const r = faulty('relief-dirt-held', 'relief', 1);
    expect(gauge(r, 'supply', 15)).toBeLessThan(gauge(patient, 'supply', 15) - 20 * PSI);
    expect(valueAt(r, 'ground-supply.delivery', 15)).toBeGreaterThan(
      valueAt(patient, 'ground-supply.delivery', 15) + 5e-5,
    );
    expect(total(r, 'left', 'up')).toBeGreaterThan(total(patient, 'left', 'up') + 1);
  });
});

describe('a restrictor that has lost its orifice', () => {
  it('lets its leg fall faster, up as ever (FAA AD 2017-05-11 on lost damping)', () => {
    const r = faulty('restrictor-open', 'left-leg-restrictor');
    const fall = (x: SimulatedRun, leg: string): number =>
      Math.max(...x.series(`${leg}.speed`)!.v.map((v) => -v));
    expect(fall(r, 'left-leg')).toBeGreaterThan(1.3 * fall(patient, 'left-leg'));
    expect(total(r, 'left', 'down')).toBeLessThan(total(patient, 'left', 'down') - 0.8);
    expect(total(r, 'left', 'up')).toBeCloseTo(total(patient, 'left', 'up'), 1);
  });
});

describe('a check valve of the supply that leaks backward', () => {
  it('shows little while pumping, and loses the pressure through the pump when the stand stops (common practice, no source)', () => {
    const stop = [
      ...steps.filter((s) => s.text !== 'down'),
      { ...steps[0], at: 14, value: 0, text: 'off' },
    ];
    const sound = play('healthy', { steps: stop });
    const leaky = faulty('check-valve-leak', 'pump-check', 0.3, { steps: stop });
    const home = (r: SimulatedRun): number => when(r, 'left-door', 'at closed', 1);
    // A fiftieth of the swing.
    expect(Math.abs(home(leaky) - home(sound))).toBeLessThan(0.02 * home(sound));
    expect(gauge(leaky, 'supply', 13.5)).toBeGreaterThan(0.98 * gauge(sound, 'supply', 13.5));
    const left = (r: SimulatedRun): number => gauge(r, 'supply', 16) / gauge(r, 'supply', 13.9);
    expect(left(leaky)).toBeLessThan(left(sound) - 0.2);
  });
});

it('the card they are held against is the healthy one but for its timing', () => {
  expect(total(patient, 'left', 'up')).toBeCloseTo(total(healthy, 'left', 'up'), 6);
});
