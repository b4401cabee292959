/** Selectors at work: lever, detent, leaks and rigging. */
import { describe, expect, it } from 'vitest';
import {
  at,
  DOWN,
  FLOW,
  gauge,
  gear,
  last,
  NEUTRAL,
  PSI,
  shift,
  told,
  UP,
  when,
} from '../support/one-jack.js';
import { step } from '../support/rig.js';

const KICK = { kickOut: 5e6 };

describe('an open-centre selector', () => {
  const swing = gear('open-centre-selector', {
    selector: KICK,
    steps: [shift(0.5, UP), shift(6, DOWN), shift(12, NEUTRAL), shift(13, DOWN), shift(15, UP)],
    duration: 20,
  });

  it('lets the pump circulate in neutral at next to no pressure, with both lines shut', () => {
    expect(at(swing, 'selector.through', 0.4) / FLOW).toBeCloseTo(1, 2);
    expect(gauge(swing, 'pressure', 0.4)).toBeLessThan(100 * PSI);
    const held = gear('open-centre-selector', { selector: KICK, start: 0.5, duration: 3 });
    expect(last(held, 'leg.angle')).toBeCloseTo(0.5, 2);
  });

  it('goes back to neutral by itself at the end of the travel, with the lever still up', () => {
    expect(told(swing, 'selector').slice(0, 4)).toEqual(['shifting', 'up', 'returning', 'neutral']);
    const { cause, t } = swing.log.find((e) => e.to === 'returning')!;
    expect(cause).toContain('kick-out');
    expect(at(swing, 'leg.angle', t)).toBeCloseTo(1, 6);
    // The settings count from return, which stands under the head of the tank.
    expect(gauge(swing, 'up', t) / 5e6).toBeCloseTo(1, 2);
    expect(gauge(swing, 'pressure', 5.9)).toBeLessThan(100 * PSI);
    expect(at(swing, 'relief.through', 5.9)).toBeLessThan(1e-7);
  });

  it('goes the other way straight from there, and kicks out there too', () => {
    expect(told(swing, 'selector').slice(4, 8)).toEqual([
      'shifting',
      'down',
      'returning',
      'neutral',
    ]);
    expect(at(swing, 'leg.angle', 11.9)).toBeCloseTo(0, 6);
  });

  it('takes the same side again once the lever has been to neutral', () => {
    const after = swing.log.filter(
      (e) => e.device === 'selector' && e.kind === 'mode' && e.t >= 12,
    );
    expect(after.slice(0, 5).map((e) => e.to)).toEqual([
      'neutral',
      'shifting',
      'down',
      'returning',
      'neutral',
    ]);
    expect(after[0].t).toBe(12);
    expect(after[1].t).toBe(13);
    expect(after[5].t).toBe(15);
    expect(last(swing, 'leg.angle')).toBeCloseTo(1, 6);
  });

  it('does not heed the lever set once more to where it stands', () => {
    const again = gear('open-centre-selector', {
      selector: KICK,
      steps: [shift(0.5, UP), shift(5, UP)],
      duration: 6,
    });
    expect(told(again, 'selector')).toEqual(['shifting', 'up', 'returning', 'neutral']);
  });

  it('that does not kick out keeps the pump against the relief valve', () => {
    const stays = gear('open-centre-selector', {
      selector: { ...KICK, returns: false },
      steps: [shift(0.5, UP)],
    });
    expect(told(stays, 'selector')).toEqual(['shifting', 'up']);
    expect(gauge(stays, 'pressure', 4.9)).toBeGreaterThan(7e6);
    expect(last(stays, 'relief.through') / FLOW).toBeCloseTo(1, 2);
  });

  it('with a sluggish spool takes its time to return, and a lever moved meanwhile is obeyed', () => {
    const slow = { ...KICK, returnTime: 3 };
    const left = gear('open-centre-selector', {
      selector: slow,
      steps: [shift(0.5, UP)],
      duration: 8,
    });
    // An event is bracketed to a microsecond, and passed by a few.
    expect(when(left, 'selector', 'neutral') - when(left, 'selector', 'returning')).toBeCloseTo(
      3,
      4,
    );
    const moved = gear('open-centre-selector', {
      selector: slow,
      steps: [
        shift(0.5, UP),
        step(1, 'selector', 'lever', DOWN, { device: 'selector', to: 'returning' }),
      ],
      duration: 10,
    });
    expect(told(moved, 'selector').slice(0, 5)).toEqual([
      'shifting',
      'up',
      'returning',
      'shifting',
      'down',
    ]);
    expect(last(moved, 'leg.angle')).toBeCloseTo(0, 6);
  });

  it('with a weak detent leaves the leg short of its end', () => {
    const weak = gear('open-centre-selector', {
      selector: { kickOut: 6e5 },
      steps: [shift(0.5, UP)],
    });
    expect(told(weak, 'selector')).toEqual(['shifting', 'up', 'returning', 'neutral']);
    expect(last(weak, 'leg.angle')).toBeLessThan(0.9);
  });

  it('not in its detent lets the pump run on at low pressure while the leg stays', () => {
    const off = gear('open-centre-selector', {
      selector: { ...KICK, stopShort: 0.75 },
      steps: [shift(0.5, UP)],
    });
    expect(told(off, 'selector')).toEqual(['shifting', 'up']);
    expect(gauge(off, 'pressure', 4.9)).toBeLessThan(8e5);
    expect(last(off, 'leg.angle')).toBeLessThan(0.02);
  });

  // Open-centre selectors stand in series: common practice, no source.
  it('stands in series with another: in neutral it passes the whole flow on', () => {
    const swung = gear('open-centre-selector', {
      selector: KICK,
      supply: 'supply',
      steps: [shift(0.5, UP)],
      duration: 6,
      extra: {
        first: {
          is: 'open-centre-selector',
          ports: { pressure: 'supply', return: 'pressure', up: 'flaps-up', down: 'flaps-down' },
          parameters: KICK,
        },
      },
    });
    expect(told(swung, 'selector')).toEqual(['shifting', 'up', 'returning', 'neutral']);
    expect(told(swung, 'first')).toEqual([]);
    expect(last(swung, 'leg.angle')).toBeCloseTo(1, 6);
    expect(gauge(swung, 'supply', 5.9)).toBeLessThan(200 * PSI);
  });
});

describe('a selector valve', () => {
  it('stands where its lever is at the start', () => {
    const up = gear('selector-valve', { selector: { start: 'up' } });
    expect(up.log.find((e) => e.device === 'selector')!.to).toBe('up');
    expect(told(up, 'selector')).toEqual([]);
    expect(last(up, 'leg.angle')).toBeCloseTo(1, 6);
    const down = gear('selector-valve', {
      selector: { start: 'down' },
      steps: [shift(1, UP)],
      duration: 8,
    });
    expect(told(down, 'selector')).toEqual(['shifting', 'up']);
    expect(when(down, 'selector', 'up') - 1).toBeCloseTo(0.2, 5);
  });

  it('with its linkage off stays in the last selection whatever is asked', () => {
    const off = gear('selector-valve', {
      selector: { start: 'up', linked: false },
      steps: [shift(1, DOWN)],
    });
    expect(told(off, 'selector')).toEqual([]);
    expect(last(off, 'leg.angle')).toBeCloseTo(1, 6);
  });

  it('short of its detent feeds through what is left of its lands, or not at all', () => {
    const time = (stopShort: number): number =>
      when(
        gear('selector-valve', { selector: { stopShort }, steps: [shift(0.5, UP)], duration: 30 }),
        'leg',
        'at high',
      );
    expect(time(0.6) / time(0)).toBeGreaterThan(1.2);
    expect(time(0.75)).toBeNaN();
  });

  it('out of rig beyond its overlap moves the leg in neutral', () => {
    expect(last(gear('selector-valve', { selector: { rigging: 0.6 } }), 'leg.angle')).toBeCloseTo(
      1,
    );
    expect(last(gear('selector-valve', { selector: { rigging: 0.2 } }), 'leg.angle')).toBeLessThan(
      0.01,
    );
  });

  it('leaking from pressure to a line puts pressure there, and the leg creeps as the other line lets it', () => {
    const leak = 5e-12;
    const still = gear('selector-valve', { start: 0.5 });
    const fed = gear('selector-valve', { selector: { leakFeedUp: leak }, start: 0.5 });
    expect(gauge(fed, 'up', 4.9)).toBeGreaterThan(gauge(still, 'up', 4.9) + 100 * PSI);
    const selector = { leakFeedUp: leak, leakReturnDown: leak };
    const creeps = gear('selector-valve', { selector, start: 0.5 });
    expect(last(still, 'leg.angle')).toBeCloseTo(0.5, 2);
    expect(last(creeps, 'leg.angle') - last(still, 'leg.angle')).toBeGreaterThan(0.05);
  });

  it('leaking from a line to return lets the leg sag', () => {
    const sags = gear('selector-valve', { selector: { leakReturnUp: 5e-12 }, start: 0.5 });
    expect(last(sags, 'leg.angle')).toBeLessThan(0.485);
  });

  it('leaking from pressure to return passes supply flow at stall', () => {
    const run = gear('selector-valve', { selector: { leakAcross: 1e-11 } });
    expect(last(run, 'selector.across') / (1e-11 * gauge(run, 'pressure', 4.9))).toBeGreaterThan(
      0.1,
    );
    expect(run.channels.some((c) => c.name === 'selector.across')).toBe(true);
    expect(gear('selector-valve').channels.some((c) => c.name === 'selector.across')).toBe(false);
  });
});
