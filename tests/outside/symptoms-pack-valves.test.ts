/**
 * Faults of restrictors, checks, small ways in actuators and lowering valves, and of a power
 * pack’s own valves, each against the healthy run of the same circuit. Sources beside each;
 * amounts and margins: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { at, gauge, PSI } from '../support/one-jack.js';
import { hosts } from '../support/fault-hosts.js';
import { lever, swing, type SwingOptions, type Written } from '../support/small-swing.js';
import { degrees, first, run, time } from '../support/symptom.js';

const plain = swing('plain');
const sound = run(plain);

describe('restrictor’s free direction stuck shut (common practice, no source)', () => {
  const host = swing('narrow', {
    parts: {
      restrictor: {
        is: 'one-way-restrictor',
        ports: { inlet: 'up', outlet: 'lift' },
        bore: '1.4 mm',
        'free-bore': '3 mm',
      },
    },
  });
  const [well, stuck] = [run(host), run(host, 'restrictor-check-stuck-shut', 'restrictor')];
  it('up: high gauge while moving, slow once the supply’s limit is reached', () => {
    expect(gauge(stuck, 'up', 1.5)).toBeGreaterThan(gauge(well, 'up', 1.5) + 100 * PSI);
    expect(time(stuck, 'up')).toBeGreaterThan(1.05 * time(well, 'up'));
    expect(time(stuck, 'up')).toBeLessThan(6);
  });
  it('down and stall pressure as before', () => {
    expect(Math.abs(time(stuck, 'down') - time(well, 'down'))).toBeLessThan(0.1);
    expect(gauge(stuck, 'up', 6.5)).toBeGreaterThan(0.99 * gauge(well, 'up', 6.5));
  });
});

describe('check valve the wrong way round (NASA ASRS report 253327)', () => {
  it.each(['delivery', 'return'])('in the %s line: after that job nothing finishes', (place) => {
    const host = swing('check', { between: { [place]: { is: 'check-valve' } } });
    const [well, turned] = [run(host), run(host, 'check-valve-backward', `in-${place}`)];
    expect(time(well, 'up')).toBeLessThan(5);
    expect(time(turned, 'up')).toBe(Infinity);
    expect(degrees(turned, 'leg', 6.5)).toBeLessThan(80);
    // The stand works against its limit.
    const stand = place === 'delivery' ? 'stand' : 'pressure';
    expect(gauge(turned, stand, 6)).toBeGreaterThan(950 * PSI);
    expect(at(turned, 'supply.delivery', 6)).toBeLessThan(2e-5);
  });
});

describe('check inside an actuator left out (a published article on check valves in gear actuators)', () => {
  it('stops on the way up, the gauge at its limit and the shut-in end above it', () => {
    const shut = run(plain, 'actuator-check-left-out', 'jack');
    expect(time(sound, 'up')).toBeLessThan(5);
    expect(time(shut, 'up')).toBe(Infinity);
    expect(gauge(shut, 'up', 6)).toBeGreaterThan(950 * PSI);
    expect(gauge(shut, 'jack.rod-chamber', 6)).toBeGreaterThan(gauge(shut, 'up', 6) + 20 * PSI);
  });
  it('in part: slow up, down as before', () => {
    const slow = run(plain, 'actuator-check-left-out', 'jack', 0.78);
    expect(time(slow, 'up')).toBeGreaterThan(1.1 * time(sound, 'up'));
    expect(Math.abs(time(slow, 'down') - time(sound, 'down'))).toBeLessThan(0.1);
  });
});

/** Free fall: the leg on oil alone, lever in neutral, then the lowering valve. */
const fall = () =>
  swing('free fall', {
    parts: {
      uplock: undefined,
      dump: { is: 'manual-lowering-valve', ports: { up: 'up', down: 'down', return: 'tank' } },
    },
    duration: 18,
    steps: [
      lever(0.2, 'up'),
      lever(5, 'neutral'),
      { at: '7 s', device: 'dump', input: 'handle', value: 'open' },
    ],
  });

describe('debris (New Zealand TAIC inquiry, 30 September 2010)', () => {
  it('in the way out of an actuator: slow one way, or stopped part-way', () => {
    const [part, shut] = [0.74, 1].map((s) => run(plain, 'debris-lodged', 'jack', s));
    expect(time(part, 'down')).toBeGreaterThan(1.15 * time(sound, 'down'));
    expect(time(part, 'down')).toBeLessThan(Infinity);
    expect(Math.abs(time(part, 'up') - time(sound, 'up'))).toBeLessThan(0.1);
    expect(first(shut, 'uplock', 'open', 7)).toBeLessThan(8);
    expect(time(shut, 'down')).toBe(Infinity);
    expect(degrees(shut, 'leg', 13.9)).toBeGreaterThan(60);
  });
  it('in an orifice: slow', () => {
    const host = swing('orifice', { between: { down: { is: 'orifice', bore: '3 mm' } } });
    const [well, dirty] = [run(host), run(host, 'debris-lodged', 'in-down', 0.8)];
    for (const way of ['up', 'down'] as const)
      expect(time(dirty, way)).toBeGreaterThan(1.3 * time(well, way));
  });
  it('in a lowering valve: the leg does not fall freely', () => {
    const [well, dirty] = [run(fall()), run(fall(), 'debris-lodged', 'dump')];
    expect(degrees(well, 'leg', 6.9)).toBeGreaterThan(88);
    // Its friction holds it a little short of hanging straight.
    expect(degrees(well, 'leg', 17.9)).toBeLessThan(10);
    expect(degrees(dirty, 'leg', 17.9)).toBeGreaterThan(60);
  });
});

describe('oil trapped (NTSB report ERA09IA338; a home builders’ public archive)', () => {
  it('the leg hangs with nothing jammed, static pressure left in its line; cracking that line drops it', () => {
    // The line is let down at 11 s, between restrictor and jack.
    const host = swing('cracked', {
      parts: {
        crack: {
          is: 'manual-lowering-valve',
          ports: { up: 'lift', down: 'tank', return: 'tank' },
        },
      },
      steps: [
        lever(0.2, 'up'),
        lever(7, 'down'),
        { at: '11 s', device: 'crack', input: 'handle', value: 'open' },
      ],
      duration: 16,
    });
    const [well, hung] = [run(host), run(host, 'trapped-pressure', 'restrictor')];
    expect(degrees(well, 'leg', 10.9)).toBeLessThan(1);
    expect(first(hung, 'uplock', 'open', 7)).toBeLessThan(8);
    expect(degrees(hung, 'leg', 10.9)).toBeGreaterThan(80);
    expect(gauge(hung, 'lift', 10.9)).toBeGreaterThan(300 * PSI);
    expect(gauge(hung, 'up', 10.9)).toBeLessThan(20 * PSI);
    expect(degrees(hung, 'leg', 15.9)).toBeLessThan(1);
    expect(time(hung, 'up')).toBeLessThan(time(sound, 'up') + 0.1);
  });
  it('behind a sequence valve: the door does not open again', () => {
    const host = hosts.find(({ name }) => name === 'pressure-sequence')!;
    const [well, hung] = [run(host), run(host, 'trapped-pressure', 'close-valve')];
    expect(first(well, 'door', 'at open', 7)).toBeLessThan(10);
    expect(first(hung, 'door', 'at closed', 0)).toBeLessThan(6);
    expect(first(hung, 'door', 'at open', 7)).toBe(Infinity);
    expect(gauge(hung, 'door-close', 13)).toBeGreaterThan(500 * PSI);
  });
  it('in a lowering valve: the leg hangs in a free fall', () => {
    expect(degrees(run(fall(), 'trapped-pressure', 'dump'), 'leg', 17.9)).toBeGreaterThan(60);
  });
});

/** One leg on a power pack, held up by its oil alone. */
const packed = (steps: readonly Written[], more: SwingOptions = {}) =>
  swing('pack', {
    ...more,
    parts: {
      supply: {
        is: 'power-pack',
        ports: { up: 'up', down: 'down', reservoir: 'tank' },
        displacement: '1 cm^3/rev',
        'cut-out': '600 psi',
        'cut-in': '450 psi',
        'relief-up': '900 psi',
        'relief-down': '700 psi',
      },
      relief: undefined,
      selector: undefined,
      uplock: undefined,
      ...more.parts,
    },
    nodes: { pressure: undefined as unknown as Written },
    steps,
    duration: 30,
  });
const pack = (t: number, value: string): Written => ({
  at: `${String(t)} s`,
  device: 'supply',
  input: 'command',
  value,
});

describe('a valve in the power pack leaks (an owners’ public forum)', () => {
  const off = packed([pack(0.2, 'up'), pack(12, 'off')]);
  const on = packed([pack(0.2, 'up')]);
  const [well, leaking] = [run(off), run(off, 'pack-transfer-valve-leak', 'supply')];
  it('the gear sags slowly with the power off, and no oil is lost', () => {
    expect(degrees(well, 'leg', 11.9)).toBeGreaterThan(89);
    expect(degrees(leaking, 'leg', 11.9)).toBeGreaterThan(88);
    expect(degrees(well, 'leg', 29)).toBeGreaterThan(88);
    expect(degrees(leaking, 'leg', 29)).toBeLessThan(85);
    expect(degrees(leaking, 'leg', 14)).toBeGreaterThan(85);
    // What left the line is in the tank.
    expect(at(leaking, 'tank.level', 29)).toBeGreaterThan(at(leaking, 'tank.level', 11.9));
  });
  it('with the power on the motor cuts in again and again', () => {
    const starts = (r: Run): number =>
      r.log.filter((e) => e.device === 'supply' && e.from === 'up held' && e.to === 'up').length;
    expect(starts(run(on))).toBeLessThan(2);
    expect(starts(run(on, 'pack-transfer-valve-leak', 'supply'))).toBeGreaterThan(4);
  });
});

describe('the pack’s spool off its stop (a home builders’ public archive)', () => {
  const dump = { is: 'manual-lowering-valve', ports: { up: 'up', down: 'down', return: 'tank' } };
  const host = packed(
    [
      pack(0.2, 'up'),
      pack(12, 'down'),
      pack(18, 'off'),
      { at: '22 s', device: 'dump', input: 'handle', value: 'open' },
    ],
    { parts: { dump } },
  );
  const [well, hung] = [run(host), run(host, 'pack-spool-off-stop', 'supply')];
  it('the next command does nothing', () => {
    expect(degrees(well, 'leg', 11.9)).toBeGreaterThan(88);
    expect(degrees(hung, 'leg', 11.9)).toBeGreaterThan(88);
    expect(degrees(well, 'leg', 17.9)).toBeLessThan(2);
    expect(degrees(hung, 'leg', 17.9)).toBeGreaterThan(80);
    expect(gauge(hung, 'down', 17)).toBeGreaterThan(500 * PSI);
  });
  it('pressure stays on the idle side', () => {
    expect(gauge(well, 'down', 21.9)).toBeLessThan(30 * PSI);
    expect(gauge(hung, 'down', 21.9)).toBeGreaterThan(100 * PSI);
  });
  it('opening the dump valve cures it', () => {
    expect(gauge(hung, 'down', 29)).toBeLessThan(10 * PSI);
    expect(degrees(hung, 'leg', 29.9)).toBeLessThan(20);
  });
});

it('a pack’s lines transposed: nothing but the other gauge (NTSB report NYC00IA150)', () => {
  const host = packed([pack(0.2, 'up')]);
  const [well, crossed] = [run(host), run(host, 'lines-transposed', 'supply')];
  expect(degrees(well, 'leg', 12)).toBeGreaterThan(85);
  expect(degrees(crossed, 'leg', 12)).toBeLessThan(1);
  expect(gauge(crossed, 'down', 3)).toBeGreaterThan(gauge(well, 'down', 3) + 300 * PSI);
});
