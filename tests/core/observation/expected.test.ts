import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectedSwings, readScenario, simulate } from '@wheelwell/core';
import { aircraft } from '../../support/aircraft.js';

const PSI = 6894.757293168361;
const TEXT = readFileSync(
  new URL('../../../scenarios/hedgelark/hedgelark.yaml', import.meta.url),
  'utf8',
);
const { scenario } = readScenario(TEXT, { file: 'hedgelark.yaml' });
const run = simulate(scenario!, { card: 'healthy' });
const [up, down] = expectedSwings(run);

const { scenario: fenwren } = aircraft('fenwren');

describe('what a stopwatch would have read in a run', () => {
  it('are the times of the run from its selector', () => {
    for (const [swing, direction] of [
      [up, 'up'],
      [down, 'down'],
    ] as const) {
      const timings = run.timings.filter((t) => t.direction === direction);
      expect(swing.direction).toBe(direction);
      for (const t of timings) {
        expect(swing.times[t.unit].moving).toBeCloseTo(t.moving - t.start, 9);
        expect(swing.times[t.unit].locked).toBeCloseTo(t.locked - t.start, 9);
        expect(swing.times[t.unit].total).toBeCloseTo(t.total, 9);
      }
      expect(swing.times.gear).toEqual({ total: Math.max(...timings.map((t) => t.total)) });
    }
  });
  it('has the doors when they are home: on the way down they are open before the leg moves', () => {
    const open = run.log.find(
      (e) => e.device === 'left-door' && e.to === 'at open' && e.t > down.start,
    );
    expect(down.times.left.doors).toBeCloseTo(open!.t - down.start, 1);
    expect(down.times.left.doors).toBeLessThan(down.times.left.moving! + 0.05);
    expect(up.times.left.doors).toBeGreaterThan(up.times.left.locked!);
  });
  it('has doors that close behind the leg again when they stand open for it, both ways', () => {
    const { scenario: tarnswift } = aircraft('tarnswift');
    const swing = (options: Parameters<typeof simulate>[1]) => {
      const of = simulate(tarnswift, { card: 'healthy', tolerance: 'draft', ...options });
      return { log: of.log, swings: expectedSwings(of) };
    };
    const { log, swings } = swing({});
    expect(swings.map((s) => s.direction)).toEqual(['up', 'down']);
    for (const { start, times, order } of swings) {
      // The last of a unit's doors counts.
      const open = ['nose-left-door', 'nose-right-door'].map(
        (door) => log.find((e) => e.device === door && e.to === 'at open' && e.t > start)!.t,
      );
      expect(times.nose.opened).toBeCloseTo(Math.max(...open) - start, 9);
      for (const unit of ['left', 'right', 'nose']) {
        expect(times[unit].opened).toBeLessThan(times[unit].moving!);
        const place = (event: string) =>
          order.findIndex((e) => e.unit === unit && e.event === event);
        expect(place('opened')).toBeGreaterThanOrEqual(0);
        expect(place('opened')).toBeLessThan(place('moving'));
        expect(place('moving')).toBeLessThan(place('doors'));
      }
    }
    // One that sticks on its way never is; what stands still beside it has opened.
    const fault = { fault: 'bore-galled', on: 'right-door-jack', severity: 0.9 };
    const [{ times }] = swing({ faults: [fault] }).swings;
    expect(times.right).not.toHaveProperty('opened');
    expect(times.left.opened).toBeLessThan(2);
    expect(times.left).not.toHaveProperty('moving');
  });
  it('has doors home when they first were, also where they come open again', () => {
    const { scenario: tarnswift } = aircraft('tarnswift');
    const swing = (faults: readonly { fault: string; on: string; severity: number }[]) => {
      const of = simulate(tarnswift, { card: 'healthy', tolerance: 'draft', faults });
      return { log: of.log, swing: expectedSwings(of)[0] };
    };
    expect(swing([]).swing.strayed).toEqual({});
    // The nose doors are never shut, so the controller gives up: the hooks of the others let go in its stop.
    const { log, swing: stopped } = swing([
      { fault: 'trapped-pressure', on: 'nose-left-door-restrictor', severity: 1 },
    ]);
    const of = (device: string, from: string, to: string) =>
      log.findLast((e) => e.device === device && e.from === from && e.to === to)!.t - stopped.start;
    for (const unit of ['left', 'right']) {
      const home = of(`${unit}-door`, 'falling', 'at closed');
      expect(stopped.times[unit]).toMatchObject({ doors: home, total: home });
      expect(stopped.strayed[unit]).toBeCloseTo(of(`${unit}-door`, 'at closed', 'rising'), 9);
      expect(stopped.strayed[unit]).toBeGreaterThan(of(`${unit}-door-hook`, 'engaged', 'open'));
    }
    expect(stopped.times.nose).not.toHaveProperty('doors');
    expect(stopped.strayed).not.toHaveProperty('nose');
    expect(stopped.times).not.toHaveProperty('gear');
  });
  it('calls doors home that creep by a hair when nothing holds them any more', () => {
    const { scenario: tarnswift } = aircraft('tarnswift');
    const card = { ...tarnswift.cards.healthy, duration: 54, temperature: 263.15 };
    const of = simulate(
      { ...tarnswift, cards: { healthy: card } },
      {
        ...{ card: 'healthy', tolerance: 'draft' },
        faults: [{ fault: 'switch-misrigged', on: 'left-door-closed-switch', severity: 0.5 }],
      },
    );
    const crept = of.log.findLast((e) => e.device === 'left-door');
    expect(crept?.to).not.toBe('at closed');
    expect(of.series('left-door.angle')!.v.at(-1)).toBeLessThan(0.01);
    const [{ times, strayed }] = expectedSwings(of);
    expect(times.left.doors).toBeGreaterThan(times.left.locked!);
    expect(times.left.doors).toBeLessThan(7);
    expect(strayed).toEqual({});
  });
  it('has no such moment of doors that stay open, nor of those that their leg moves', () => {
    const fenwrenSwings = expectedSwings(
      simulate(fenwren, { card: 'healthy', tolerance: 'draft' }),
    );
    for (const { times } of [up, down, ...fenwrenSwings])
      for (const own of Object.values(times)) expect(own).not.toHaveProperty('opened');
  });
  it('has the light of each unit when all that feeds it is made, also where all is home and one is not', () => {
    const { scenario: tarnswift } = aircraft('tarnswift');
    const swing = (of: typeof tarnswift, faults: Parameters<typeof simulate>[1] = {}) => {
      const made = simulate(of, { card: 'healthy', tolerance: 'draft', ...faults });
      return { log: made.log, swings: expectedSwings(made) };
    };
    const sound = swing(tarnswift);
    for (const { direction, start, times } of sound.swings) {
      const switches = [`nose-${direction}`, 'nose-left-door-closed', 'nose-right-door-closed'];
      const made = switches.map(
        (name) =>
          sound.log.find((e) => e.device === `${name}-switch` && e.to === 'made' && e.t > start)!.t,
      );
      expect(times.nose.light).toBeCloseTo(Math.max(...made) - start, 9);
      // The doors close last, and are home a blink after their switch.
      expect(times.nose.doors! - times.nose.light!).toBeGreaterThan(0);
      expect(times.nose.doors! - times.nose.light!).toBeLessThan(0.02);
    }
    const late = { fault: 'switch-misrigged', on: 'left-door-closed-switch', severity: 0.5 };
    const [{ times }] = swing(tarnswift, { faults: [late] }).swings;
    expect(times.left).not.toHaveProperty('light');
    expect(times.left.total).toBeCloseTo(sound.swings[0].times.left.total!, 1);
    expect(times.right.light).toBeGreaterThan(6);
    // Where a door that never comes home keeps the gear waiting others creep, and a light that was on goes out.
    const { healthy } = tarnswift.cards;
    const waiting = { ...tarnswift, cards: { healthy: { ...healthy, duration: 90 } } };
    const early = { fault: 'actuator-bottoms-early', on: 'nose-left-door-jack', severity: 0.5 };
    const kept = swing(waiting, { faults: [early] });
    expect(kept.log.findLast((e) => e.device === 'right-door-closed-switch')!.to).toBe('open');
    const { doors, light } = kept.swings[0].times.right;
    expect(Math.abs(light! - doors!)).toBeLessThan(0.02);
    expect(kept.swings[0].times.nose).not.toHaveProperty('light');
    // The Fenwren's switches tell of down alone, the Hedgelark has none.
    const [raised, lowered] = swing(fenwren).swings;
    for (const unit of ['left', 'right', 'nose']) {
      expect(raised.times[unit]).not.toHaveProperty('light');
      expect(lowered.times[unit].light! - lowered.times[unit].locked!).toBeLessThan(0.05);
    }
    for (const one of [up, down])
      for (const own of Object.values(one.times)) expect(own).not.toHaveProperty('light');
    // A welded contact lights from the start, whatever the gear does.
    const { components } = fenwren;
    const { 'left-down-switch': down_ } = components;
    const welded = { ...down_, parameters: { ...down_.parameters, stuck: 'made' } };
    const stuck = swing({ ...fenwren, components: { ...components, 'left-down-switch': welded } });
    expect(stuck.swings[1].times.left.light).toBe(0);
  });
  it('lets the lock go before the leg arrives', () => {
    for (const swing of [up, down])
      for (const unit of Object.keys(scenario!.units)) {
        const { unlocked, locked } = swing.times[unit];
        expect(unlocked).toBeGreaterThan(0);
        expect(unlocked).toBeLessThan(locked!);
      }
  });
  it('has its order by time', () => {
    const times = up.order.map(({ unit, event }) => up.times[unit][event]);
    expect(times).toHaveLength(9);
    expect(times).toEqual([...times].sort((a, b) => a! - b!));
  });
  it('reads the gauge at the relief valve: less while moving than dead-headed', () => {
    const gauge = up.gauges.pressure;
    expect(gauge.moving).toBeLessThan(gauge['dead-head']!);
    expect(gauge.peak).toBeGreaterThanOrEqual(gauge['dead-head']!);
    // The stand holds what its regulator is set to, less its droop.
    expect(gauge['dead-head']! / PSI).toBeGreaterThan(1300);
    expect(gauge['dead-head']! / PSI).toBeLessThan(1500);
  });
  it('reads what the needle climbs to where a pack is switched on and off, however quickly it falls', () => {
    const read = (severity: number): { readonly high: number; readonly end: number } => {
      const leaking = { fault: 'piston-seal-bypass', on: 'right-jack', severity };
      const leaky = simulate(fenwren, { faults: severity > 0 ? [leaking] : [] });
      const [swing] = expectedSwings(leaky);
      const pressure = leaky.series('pack-up.pressure')!;
      const late = pressure.t.findLastIndex((t) => t <= swing.start + swing.times.gear.total! + 1);
      return {
        high: swing.gauges['pack-up']['dead-head']! / PSI,
        end: (pressure.v[late] - fenwren.ambient) / PSI,
      };
    };
    const all = [0, 0.03, 0.06, 0.09].map(read);
    // The same pack, which stops at the same pressure; what it has fallen to a second later is another matter.
    for (const { high } of all) expect(Math.abs(high / all[0].high - 1)).toBeLessThan(0.03);
    expect(Math.min(...all.map(({ end }) => end))).toBeLessThan(0.9 * all[0].high);
  });
  it('reads what it climbs to, however long a leg that never comes is waited for and a pack has then given up', () => {
    const [name] = Object.keys(fenwren.cards);
    const read = (duration: number): number => {
      const card = { ...fenwren.cards[name], duration };
      const patient = { ...fenwren, cards: { ...fenwren.cards, [name]: card } };
      const jammed = [{ fault: 'seal-fragment-jam', on: 'right-jack', severity: 0.5 }];
      const down = expectedSwings(simulate(patient, { faults: jammed })).at(-1)!;
      expect(down.direction).toBe('down');
      expect(down.times.right).not.toHaveProperty('locked');
      return down.gauges['pack-down']['dead-head']! / PSI;
    };
    expect(read(35)).toBeGreaterThan(500);
    expect(Math.abs(read(70) / read(35) - 1)).toBeLessThan(0.01);
  });
  it('has a leg that leant on its lock before the selector move when the lock lets go', () => {
    const leaning = [{ fault: 'selector-feed-leak', on: 'selector', severity: 0.16 }];
    const cold = { ...scenario!, fluid: { ...scenario!.fluid, temperature: 263.15 } };
    const leant = simulate(cold, { card: 'healthy', faults: leaning });
    const [swing] = expectedSwings(leant);
    const rises = leant.log.find((e) => e.device === 'left-leg' && e.to === 'rising')!;
    const opens = leant.log.find((e) => e.device === 'left-downlock' && e.to === 'open')!;
    expect(rises.t).toBeLessThan(swing.start);
    expect(swing.times.left.moving).toBeCloseTo(opens.t - swing.start, 6);
  });
  it('leaves out what did not happen', () => {
    const [stuck] = expectedSwings(simulate(scenario!, { card: 'relief-low' }));
    expect(stuck.times.left).not.toHaveProperty('locked');
    expect(stuck.times.left).not.toHaveProperty('total');
    expect(stuck.times).not.toHaveProperty('gear');
    expect(stuck.times.tail.locked).toBeGreaterThan(4);
  });
  it('reads the gauge while something moves, however long a leg that never comes is waited for', () => {
    const card = scenario!.cards['relief-low'];
    const steps = card.steps.map((s) => (s.at > 10 ? { ...s, at: s.at + 20 } : s));
    const patient = { ...card, steps, duration: card.duration + 20 };
    const longer = { ...scenario!, cards: { ...scenario!.cards, 'relief-low': patient } };
    const [short] = expectedSwings(simulate(scenario!, { card: 'relief-low' }));
    const [long] = expectedSwings(simulate(longer, { card: 'relief-low' }));
    const moving = short.gauges.pressure.moving!;
    expect(Math.abs(long.gauges.pressure.moving! / moving - 1)).toBeLessThan(0.02);
    // Stalled it stands at the relief's setting, well above what moves the legs.
    expect(long.gauges.pressure['dead-head']! / moving).toBeGreaterThan(1.03);
  });
  it('is a blow-down where gas does it, with no supply gauge', () => {
    const [gas] = expectedSwings(simulate(scenario!, { card: 'blow-down' }));
    expect(gas.direction).toBe('blow-down');
    expect(gas.gauges).toEqual({});
    expect(gas.times.gear.total).toBeGreaterThan(5);
  });
});
