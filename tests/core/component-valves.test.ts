/** Sequence valves, hoses, lines and the manual lowering valve at work. */
import { describe, expect, it } from 'vitest';
import type { CardStep, Parameters, Run } from '../../packages/core/src/define/index.js';
import { at, DOWN, gauge, gear, last, shift, told, UP, when } from '../support/one-jack.js';
import { step } from '../support/rig.js';

describe('a plunger-operated sequence valve whose plunger pushes back', () => {
  // Symptom: the leg stops at valve contact while the pressure is low and goes on when it rises
  // (told on a public mailing list of home builders, 2005).
  const against = (limit: number, own: Parameters): Run =>
    gear('selector-valve', {
      steps: [shift(0.5, UP)],
      limit,
      extra: {
        valve: {
          is: 'sequence-valve',
          ports: { inlet: 'up', outlet: 'door' },
          links: { plunger: { to: 'leg', travel: { x: [0, 1], y: [0, 0.1] } } },
          parameters: { trip: 0.096, ...own },
        },
        door: {
          is: 'orifice',
          ports: { inlet: 'door', outlet: 'tank' },
          parameters: { bore: 5e-4 },
        },
      },
    });
  // 500 N m against 20 cm2 at 0.3 m: 0.83 MPa hold the weight, 1.2 MPa leave some 220 N m.
  const low = 1.2e6;

  it('stops the leg short at low pressure and lets it home when the pressure rises', () => {
    const free = against(low, {});
    expect(last(free, 'leg.angle')).toBeCloseTo(1, 6);
    const short = against(low, { plungerForce: 4000 });
    expect(last(short, 'leg.angle')).toBeGreaterThan(0.955);
    expect(last(short, 'leg.angle')).toBeLessThan(0.97);
    expect(told(short, 'valve')).toEqual([]);
    const home = against(4e6, { plungerForce: 4000 });
    expect(last(home, 'leg.angle')).toBeCloseTo(1, 6);
    expect(told(home, 'valve')).toContain('open');
  });

  it('pushes the harder the higher the pressure at its inlet, where that acts on it', () => {
    // Against 4 MPa on 10 cm2 the plunger gives 400 N m at 0.1 m, in vain against 4 MPa in the jack.
    expect(last(against(4e6, { plungerArea: 1e-3 }), 'leg.angle')).toBeCloseTo(1, 6);
    const stalled = against(low, { plungerForce: 1200, plungerArea: 1e-3 });
    expect(last(stalled, 'leg.angle')).toBeLessThan(0.99);
    expect(last(against(low, { plungerForce: 1200 }), 'leg.angle')).toBeCloseTo(1, 6);
  });

  it('stuck shut it passes its share however far it is pushed', () => {
    const whole = against(4e6, {});
    const half = against(4e6, { stuckShut: 1 });
    expect(last(whole, 'valve.through')).toBeGreaterThan(1e-6);
    expect(last(half, 'valve.through')).toBeLessThan(1e-8);
  });
});

describe('a hose in the up line', () => {
  const swung = (own: Parameters, line = 'hose'): Run =>
    gear('selector-valve', {
      steps: [shift(0.5, UP), shift(6, DOWN)],
      duration: 14,
      up: 'leg-up',
      extra: {
        feed: {
          is: line,
          ports: { inlet: 'up', outlet: 'leg-up' },
          parameters: { length: 1, ...own },
        },
      },
    });

  // What a flapping liner does: the fault catalogue of the trade; common practice, no source.
  it('with a loose liner acts as a check valve: up as ever, then stuck, until the line is opened', () => {
    const sound = swung({});
    const loose = swung({ flap: 1, blockedWay: 'out' });
    expect(when(loose, 'leg', 'at high')).toBeCloseTo(when(sound, 'leg', 'at high'), 2);
    expect(last(sound, 'leg.angle')).toBeCloseTo(0, 6);
    expect(last(loose, 'leg.angle')).toBeGreaterThan(0.95);
    expect(at(loose, 'leg-up.pressure', 13.9)).toBeGreaterThan(1e6);
  });

  it('with the liner loose the other way starves the way up', () => {
    const starved = swung({ flap: 1, blockedWay: 'in' });
    expect(last(starved, 'leg.angle')).toBeLessThan(0.01);
    const part = swung({ flap: 0.9, blockedWay: 'in' });
    expect(gauge(part, 'up', 2)).toBeGreaterThan(gauge(swung({}), 'up', 2) + 50_000);
  });

  it('kinked raises the moving pressure and not the one at stall', () => {
    const kinked = swung({ narrowing: 0.5 });
    const sound = swung({});
    expect(gauge(kinked, 'up', 2)).toBeGreaterThan(gauge(sound, 'up', 2) + 100_000);
    expect(gauge(kinked, 'up', 5.9) / gauge(sound, 'up', 5.9)).toBeCloseTo(1, 2);
  });

  it('aged builds pressure more slowly than a new one, and a new one more slowly than a line', () => {
    // From the end of the travel to 4 MPa at the jack.
    const rise = (run: Run): number => {
      const { t, v } = run.series('leg-up.pressure')!;
      const home = when(run, 'leg', 'at high');
      return t[v.findIndex((p, i) => t[i] > home && p > 4e6)] - home;
    };
    const fresh = rise(swung({}));
    expect(fresh).toBeGreaterThan(rise(swung({}, 'line')));
    expect(rise(swung({ softening: 20 })) / fresh).toBeGreaterThan(1.3);
  });
});

describe('a line', () => {
  const swung = (own: Parameters): Run =>
    gear('selector-valve', {
      steps: [shift(0.5, UP)],
      duration: 6,
      up: 'leg-up',
      extra: {
        feed: {
          is: 'line',
          ports: { inlet: 'up', outlet: 'leg-up' },
          parameters: { length: 2, ...own },
        },
      },
    });

  it('with a pinhole loses oil for good: the level falls and the leg is later', () => {
    const sound = swung({});
    const holed = swung({ hole: 0.8e-3 });
    const { t, v } = holed.series('feed.pinhole')!;
    let lost = 0;
    for (let i = 1; i < t.length; i++) lost += 0.5 * (v[i] + v[i - 1]) * (t[i] - t[i - 1]);
    expect(lost).toBeGreaterThan(1e-5);
    const fall = last(sound, 'tank.level') - last(holed, 'tank.level');
    expect(fall / lost).toBeGreaterThan(0.97);
    expect(fall / lost).toBeLessThan(1.03);
    expect(when(holed, 'leg', 'at high')).toBeGreaterThan(when(sound, 'leg', 'at high'));
    expect(sound.channels.some((c) => c.name === 'feed.pinhole')).toBe(false);
  });

  it('with air trapped in it is soft: the leg starts later', () => {
    const bled = when(swung({}), 'leg', 'rising');
    expect(when(swung({ air: 5e-5 }), 'leg', 'rising')).toBeGreaterThan(bled + 0.05);
  });
});

describe('a manual lowering valve', () => {
  const fallen = (own: Parameters, steps: CardStep[]): Run =>
    gear('selector-valve', {
      start: 1,
      steps,
      duration: 8,
      extra: {
        lowering: {
          is: 'manual-lowering-valve',
          ports: { up: 'up', down: 'down', return: 'tank' },
          parameters: own,
        },
      },
    });
  const pull = step(1, 'lowering', 'handle', 1);

  it('lets the leg fall by its weight with nothing selected, and holds it till then', () => {
    const free = fallen({}, [pull]);
    expect(told(free, 'lowering')).toEqual(['opening', 'open']);
    expect(when(free, 'lowering', 'open') - 1).toBeCloseTo(0.5, 6);
    expect(at(free, 'leg.angle', 0.9)).toBeGreaterThan(0.98);
    expect(last(free, 'leg.angle')).toBeCloseTo(0, 6);
    // What the head side gives fills the rod side.
    expect(at(free, 'lowering.toDown', 2)).toBeGreaterThan(1e-5);
  });

  it('with its cable off or its way blocked leaves the leg up', () => {
    expect(told(fallen({ linked: false }, [pull]), 'lowering')).toEqual([]);
    expect(last(fallen({ blocked: 1 }, [pull]), 'leg.angle')).toBeGreaterThan(0.95);
  });

  it('pushed back half way shuts from where it is', () => {
    const back = fallen({}, [pull, step(1.2, 'lowering', 'handle', 0)]);
    expect(told(back, 'lowering')).toEqual(['opening', 'closing', 'closed']);
    expect(when(back, 'lowering', 'closed')).toBeCloseTo(1.4, 6);
  });

  it('left ajar robs the way up: the pump runs free and nothing moves', () => {
    const ajar = fallen({ ajar: 0.8 }, []);
    expect(last(ajar, 'leg.angle')).toBeLessThan(0.01);
    const up = gear('selector-valve', {
      steps: [shift(0.5, UP)],
      extra: {
        lowering: {
          is: 'manual-lowering-valve',
          ports: { up: 'up', down: 'down', return: 'tank' },
          parameters: { ajar: 1, upBore: 0.006 },
        },
      },
    });
    expect(last(up, 'leg.angle')).toBeLessThan(0.01);
    expect(gauge(up, 'pressure', 4.9)).toBeLessThan(1e6);
  });
});
