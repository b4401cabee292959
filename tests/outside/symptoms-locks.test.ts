/**
 * How faults of locks show, each against the healthy run of the same gear. Signs are trade facts,
 * common practice, no source, unless a source is named beside the check.
 */
import { describe, expect, it } from 'vitest';
import { at, fault, lever, oneLeg, peak, play, story, when } from '../support/one-leg.js';
import type { Run } from '@wheelwell/core';

const AMBIENT = 101_325;
const gear = oneLeg();
const healthy = play(gear);
const upTime = (r: Run): number => when(r, 'uplock', 'engaged');
const downTime = (r: Run): number => when(r, 'downlock', 'engaged', 8);
const pull = (t: string): Record<string, string> => ({
  at: t,
  device: 'uplock',
  input: 'cable',
  value: 'pulled',
});

/** Up, then the pressure off (neutral lets both lines go); the leg hangs on its hook. */
const parked = oneLeg({
  steps: [lever('0.5 s', 'up'), lever('7 s', 'neutral')],
  duration: '25 s',
});
const held = play(parked);

it('the healthy hook holds the leg without pressure', () => {
  expect(at(held, 'leg.angle', 25)).toBeGreaterThan(1.5);
});

describe('an uplock whose hook does not reach', () => {
  it('lets the leg arrive, and drop when the pressure goes', () => {
    const run = play(parked, fault('uplock-misrigged', 'uplock'));
    expect(at(run, 'leg.angle', 6.9)).toBeGreaterThan(1.55);
    expect(upTime(run)).toBeNaN();
    expect(at(run, 'leg.angle', 25)).toBeLessThan(0.5);
  });
});

describe('a weak uplock spring', () => {
  const run = play(parked, fault('uplock-spring-weak', 'uplock'));

  it('lets the leg up and lock as ever, then works off, and the leg drops', () => {
    expect(upTime(run)).toBe(upTime(held));
    const off = when(run, 'uplock', 'shaken off');
    expect(off - upTime(run)).toBeCloseTo(5, 6);
    expect(when(held, 'uplock', 'shaken off')).toBeNaN();
    expect(at(run, 'leg.angle', 25)).toBeLessThan(0.5);
  });

  it('holds the longer the less weak it is', () => {
    const less = play(parked, fault('uplock-spring-weak', 'uplock', 0.5));
    expect(when(less, 'uplock', 'shaken off')).toBeGreaterThan(
      when(run, 'uplock', 'shaken off') + 1,
    );
  });
});

/** Up, pressure off so that the leg hangs on the hook, then down. */
const hung = oneLeg({
  steps: [lever('0.5 s', 'up'), lever('7 s', 'neutral'), lever('9 s', 'down')],
});
const sound = play(hung);
const unlock = (r: Run): number => when(r, 'uplock', 'open', 9);
const unlockGauge = (r: Run): number => peak(r, 'down-line.pressure', 9, unlock(r)) - AMBIENT;

describe('a seized uplock roller (ATSB occurrence 198702398)', () => {
  const run = play(hung, fault('uplock-roller-seized', 'uplock'));

  it('unlocks late, at a higher gauge, with the leg’s weight on the hook', () => {
    expect(unlock(run)).toBeGreaterThan(unlock(sound));
    const more = unlockGauge(run) - unlockGauge(sound);
    expect(more).toBeGreaterThan(0.3e6);
    expect(more).toBeLessThan(2.9e6);
  });

  it('changes nothing going up', () => {
    expect(upTime(run)).toBe(upTime(sound));
  });
});

describe('a leaking uplock release', () => {
  const run = play(hung, fault('uplock-release-leak', 'uplock'));

  it('makes a pause and a peak of the gauge before the leg lets go', () => {
    expect(unlock(run)).toBeGreaterThan(unlock(sound));
    expect(unlockGauge(run) - unlockGauge(sound)).toBeGreaterThan(0.8e6);
  });

  it('keeps the leg up where the supply cannot reach the peak', () => {
    const stand = {
      is: 'ground-supply',
      ports: { inlet: 'tank', outlet: 'pressure' },
      flow: '120 cm^3/s',
      pressure: '2.6 MPa',
      on: true,
    };
    const weak = oneLeg({
      components: { stand },
      steps: [lever('0.5 s', 'up'), lever('10 s', 'neutral'), lever('12 s', 'down')],
      duration: '25 s',
    });
    expect(when(play(weak), 'uplock', 'open', 12)).toBeLessThan(13);
    const stuck = play(weak, fault('uplock-release-leak', 'uplock'));
    expect(upTime(stuck)).toBeLessThan(10);
    expect(when(stuck, 'uplock', 'open', 12)).toBeNaN();
  });
});

const brace = {
  is: 'over-centre-brace',
  ports: { release: 'up-line', push: 'down-line' },
  links: { leg: { to: 'leg' } },
  upper: '380 mm',
  lower: '340 mm',
  structure: '500 mm',
  'on-leg': '450 mm',
  release: '0.3 MPa',
};

describe('a downlock that is not over centre (NTSB report WPR18LA022)', () => {
  it('shows in nothing but its own measure: a silent fault', () => {
    const run = play(gear, fault('downlock-not-over-centre', 'downlock'));
    expect(story(run)).toBe(story(healthy));
    expect(at(healthy, 'downlock.overCentre', 14)).toBeGreaterThan(0);
    expect(at(run, 'downlock.overCentre', 14)).toBeLessThan(0);
  });

  it('as a brace, locks and shows in its times as ever, and collapses under side load', () => {
    const pushed = oneLeg({
      components: { downlock: brace },
      steps: [
        lever('0.5 s', 'up'),
        lever('8 s', 'down'),
        lever('14 s', 'neutral'),
        { at: '16 s', device: 'downlock', input: 'side-load', value: '4000 N m' },
      ],
      duration: '20 s',
    });
    const [good, run] = [play(pushed), play(pushed, fault('downlock-not-over-centre', 'downlock'))];
    expect(Math.abs(downTime(run) - downTime(good))).toBeLessThan(0.05);
    expect(Math.abs(upTime(run) - upTime(good))).toBeLessThan(0.05);
    expect(when(good, 'downlock', 'open', 15)).toBeNaN();
    expect(when(run, 'downlock', 'open', 15)).toBeCloseTo(16, 2);
    expect(peak(run, 'leg.angle', 16, 20)).toBeGreaterThan(1);
    expect(peak(good, 'leg.angle', 16, 20)).toBeLessThan(0.02);
  });
});

/** Free fall: pressure off, hook drawn by its cable. */
const fall = [lever('0.5 s', 'up'), lever('7 s', 'neutral'), pull('9 s')];

describe('a weak downlock spring or bungee', () => {
  it('lets a brace lock by pressure, not in free fall (more than a push by hand: spring; owners’ club archive)', () => {
    const weak = fault('bungee-weak', 'downlock');
    const powered = oneLeg({ components: { downlock: brace } });
    expect(downTime(play(powered, weak))).toBeLessThan(14);
    const free = oneLeg({ components: { downlock: brace }, steps: fall, duration: '25 s' });
    const [good, run] = [play(free), play(free, weak)];
    expect(when(good, 'downlock', 'engaged', 9)).toBeLessThan(25);
    // Nearly down, within the reach of a push at the wheel.
    expect(at(run, 'leg.angle', 24)).toBeLessThan(0.15);
    expect(when(run, 'downlock', 'engaged', 9)).toBeNaN();
  });

  it('leaves a leg short of its lock that its bungee would have brought home', () => {
    const cord = {
      is: 'bungee',
      links: { end: { to: 'leg', expression: '0.3 * angle' } },
      preload: '400 N',
      rate: '200 N/m',
    };
    // A stiff pivot: the weight alone has no moment left near down.
    const own = { components: { cord }, leg: { friction: '60 N m', damping: '400 N m s/rad' } };
    const free = oneLeg({ ...own, steps: fall, duration: '40 s' });
    const weak = fault('bungee-weak', 'cord');
    const [good, run] = [play(free), play(free, weak)];
    expect(when(good, 'downlock', 'engaged', 9)).toBeLessThan(40);
    expect(when(run, 'downlock', 'engaged', 9)).toBeNaN();
    expect(at(run, 'leg.angle', 39)).toBeLessThan(0.4);
    expect(downTime(play(oneLeg(own), weak))).toBeLessThan(15);
  });
});

describe('a stiff downlock', () => {
  const swing = (temperature: string): [Run, Run] => {
    const own = oneLeg({
      fluid: { temperature },
      steps: [lever('0.5 s', 'up'), lever('12 s', 'down')],
      duration: '60 s',
    });
    return [play(own), play(own, fault('downlock-stiff', 'downlock'))];
  };
  const late = ([good, run]: [Run, Run]): number =>
    when(run, 'downlock', 'engaged', 12) - when(good, 'downlock', 'engaged', 12);

  it('drops in a little late in the warm, many seconds late in the cold', () => {
    const warm = late(swing('20 degC'));
    expect(warm).toBeGreaterThan(0.2);
    expect(warm).toBeLessThan(2);
    expect(late(swing('-20 degC'))).toBeGreaterThan(warm + 5);
  });

  it('changes nothing going up', () => {
    const [good, run] = swing('20 degC');
    expect(upTime(run)).toBe(upTime(good));
  });
});

describe('a stretched uplatch cable', () => {
  const free = oneLeg({ steps: fall, duration: '20 s' });

  it('does not release by the emergency handle', () => {
    const run = play(free, fault('uplatch-cable-stretched', 'uplock'));
    expect(at(play(free), 'leg.angle', 20)).toBeLessThan(0.5);
    expect(at(run, 'leg.angle', 20)).toBeGreaterThan(1.5);
  });

  it('lets the leg fall later, by itself', () => {
    const waiting = oneLeg({
      steps: [lever('0.5 s', 'up'), lever('7 s', 'neutral')],
      duration: '80 s',
    });
    const run = play(waiting, fault('uplatch-cable-stretched', 'uplock'));
    expect(at(run, 'leg.angle', 30)).toBeGreaterThan(1.5);
    expect(at(run, 'leg.angle', 80)).toBeLessThan(0.5);
    expect(at(play(waiting), 'leg.angle', 80)).toBeGreaterThan(1.5);
  });
});
