/**
 * Faults of lines, hoses, fittings and the return as they show, each against the healthy run of
 * the same circuit. Sources beside each; amounts and margins: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { simulate } from '@wheelwell/core';
import type { Run } from '@wheelwell/core';
import { gearUnits } from '../support/gear-units.js';
import { at, gauge, PSI } from '../support/one-jack.js';
import { lever, swing, type Written } from '../support/small-swing.js';
import { degrees, first, run, time } from '../support/symptom.js';

const tube = { bore: '5 mm', length: '3 m' };
const inUp = (part: Written, more: Parameters<typeof swing>[1] = {}) =>
  swing('up line', { ...more, between: { up: { ...tube, ...part } } });
/** Gauge at the selector's end of the up line. */
const moving = (r: Run): number => gauge(r, 'selector-up', 1.2);

describe('pinched or of too small a bore (common practice, no source)', () => {
  it.each([
    ['line', 14],
    ['hose', 14],
    ['segmented-line', 3],
  ])('%s: moving pressure up, slower at the supply’s limit, the same at stall', (is, duration) => {
    const host = inUp({ is }, duration < 14 ? { duration, steps: [lever(0.2, 'up')] } : {});
    const [sound, pinched] = [run(host), run(host, 'line-pinched', 'in-up', 0.6)];
    expect(moving(pinched)).toBeGreaterThan(moving(sound) + 100 * PSI);
    const angle = (r: Run): number => degrees(r, 'leg', 2);
    expect(angle(pinched)).toBeLessThan(angle(sound) - 5);
    if (duration < 14) return;
    expect(time(pinched, 'up')).toBeGreaterThan(1.1 * time(sound, 'up'));
    expect(gauge(pinched, 'up', 6.5)).toBeGreaterThan(0.98 * gauge(sound, 'up', 6.5));
  });
});

describe('a hose’s liner loose (common practice, no source)', () => {
  it('blocks the way home: up is normal, then the leg does not come down, and its oil stays under pressure', () => {
    const host = inUp({ is: 'hose' });
    const [sound, loose] = [run(host), run(host, 'hose-liner-flap', 'in-up')];
    expect(Math.abs(time(loose, 'up') - time(sound, 'up'))).toBeLessThan(0.1);
    expect(time(sound, 'down')).toBeLessThan(5);
    expect(time(loose, 'down')).toBe(Infinity);
    expect(first(loose, 'uplock', 'open', 7)).toBeLessThan(8);
    expect(degrees(loose, 'leg', 13.9)).toBeGreaterThan(80);
    // At its actuator’s end it would drop the leg; the selector’s end is empty.
    expect(gauge(loose, 'up', 13)).toBeGreaterThan(300 * PSI);
    expect(gauge(loose, 'selector-up', 13)).toBeLessThan(20 * PSI);
    expect(gauge(loose, 'down', 13)).toBeGreaterThan(950 * PSI);
  });
  it('blocks the feed: up gets no oil, the gauge at its limit', () => {
    const host = inUp({ is: 'hose', 'blocked-way': 'in' });
    const [sound, loose] = [run(host), run(host, 'hose-liner-flap', 'in-up')];
    expect(time(sound, 'up')).toBeLessThan(5);
    expect(time(loose, 'up')).toBe(Infinity);
    expect(gauge(loose, 'selector-up', 6)).toBeGreaterThan(950 * PSI);
    expect(gauge(loose, 'up', 6)).toBeLessThan(20 * PSI);
  });
});

describe('a hose soft with age (NTSB report ERA17LA287; signs: common practice, no source)', () => {
  const host = inUp({ is: 'hose', bore: '6.4 mm', length: '4 m' });
  const [sound, soft] = [run(host), run(host, 'hose-swollen', 'in-up')];
  /** From the leg's arrival to the stand's limit, s. */
  const builds = (r: Run): number => {
    const { t, v } = r.series('up.pressure')!;
    const home = first(r, 'leg', 'at up');
    return t[t.findIndex((x, i) => x > home && v[i] > 101_325 + 900 * PSI)] - home;
  };
  it('pressure builds slowly', () => {
    expect(builds(soft)).toBeGreaterThan(builds(sound) + 0.02);
  });
  it('takes oil that should have moved the leg', () => {
    expect(time(soft, 'up')).toBeGreaterThan(time(sound, 'up') + 0.01);
    expect(gauge(soft, 'up', 6.5)).toBeGreaterThan(0.98 * gauge(sound, 'up', 6.5));
  });
});

const level = (r: Run, t: number): number => at(r, 'tank.level', t);

describe.each(['line', 'hose'])('a hole in a %s', (is) => {
  const host = inUp({ is });
  const sound = run(host);
  const holed = run(host, 'line-pinhole', 'in-up');
  it('the level falls, the pump runs on, up is slower (NAVEDTRA 14008; NTSB report WPR16LA187)', () => {
    expect(level(holed, 6.5)).toBeLessThan(level(sound, 6.5) - 1e-4);
    expect(at(holed, 'supply.delivery', 6.5)).toBeGreaterThan(
      at(sound, 'supply.delivery', 6.5) + 3e-5,
    );
    expect(time(holed, 'up')).toBeGreaterThan(1.02 * time(sound, 'up'));
  });
  it('what oil alone holds sags (common practice, no source)', () => {
    const held = inUp(
      { is },
      { parts: { uplock: undefined }, steps: [lever(0.2, 'up'), lever(5, 'neutral')] },
    );
    const [well, sags] = [run(held), run(held, 'line-pinhole', 'in-up')];
    expect(degrees(well, 'leg', 13.9)).toBeGreaterThan(89);
    expect(degrees(sags, 'leg', 13.9)).toBeLessThan(80);
  });
});

describe('a fitting cross-threaded (NTSB report ANC20LA013)', () => {
  const host = inUp({ is: 'line' });
  const sound = run(host);
  it('at first a drip, with every time as it was', () => {
    const drips = run(host, 'fitting-leak', 'in-up', 0.2);
    const lost = (r: Run): number =>
      r.series('in-up.pinhole')?.v.reduce((a, b) => Math.max(a, b)) ?? 0;
    expect(lost(sound)).toBe(0);
    expect(lost(drips)).toBeGreaterThan(2e-7);
    for (const way of ['up', 'down'] as const)
      expect(Math.abs(time(drips, way) - time(sound, way))).toBeLessThan(0.05);
  });
  it('in the end total loss: no pressure, no gear, an empty tank', () => {
    const parted = run(host, 'fitting-leak', 'in-up');
    expect(time(sound, 'up')).toBeLessThan(5);
    expect(time(parted, 'up')).toBe(Infinity);
    expect(gauge(parted, 'up', 5)).toBeLessThan(0.3 * gauge(sound, 'up', 5));
    expect(level(parted, 6.9)).toBeLessThan(level(sound, 6.9) - 8e-4);
  });
});

describe('lines of one leg transposed (NTSB report NYC00IA150)', () => {
  const scenario = gearUnits({ duration: 14, down: 13 });
  const [sound, crossed] = [
    simulate(scenario),
    simulate(scenario, {
      faults: [{ fault: 'lines-transposed', on: 'u0-leg-jack', severity: 1 }],
    }),
  ];
  it('that leg does not go up, the other one does', () => {
    expect(time(sound, 'up', 'u0')).toBeLessThan(12);
    expect(time(crossed, 'up', 'u0')).toBe(Infinity);
    expect(first(crossed, 'u0-uplock', 'engaged')).toBe(Infinity);
    expect(first(crossed, 'u1-uplock', 'engaged')).toBeLessThan(
      first(sound, 'u1-uplock', 'engaged') + 0.1,
    );
  });
});

describe('back pressure in the return (a home builders’ public archive)', () => {
  const host = swing('return');
  const [sound, back] = [run(host), run(host, 'return-back-pressure', 'tank')];
  it('the idle line does not come down to zero, at rest either', () => {
    for (const t of [1.5, 6.5]) {
      expect(gauge(back, 'down', t)).toBeGreaterThan(gauge(sound, 'down', t) + 50 * PSI);
    }
    expect(gauge(sound, 'down', 6.5)).toBeLessThan(2 * PSI);
  });
  it('the times hardly change (common practice, no source)', () => {
    for (const way of ['up', 'down'] as const)
      expect(Math.abs(time(back, way) / time(sound, way) - 1)).toBeLessThan(0.05);
  });
  it('a switch that should reset on the idle line stays made', () => {
    const watched = swing('watched return', {
      parts: {
        switch: {
          is: 'pressure-switch',
          ports: { pressure: 'down' },
          opens: '55 psi',
          closes: '40 psi',
        },
      },
      steps: [lever(0.2, 'down'), lever(3, 'up')],
      duration: 10,
    });
    expect(first(run(watched), 'switch', 'closed', 3)).toBeLessThan(4);
    const stays = run(watched, 'return-back-pressure', 'tank');
    expect(first(stays, 'switch', 'open')).toBeLessThan(1);
    expect(first(stays, 'switch', 'closed', 3)).toBe(Infinity);
  });
});
