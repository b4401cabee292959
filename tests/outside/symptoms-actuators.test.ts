/**
 * How faults of actuators show, each against the healthy run of the same gear. Signs are trade
 * facts, common practice, no source, unless a source is named beside the check.
 */
import { describe, expect, it } from 'vitest';
import { catalogues } from '@wheelwell/core';
import { at, fault, lever, mean, oneLeg, passes, pivots, play, when } from '../support/one-leg.js';
import type { Run } from '@wheelwell/core';

const MPA = 1e6;
const AMBIENT = 101_325;
const gauge = (run: Run, node: string, t: number): number =>
  (at(run, `${node}.pressure`, t) - AMBIENT) / MPA;

const gear = oneLeg();
const healthy = play(gear);

it('the healthy gear goes up and locks, comes down and locks', () => {
  expect(when(healthy, 'uplock', 'engaged')).toBeLessThan(6);
  expect(when(healthy, 'downlock', 'engaged', 8)).toBeLessThan(14);
});

describe('a seal fragment that jams (UK AAIB Bulletin 7/2017)', () => {
  const run = play(gear, fault('seal-fragment-jam', 'jack'));

  it('stops the leg part-way, late in its travel, the gauge at the limit of the stand', () => {
    expect(when(run, 'uplock', 'engaged')).toBeNaN();
    const travel = at(run, 'jack.rod', 7);
    expect(travel).toBeGreaterThan(0.6 * 0.278);
    expect(travel).toBeLessThan(0.8 * 0.278);
    expect(at(run, 'leg.speed', 7)).toBe(0);
    expect(gauge(run, 'pressure', 7)).toBeGreaterThan(9.8);
  });

  it('leaves the way up to there as it was', () => {
    const t = passes(healthy, 'jack.rod', 0.18);
    expect(Math.abs(passes(run, 'jack.rod', 0.18) - t)).toBeLessThan(0.05);
  });
});

describe('a galled bore (NASA ASRS report 304953)', () => {
  it('is a hard stop at one point, which pressure the other way does not free either', () => {
    const run = play(gear, fault('bore-galled', 'jack'));
    expect(when(run, 'uplock', 'engaged')).toBeNaN();
    expect(Math.abs(at(run, 'jack.rod', 7) - 0.139)).toBeLessThan(0.016);
    expect(Math.abs(at(run, 'jack.rod', 15) - at(run, 'jack.rod', 7))).toBeLessThan(0.002);
    expect(gauge(run, 'down-line', 14)).toBeGreaterThan(9);
    expect(at(healthy, 'leg.angle', 15)).toBeLessThan(0.01);
  });

  it('when slight, raises the gauge at that point both ways', () => {
    const run = play(gear, fault('bore-galled', 'jack', 0.25));
    const over = (r: Run, node: string, from: number, falling: boolean): number => {
      const [first, last] = falling ? [0.15, 0.128] : [0.128, 0.15];
      const begin = passes(r, 'jack.rod', first, from, falling);
      return mean(r, `${node}.pressure`, begin, passes(r, 'jack.rod', last, from, falling));
    };
    expect(over(run, 'lift', 0, false) - over(healthy, 'lift', 0, false)).toBeGreaterThan(MPA);
    const back = over(run, 'down-line', 8, true) - over(healthy, 'down-line', 8, true);
    expect(back).toBeGreaterThan(MPA);
  });
});

describe('an actuator fitted the wrong way round', () => {
  it('does nothing on UP but raise the gauge', () => {
    const run = play(gear, fault('actuator-reversed', 'jack'));
    expect(at(run, 'leg.angle', 7)).toBeLessThan(0.01);
    expect(at(healthy, 'leg.angle', 7)).toBeGreaterThan(1.5);
    expect(gauge(run, 'up-line', 7)).toBeGreaterThan(9.8);
  });

  it('goes up on DOWN where no lock holds it', () => {
    const unlocked = oneLeg({ leave: ['downlock', 'uplock'] });
    const run = play(unlocked, fault('actuator-reversed', 'jack'));
    expect(at(run, 'leg.angle', 7)).toBeLessThan(0.01);
    expect(at(run, 'leg.angle', 14.9)).toBeGreaterThan(1.5);
    expect(at(play(unlocked), 'leg.angle', 14.9)).toBeLessThan(0.01);
  });

  it('keeps each cushion at its own end of the jack', () => {
    const { reconnect } = catalogues.faults['actuator-reversed'];
    expect(reconnect!({ head: 'a', rod: 'b', rodChamber: 'b' })).toEqual({
      head: 'b',
      rod: 'a',
      rodChamber: 'a',
    });
    expect(reconnect!({ head: 'a', headChamber: 'c', rod: 'b' })).toEqual({
      head: 'b',
      headChamber: 'c',
      rod: 'a',
    });
  });
});

describe('an actuator that bottoms before the gear stop', () => {
  const run = play(gear, fault('actuator-bottoms-early', 'jack'));

  it('goes at full speed and stops short of the lock, the gauge at its limit', () => {
    const t = passes(healthy, 'leg.angle', 1.3);
    expect(Math.abs(passes(run, 'leg.angle', 1.3) - t)).toBeLessThan(0.05);
    expect(when(run, 'uplock', 'engaged')).toBeNaN();
    expect(at(run, 'leg.angle', 7)).toBeGreaterThan(1.4);
    expect(at(run, 'leg.angle', 7)).toBeLessThan(1.55);
    expect(gauge(run, 'up-line', 7)).toBeGreaterThan(9.8);
  });

  it('comes down and locks as ever', () => {
    expect(when(run, 'downlock', 'engaged', 8)).toBeLessThan(14);
  });
});

const locking = {
  is: 'locking-actuator',
  links: { ...pivots, leg: { to: 'leg' } },
  lock: 'both',
  'extended-at': '90 deg',
  'retracted-at': '0 deg',
  release: '4 MPa',
};
const leave = ['uplock', 'downlock'];
const stand = {
  is: 'ground-supply',
  ports: { inlet: 'tank', outlet: 'pressure' },
  flow: '120 cm^3/s',
  pressure: '6 MPa',
  on: true,
};

describe('a worn lock inside the actuator (NTSB report NYC99IA079)', () => {
  const inside = oneLeg({
    jack: locking,
    leave,
    components: { stand },
    steps: [lever('0.5 s', 'up'), lever('6 s', 'neutral')],
    duration: '12 s',
  });

  it('does not start on UP, the gauge at its limit', () => {
    const run = play(inside, fault('internal-lock-worn', 'jack', 0.4));
    expect(at(run, 'leg.angle', 6)).toBeLessThan(0.02);
    expect(gauge(run, 'up-line', 5.5)).toBeGreaterThan(5.8);
    expect(at(play(inside), 'leg.angle', 6)).toBeGreaterThan(1.5);
  });

  it('worn further, drops the leg when the pressure goes', () => {
    const run = play(inside, fault('internal-lock-worn', 'jack', 1));
    expect(at(run, 'leg.angle', 5.9)).toBeGreaterThan(1.5);
    expect(at(run, 'leg.angle', 12)).toBeLessThan(0.5);
    expect(at(play(inside), 'leg.angle', 12)).toBeGreaterThan(1.5);
  });
});

describe('leaking seals of the other jacks (NAVEDTRA 14329, internal leakage)', () => {
  const inside = oneLeg({ jack: locking, leave });

  it('a by-pass: later up, and flow that goes on at stall', () => {
    const [sound, run] = [play(inside), play(inside, fault('piston-seal-bypass', 'jack'))];
    const home = (r: Run): number => when(r, 'jack', 'locked extended');
    expect(home(run) - home(sound)).toBeGreaterThan(0.1);
    const stall = (r: Run): number => at(r, 'stand.delivery', 7);
    expect(stall(run) - stall(sound)).toBeGreaterThan(2e-5);
  });

  it('a single-acting jack stalls short or comes late, its oil goes out at the vent', () => {
    const small = oneLeg({
      jack: {
        is: 'single-acting-actuator',
        ports: { port: 'lift' },
        preload: '50 N',
        'spring-rate': '100 N/m',
      },
    });
    const [sound, run] = [play(small), play(small, fault('piston-seal-bypass', 'jack'))];
    const home = (r: Run): number => when(r, 'uplock', 'engaged');
    expect(home(sound)).toBeLessThan(6);
    expect(Number.isNaN(home(run)) || home(run) > home(sound) + 0.1).toBe(true);
    const lost = (r: Run): number => at(r, 'tank.level', 0) - at(r, 'tank.level', 7.9);
    expect(lost(run)).toBeGreaterThan(lost(sound) + 1e-5);
  });

  it('a wet rod (US Army TM 5-2350-262): oil outside, times as they were', () => {
    const [sound, run] = [play(inside), play(inside, fault('rod-seal-leak', 'jack'))];
    const home = (r: Run): number => when(r, 'jack', 'locked extended');
    expect(Math.abs(home(run) - home(sound))).toBeLessThan(0.05);
    expect(at(run, 'jack.drip', 12)).toBeGreaterThan(0);
    expect(at(sound, 'jack.drip', 12)).toBe(0);
  });
});
