/**
 * Electrical sequencing as one loop: switches, controller, solenoid selector, jack, door and back to
 * the switches. Times are the table's and the valves' own figures.
 */
import { describe, expect, it } from 'vitest';
import type { StateTable } from '../../../packages/core/src/define/index.js';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import { coordinate, rig, step } from '../../support/rig.js';

const RISE = 0.08;
const FALL = 0.06;
const PAUSE = 1.5;
const TIME_OUT = 4;
/** A located event lies within this of its time, s: the width within which guards are bracketed, several times over. */
const WIDTH = 1e-6;

const row = (to: string, terms: readonly string[], after?: number) => ({ if: terms, to, after });

/** Opens the door, waits, shuts it; gives up when it does not come open in time. */
const TABLE: StateTable = {
  states: [
    { name: 'at rest', drive: [], next: [row('opening', ['lever up', 'in-air'])] },
    {
      name: 'opening',
      drive: ['open-door'],
      next: [row('pausing', ['door-open']), row('stopped', [], TIME_OUT)],
    },
    { name: 'pausing', drive: ['open-door'], next: [row('shutting', ['lever up'], PAUSE)] },
    { name: 'shutting', drive: ['shut-door'], next: [row('done', ['door-shut'])] },
    { name: 'done', drive: [], next: [] },
    { name: 'stopped', drive: [], next: [] },
  ],
};

type Given = Readonly<Record<string, number | string>>;

/** The swing with changed parameters of some devices; the lever goes up at 0.5 s. */
function swing(given: Readonly<Record<string, Given>> = {}, tolerance: 'normal' | 'fine' = 'fine') {
  const heard = (device: string, signal: string) => ({ device, signal });
  const made = rig({
    parts: {
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 0.02, level: 0.01 },
      },
      stand: {
        is: 'ground-supply',
        ports: { inlet: 'tank', outlet: 'pressure' },
        parameters: { flow: 1e-4, pressure: 7e6, on: true },
      },
      valve: {
        is: 'solenoid-selector',
        ports: { pressure: 'pressure', return: 'tank', up: 'open-line', down: 'shut-line' },
        // Without leaks: what moves has been switched.
        parameters: { riseTime: RISE, fallTime: FALL, leak: 0, ...given.valve },
        signals: {
          up: heard('sequencer', 'open-door'),
          down: heard('sequencer', 'shut-door'),
        },
      },
      jack: {
        is: 'double-acting-actuator',
        ports: {
          head: 'open-line',
          headChamber: 'open-line',
          rod: 'shut-line',
          rodChamber: 'shut-line',
        },
        parameters: { bore: 0.03, rodDiameter: 0.015, stroke: 0.15 },
        links: { rod: { to: 'door', travel: { x: [0, 1.5], y: [0, 0.15] } } },
      },
      // Declared against the direction of the wires: order must not matter.
      sequencer: {
        is: 'controller',
        parameters: { table: TABLE },
        signals: {
          'door-open': heard('open-switch', 'made'),
          'door-shut': heard('shut-switch', 'made'),
          'in-air': heard('squat', 'inAir'),
        },
      },
      'open-switch': {
        is: 'position-switch',
        links: { mechanism: { to: 'door' } },
        parameters: { at: 1.48, ...given['open-switch'] },
      },
      'shut-switch': {
        is: 'position-switch',
        links: { mechanism: { to: 'door' } },
        parameters: { at: 0.02, side: 'below' },
      },
      squat: { is: 'squat-switch', parameters: { ...given.squat } },
    },
    coordinates: { door: coordinate({ high: 1.5, damping: 5 }) },
    duration: 8,
    steps: [step(0.5, 'sequencer', 'lever', 0)],
  });
  const run = simulateWith(made.with, made.scenario, { tolerance });
  const { log } = run;
  return {
    run,
    log,
    entry: (device: string, to: string) => {
      const found = log.find((e) => e.device === device && e.to === to && e.t > 0);
      if (found === undefined) throw new Error(`${device} is never ${to}`);
      return found;
    },
    time: (device: string, to: string) =>
      log.find((e) => e.device === device && e.to === to && e.t > 0)?.t ?? NaN,
    words: (device: string) => log.filter((e) => e.device === device).map((e) => e.to),
    angleAt: (t: number) => {
      const { t: times, v } = run.series('door.angle')!;
      const i = times.findIndex((x) => x >= t);
      return v[i];
    },
  };
}

describe('a door opened and shut by wire', () => {
  const s = swing();

  it('goes through its states once, in order', () => {
    expect(s.run.outcome.kind).toBe('done');
    // The operator's entry carries the lever's word.
    expect(s.words('sequencer')).toEqual([
      'at rest',
      'up',
      'opening',
      'pausing',
      'shutting',
      'done',
    ]);
    expect(s.words('valve')).toEqual([
      'neutral',
      'pulling-up',
      'up',
      'leaving-up',
      'neutral',
      'pulling-down',
      'down',
      'leaving-down',
      'neutral',
    ]);
  });

  it('answers lever and switches at the same instant', () => {
    expect(s.time('sequencer', 'opening')).toBe(0.5);
    expect(s.time('valve', 'pulling-up')).toBe(0.5);
    expect(s.time('sequencer', 'pausing')).toBe(s.time('open-switch', 'made'));
    expect(s.time('sequencer', 'done')).toBe(s.time('shut-switch', 'made'));
    expect(s.time('valve', 'leaving-down')).toBe(s.time('shut-switch', 'made'));
  });

  it('takes the times of table and valve, no others', () => {
    const away = (t: number, wanted: number): void =>
      expect(Math.abs(t - wanted)).toBeLessThan(WIDTH);
    away(s.time('valve', 'up') - s.time('valve', 'pulling-up'), RISE);
    away(s.time('sequencer', 'shutting') - s.time('sequencer', 'pausing'), PAUSE);
    away(s.time('valve', 'pulling-down') - s.time('valve', 'leaving-up'), FALL);
    away(s.time('valve', 'down') - s.time('valve', 'pulling-down'), RISE);
  });

  it('makes each switch where it is rigged', () => {
    expect(s.angleAt(s.time('open-switch', 'made'))).toBeCloseTo(1.48, 5);
    expect(s.angleAt(s.time('shut-switch', 'made'))).toBeCloseTo(0.02, 5);
    const late = swing({ 'open-switch': { rigged: 0.01 } });
    expect(late.angleAt(late.time('open-switch', 'made'))).toBeCloseTo(1.49, 5);
  });

  it('tells in the log who told whom', () => {
    const by = (device: string, to: string) => s.log[s.entry(device, to).by];
    expect(by('sequencer', 'opening')).toMatchObject({ kind: 'operator', device: 'sequencer' });
    expect(by('valve', 'pulling-up')).toMatchObject({ device: 'sequencer', to: 'opening' });
    expect(by('sequencer', 'pausing')).toMatchObject({ device: 'open-switch', to: 'made' });
    expect(by('open-switch', 'made')).toMatchObject({ device: 'door', to: 'rising' });
    expect(s.entry('sequencer', 'pausing').cause).toBe('door-open is on');
    expect(s.entry('sequencer', 'shutting').cause).toBe('the lever is up and 1.5 s are over');
  });

  it('keeps the table’s times whatever the tolerance', () => {
    const rough = swing({}, 'normal');
    const pause = rough.time('sequencer', 'shutting') - rough.time('sequencer', 'pausing');
    expect(Math.abs(pause - PAUSE)).toBeLessThan(WIDTH);
  });
});

describe('a sequence that is not answered', () => {
  it('is given up exactly when its time is over, and the valve let go', () => {
    const s = swing({ 'open-switch': { stuck: 'open' } });
    expect(s.time('sequencer', 'stopped')).toBe(0.5 + TIME_OUT);
    expect(s.entry('sequencer', 'stopped').cause).toBe('4 s are over');
    expect(s.time('valve', 'leaving-up')).toBe(0.5 + TIME_OUT);
    expect(s.words('valve').at(-1)).toBe('neutral');
  });

  it('is given up with a dead coil too, the door having never moved', () => {
    const s = swing({ valve: { dead: 'up' } });
    expect(s.time('sequencer', 'stopped')).toBe(0.5 + TIME_OUT);
    expect(s.words('valve')).toEqual(['neutral']);
    expect(s.words('door')).toEqual(['at low']);
  });
});

describe('a spool that is stuck', () => {
  it('stands there from the start and sends oil whatever the controller wants', () => {
    const s = swing({ valve: { stuck: 'up' } });
    expect(s.words('valve')).toEqual(['up']);
    expect(s.log.find((e) => e.device === 'door' && e.to === 'rising')!.t).toBeLessThan(0.5);
    expect(s.words('door').at(-1)).toBe('at high');
  });
});

describe('an interlock', () => {
  it('refuses the lever while a strut that hangs back keeps its switch on ground', () => {
    const s = swing({ squat: { strutExtension: 0.2 } });
    expect(s.words('squat')).toEqual(['ground']);
    expect(s.words('sequencer')).toEqual(['at rest', 'up']);
    expect(s.words('door')).toEqual(['at low']);
  });
});
