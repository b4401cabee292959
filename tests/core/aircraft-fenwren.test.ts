/**
 * The Fenwren does what its file says: order, times, what holds what, free fall, motor, accounts; and
 * each fault card raises its flags because of its fault and by its rules.
 * Over 250 lines, since the runs of one aircraft are made once and looked at from all sides.
 */
import { describe, expect, it } from 'vitest';
import { timings } from '@wheelwell/core';
import type { SimulatedRun } from '../../packages/core/src/machine/index.js';
import { aircraft, raised, raisedWithout, when } from '../support/aircraft.js';
import { bench } from '../support/bench.js';

const { scenario, run, play } = aircraft('fenwren');

const PSI = 6894.757;
const DEG = Math.PI / 180;
const LEGS = ['left-leg', 'right-leg', 'nose-leg'];
const BRACES = ['left-brace', 'right-brace', 'nose-brace'];

type Run = SimulatedRun;
function value(r: Run, channel: string, t: number): number {
  const s = r.series(channel)!;
  const at = s.t.findIndex((x) => x >= t);
  return s.v[at < 0 ? s.v.length - 1 : at];
}
function least(r: Run, channel: string): number {
  return r.series(channel)!.v.reduce((a, b) => Math.min(a, b));
}
function most(r: Run, channel: string, from = 0, to = Infinity): number {
  const { t, v } = r.series(channel)!;
  return v.reduce((a, b, i) => (t[i] >= from && t[i] <= to ? Math.max(a, b) : a), -Infinity);
}

describe('the Fenwren, healthy', () => {
  const healthy = run('healthy');
  const down = healthy.log.find((e) => e.kind === 'operator' && e.to === 'down')!.t;

  it.each(['healthy', 'in-flight'])('raises nothing at caution or fail: %s', (card) => {
    expect(run(card).outcome.kind).toBe('done');
    expect(raised(run(card))).toEqual([]);
  });

  it('goes up in 6 to 9 s and down in 5 to 7 s', () => {
    const all = timings(healthy);
    const longest = (way: string): number =>
      Math.max(...all.filter((t) => t.direction === way).map((t) => t.total));
    expect(all).toHaveLength(6);
    expect(longest('up')).toBeGreaterThan(6);
    expect(longest('up')).toBeLessThan(9);
    expect(longest('down')).toBeGreaterThan(5);
    expect(longest('down')).toBeLessThan(7);
    // No sooner than the pump can fill the jacks (swept volumes: areas times strokes by the law of
    // cosines): 2 x 130 + 124 cm3 at no more than its no-load flow, 1 cm3 a turn at 4000 rpm.
    expect(longest('up')).toBeGreaterThan((2 * 130 + 124) / (4000 / 60));
  });

  it('raises its mains together, and then the nose', () => {
    const nose = when(healthy, 'nose-leg', 'rising', 1.2);
    const mains = ['left-leg', 'right-leg'].map((leg) => when(healthy, leg, 'at up'));
    expect(Math.max(...mains)).toBeLessThan(nose);
    expect(nose - Math.max(...mains)).toBeLessThan(0.2);
    expect(Math.abs(mains[0] - mains[1])).toBeLessThan(0.1);
    // Not so much as a twitch before.
    expect(most(healthy, 'nose-leg.angle', 0, Math.max(...mains))).toBeLessThan(0.05 * DEG);
  });

  it('opens a brace before its leg moves, and closes it when the leg is home', () => {
    LEGS.forEach((leg, i) => {
      expect(when(healthy, BRACES[i], 'open')).toBeLessThan(when(healthy, leg, 'rising'));
      expect(when(healthy, BRACES[i], 'engaged', down)).toBeLessThan(
        when(healthy, leg, 'at down', down),
      );
    });
  });

  it('holds its legs and doors up by shut-in oil with the motor at rest', () => {
    const held = when(healthy, 'pack', 'up held');
    expect(down - held).toBeGreaterThan(9);
    expect(most(healthy, 'pack.current', held + 0.01, down)).toBe(0);
    for (const leg of LEGS) {
      const at = value(healthy, `${leg}.angle`, held + 0.1);
      expect(Math.abs(value(healthy, `${leg}.angle`, down) - at)).toBeLessThan(0.05 * DEG);
    }
    for (const door of ['left-door', 'right-door', 'nose-left-door', 'nose-right-door'])
      expect(value(healthy, `${door}.angle`, down)).toBeLessThan(0.1 * DEG);
    expect(value(healthy, 'up-tee.pressure', down)).toBeGreaterThan(1100 * PSI);
  });

  it('stops its motor by three position switches, and lets the lines down', () => {
    const last = Math.max(
      ...['left', 'right', 'nose'].map((u) => when(healthy, `${u}-down-switch`, 'made', down)),
    );
    expect(when(healthy, 'pack', 'off', last - 1e-6)).toBeCloseTo(last, 6);
    for (const line of ['pack-up', 'pack-down'])
      expect(value(healthy, `${line}.pressure`, 35) / PSI).toBeLessThan(14.7 + 10);
  });

  it('draws its current against its load', () => {
    // Volts per rad/s are newton metres per ampere, and torque is displacement times pressure
    // (speed-torque line of a permanent-magnet motor, textbooks of electric drives; from memory).
    const perNewtonMetre = (4000 * 2 * Math.PI) / 60 / 14;
    const displacement = 1e-6 / (2 * Math.PI);
    for (const t of [3, 4, 5, 7, 8]) {
      const across =
        value(healthy, 'pack.pump-up.pressure', t) - value(healthy, 'pack-down.pressure', t);
      const expected = perNewtonMetre * (displacement * across + 0.08);
      expect(value(healthy, 'pack.current', t) / expected).toBeCloseTo(1, 1);
    }
    // The load grows as the legs come level; the nose is fed behind its valve's 1050 psi.
    const current = (t: number): number => value(healthy, 'pack.current', t);
    expect(current(5.2)).toBeGreaterThan(1.5 * current(2.4));
    expect(current(7)).toBeGreaterThan(1.7 * current(5.2));
    // Once it has run up; switched on it draws what it draws at rest.
    expect(most(healthy, 'pack.current', 1.3, down - 0.1)).toBeLessThan(0.6 * 4 * perNewtonMetre);
  });

  it('keeps its pressures between nothing and the peak limit', () => {
    for (const card of ['healthy', 'cold', 'in-flight', 'free-fall'])
      for (const { name } of run(card).channels.filter((c) => c.name.endsWith('.pressure'))) {
        expect(least(run(card), name), name).toBeGreaterThan(0);
        expect(most(run(card), name) - scenario.ambient, name).toBeLessThan(2025 * PSI);
      }
  });

  it('moves its doors as rods and bars say', () => {
    const legAngle = healthy.series('left-leg.angle')!.v;
    const doorAngle = healthy.series('left-door.angle')!.v;
    // Open until the leg is half way, closed with it; never back.
    const order = [...legAngle.keys()].sort((a, b) => legAngle[a] - legAngle[b]);
    order.forEach((i, n) => {
      if (legAngle[i] < 40 * DEG) expect(doorAngle[i]).toBeGreaterThan(90 * DEG);
      if (n > 0) expect(doorAngle[i]).toBeLessThan(doorAngle[order[n - 1]] + 1e-6);
    });
    expect(doorAngle[order.at(-1)!]).toBeLessThan(0.1 * DEG);
  });

  it('keeps its tyres clear of doors and wells', () => {
    const near = healthy.flags.filter((f) => f.rule === 'clearance' || f.rule === 'bay-clearance');
    expect(near.length).toBeGreaterThanOrEqual(7);
    for (const f of near) expect(f.margin).toBeGreaterThan(0.02);
  });

  it.each(['healthy', 'free-fall'])('loses neither oil nor energy: %s', (card) => {
    const { oil, energy } = run(card, 'fine').account();
    expect(Math.abs(oil.end / oil.start - 1)).toBeLessThan(1e-12);
    expect(energy.supplied).toBeGreaterThan(1500);
    expect(Math.abs(energy.gap)).toBeLessThan(2e-4 * energy.supplied);
  });

  it('takes the times of the fine tolerance at the normal one', () => {
    for (const [device, to] of [
      ['left-leg', 'at up'],
      ['nose-leg', 'at up'],
      ['right-brace', 'engaged'],
    ])
      expect(
        Math.abs(when(healthy, device, to, 1.2) - when(run('healthy', 'fine'), device, to, 1.2)),
      )
        // A few milliseconds in several seconds: times add up over two legs and the nose.
        .toBeLessThan(5e-3);
  });
});

describe('the Fenwren in wind and cold', () => {
  it('still goes up at 90 knot, its motor under more load at the start', () => {
    const [calm, wind] = [run('healthy'), run('in-flight')];
    expect(when(wind, 'nose', 'up and closed')).toBeGreaterThan(
      when(calm, 'nose', 'up and closed'),
    );
    expect(when(wind, 'nose', 'up and closed') - 1).toBeLessThan(9);
    expect(value(wind, 'pack.current', 2.4)).toBeGreaterThan(
      1.1 * value(calm, 'pack.current', 2.4),
    );
  });

  it('lets the nose off too soon in thick oil, and only there', () => {
    expect(raised(run('cold'))).toEqual(['right-main-before-nose']);
  });
});

describe('the Fenwren in free fall', () => {
  const HANDLE = 16;
  it.each([
    ['free-fall', 11],
    ['free-fall-in-flight', 10.5],
  ])('%s: locks all three by springs, bungee and weight', (card, longest) => {
    const r = run(card);
    for (const brace of BRACES) {
      const locked = when(r, brace, 'engaged', HANDLE);
      expect(locked - HANDLE).toBeGreaterThan(5);
      expect(locked - HANDLE).toBeLessThan(longest);
      expect(r.log.filter((e) => e.device === brace).at(-1)!.to).toBe('engaged');
    }
    expect(most(r, 'pack.current', HANDLE)).toBe(0);
  });

  it('the more wind, the longer the nose takes, until it does not come home', () => {
    const knot = 1852 / 3600;
    const home = [0, 60, 90].map((v) =>
      when(play('free-fall', { airspeed: v * knot }), 'nose-brace', 'engaged', HANDLE),
    );
    expect(home[0]).toBeLessThan(home[1]);
    expect(home[1]).toBeLessThan(home[2]);
    expect(when(run('free-fall-too-fast'), 'nose-brace', 'engaged', HANDLE)).toBeNaN();
    const hangs = value(run('free-fall-too-fast'), 'nose-leg.angle', 32);
    expect(hangs).toBeGreaterThan(DEG);
    expect(hangs).toBeLessThan(10 * DEG);
  });

  it('nothing falls while the lowering valve is shut', () => {
    const steps = scenario.cards['free-fall'].steps.filter((s) => s.device !== 'lowering-valve');
    const r = play('free-fall', { steps });
    for (const leg of LEGS)
      expect(value(r, `${leg}.angle`, 30)).toBeGreaterThan(0.99 * most(r, `${leg}.angle`));
  });
});

/** What a card raises with its fault taken out. */
const WITHOUT_FAULT: Readonly<Record<string, readonly string[]>> = {
  'bungee-perished': ['slow-swing'],
};
const faulty = Object.entries(scenario.cards).filter(
  ([, c]) => c.faults.length > 0 || Object.keys(c.set).length > 0,
);

describe('the fault cards', () => {
  it('are many', () => {
    expect(faulty.length).toBeGreaterThanOrEqual(12);
  });

  describe.each(faulty)('%s', (name, card) => {
    it('raises what it expects', () => {
      expect(run(name).outcome.kind).toBe('done');
      expect(raised(run(name)).sort()).toEqual([...card.expect].sort());
    });

    it.each(card.expect.map((rule) => [rule]))('is silent on %s when that rule is off', (rule) => {
      const others = card.expect.filter((r) => r !== rule);
      expect(raisedWithout(run(name), rule).sort()).toEqual([...others].sort());
    });

    it('raises none of it without its fault', () => {
      const healthy = raised(play(name, { faults: [], set: {} }));
      expect(healthy).toEqual(WITHOUT_FAULT[name] ?? []);
      expect(card.expect.length).toBeGreaterThan(healthy.length);
    });
  });
});

it('a push within the play of a lock is no part of the swing before it', () => {
  const pushed = play('brace-short-of-centre', { faults: [] });
  expect(most(pushed, 'right-leg.speed', 25)).toBeGreaterThan(0.1);
  for (const t of timings(pushed).filter((x) => x.direction === 'down'))
    expect(t.total).toBeLessThan(6.5);
});

describe('the relays of a power pack', () => {
  it.each([
    ['off', 'off', 'off'],
    ['on', 'off', 'up'],
    ['off', 'on', 'down'],
    ['on', 'on', 'off'],
  ])('raise %s, lower %s: %s', (raise, lower, mode) => {
    const b = bench('power-pack', {
      displacement: 1.6e-7,
      reliefUp: 1e7,
      reliefDown: 4e6,
      cutOut: 9e6,
      cutIn: 7e6,
    });
    b.set('raise', raise);
    b.set('lower', lower);
    expect(b.settled()).toBe(mode);
  });
});
