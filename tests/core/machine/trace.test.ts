import { describe, expect, it } from 'vitest';
import { catalogues, glance as glanceOf } from '../../../packages/core/src/index.js';
import { glanceWith, simulateWith } from '../../../packages/core/src/machine/index.js';
import { aircraft } from '../../support/aircraft.js';
import { gearUnits } from '../../support/gear-units.js';

const scenario = gearUnits({ units: 2 });
const run = simulateWith(catalogues, scenario);

describe('traces of a run', () => {
  it('every channel has a series with strictly rising times over the whole run, and finite values', () => {
    expect(new Set(run.channels.map((c) => c.name)).size).toBe(run.channels.length);
    for (const c of run.channels) {
      const s = run.series(c.name)!;
      expect(s.t[0]).toBe(0);
      expect(s.t.at(-1)).toBe(run.duration);
      expect(s.v.length).toBe(s.t.length);
      expect(s.t.every((t, i) => i === 0 || t > s.t[i - 1])).toBe(true);
      expect(s.v.every(Number.isFinite)).toBe(true);
    }
  });

  it('a series has a point at every event', () => {
    const times = new Set(run.series('u0-leg.angle')!.t);
    for (const e of run.log) expect(times.has(e.t)).toBe(true);
  });

  it('sampled channels stand at the ticks', () => {
    const s = run.sampled('u0-leg.angle')!;
    expect(s.t.length).toBe(run.ticks);
    expect(run.ticks).toBe(Math.round(run.duration / run.tick) + 1);
    expect(s.t.every((t, i) => t === i * run.tick)).toBe(true);
  });

  it('sampled and native values are one curve', () => {
    const native = run.series('u0-leg.angle')!;
    const ticks = run.sampled('u0-leg.angle')!;
    // The angle is smooth: between native points (step ends and places between) it lies within their span.
    let i = 0;
    ticks.t.forEach((t, k) => {
      while (native.t[i + 1] < t) i++;
      const ends = [native.v[i], native.v[Math.min(i + 1, native.v.length - 1)]];
      expect(ticks.v[k]).toBeGreaterThan(Math.min(...ends) - 1e-3);
      expect(ticks.v[k]).toBeLessThan(Math.max(...ends) + 1e-3);
    });
  });

  it('an unknown channel has no series', () => {
    expect(run.series('u0-leg.colour')).toBeUndefined();
    expect(run.sampled('nobody.angle')).toBeUndefined();
  });

  it('the same run twice is the same to the last bit', () => {
    const again = simulateWith(catalogues, scenario);
    expect(again.log).toEqual(run.log);
    expect(again.statistics).toEqual(run.statistics);
    for (const c of run.channels) {
      const [a, b] = [run.series(c.name)!, again.series(c.name)!];
      expect(Buffer.compare(Buffer.from(a.v.buffer), Buffer.from(b.v.buffer))).toBe(0);
      expect(Buffer.compare(Buffer.from(a.t.buffer), Buffer.from(b.t.buffer))).toBe(0);
    }
  });

  it('reading traces, flags and accounts does not disturb the run', () => {
    const before = Float64Array.from(run.series('pressure.pressure')!.v);
    run.account();
    void run.flags;
    void run.timings;
    run.sampled('u0-leg.speed');
    const fresh = simulateWith(catalogues, scenario);
    fresh.account();
    expect(fresh.series('pressure.pressure')!.v).toEqual(before);
  });

  it.each([0.001, 0.02])('a tick of %d s gives the same log and the same native traces', (tick) => {
    const other = simulateWith(catalogues, scenario, { tick });
    expect(other.log).toEqual(run.log);
    expect(other.series('u1-lift.pressure')!.v).toEqual(run.series('u1-lift.pressure')!.v);
    expect(other.sampled('u1-leg.angle')!.t[1]).toBe(tick);
  });

  it.each([0, -1, 2, NaN])('a tick of %d s is refused', (tick) => {
    expect(() => simulateWith(catalogues, scenario, { tick })).toThrow(RangeError);
  });

  it('an unknown card is refused, with the known ones named', () => {
    expect(() => simulateWith(catalogues, scenario, { card: 'swang' })).toThrow(/swang.*swing/);
  });
});

describe('a run that was released', () => {
  it('has what was asked for before, and says that the rest is gone; others are as without it', () => {
    const play = () => simulateWith(catalogues, scenario);
    const [first, own] = [play(), play()];
    const name = first.channels[0].name;
    const before = first.series(name)!;
    const { log, timings } = first;
    first.release();
    first.release();
    // These have its memory, in which its steps still lie.
    const [second, third] = [play(), play()];
    for (const channel of own.channels) {
      expect(second.series(channel.name)).toEqual(own.series(channel.name));
      expect(third.sampled(channel.name)).toEqual(own.sampled(channel.name));
    }
    expect(first.series(name)).toBe(before);
    expect({ log: first.log, timings: first.timings }).toEqual({ log, timings });
    for (const read of [
      () => first.series(first.channels[1].name),
      () => first.sampled(name),
      () => first.look([name]),
      () => first.account(),
    ])
      expect(read).toThrow(/released/);
  });
});

describe('channels glanced at', () => {
  const { scenario: hedgelark } = aircraft('hedgelark');
  it.each(['healthy', 'doors-early', 'blow-down'])(
    'are what the run gone over again has at the ends of its steps: %s',
    (card) => {
      const glance = glanceWith(catalogues, hedgelark, { card }, () => () => true);
      const again = simulateWith(catalogues, hedgelark, { card });
      const names = again.channels.map((c) => c.name);
      const b = again.look(names);
      expect(names.length).toBeGreaterThan(100);
      expect(glance.log).toEqual(again.log);
      for (const name of names) {
        const [x, y] = [glance.series(name)!, b.get(name)!];
        expect(x.t).toEqual(y.t);
        const size = y.v.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
        y.v.forEach((v, i) => {
          if (!(Math.abs(x.v[i] - v) <= 1e-6 * size))
            throw new Error(`${name} at ${x.t[i]}: ${x.v[i]}, not ${v}`);
        });
      }
    },
  );

  it('are those asked for, of the aircraft as it is played; of others it knows nothing', () => {
    const faults = [{ fault: 'restrictor-blocked', on: 'left-leg-restrictor', severity: 1 }];
    const bores: unknown[] = [];
    const glance = glanceOf(hedgelark, { faults }, (gear) => {
      bores.push(gear.scenario.components['left-leg-restrictor'].parameters.bore);
      expect(gear.role('left-leg')).toBe('leg');
      return (channel) => channel === 'left-leg.angle';
    });
    expect(bores).toHaveLength(1);
    expect(bores[0]).toBeLessThan(
      Number(hedgelark.components['left-leg-restrictor'].parameters.bore),
    );
    expect(glance.series('left-leg.angle')!.t.length).toBeGreaterThan(100);
    expect(glance.series('right-leg.angle')).toBeUndefined();
    expect(glance.series('no-leg.angle')).toBeUndefined();
  });
});
