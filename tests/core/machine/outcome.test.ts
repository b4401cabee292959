import { describe, expect, it } from 'vitest';
import { catalogues } from '../../../packages/core/src/index.js';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import { gearUnits } from '../../support/gear-units.js';
import { device, rig, step } from '../../support/rig.js';

/** Two modes whose guards are always above zero: each undoes the other. */
const seesaw = device('seesaw', {
  inputs: { go: { title: 'go', choices: ['no', 'yes'], initial: 0 } },
  modes: {
    left: {
      title: 'left',
      guards: [{ to: 'right', when: (d) => d.input(0) - 0.5, cause: 'tips' }],
    },
    right: {
      title: 'right',
      guards: [{ to: 'left', when: (d) => d.input(0) - 0.5, cause: 'tips back' }],
    },
  },
});
/** Switches every 20 microseconds once started: no endless loop at one instant, yet for ever. */
const buzzer = device('buzzer', {
  inputs: { go: { title: 'go', choices: ['no', 'yes'], initial: 0 } },
  modes: {
    rest: {
      title: 'rest',
      guards: [{ to: 'up', when: (d) => d.input(0) - 0.5, cause: 'started' }],
    },
    up: { title: 'up', timers: [{ to: 'down', after: () => 2e-5, cause: 'buzz' }] },
    down: { title: 'down', timers: [{ to: 'up', after: () => 2e-5, cause: 'buzz' }] },
  },
});
const bystander = device('bystander', {
  modes: {
    calm: { title: 'calm', timers: [{ to: 'done', after: () => 0.3, cause: 'time' }] },
    done: { title: 'done' },
  },
});

describe('a run that cannot go on', () => {
  it('reports devices that undo each other at one instant, and keeps what came before', () => {
    const made = rig({
      parts: { calm: { is: bystander }, one: { is: seesaw } },
      steps: [step(0.5, 'one', 'go', 1)],
    });
    const run = simulateWith(made.with, made.scenario);
    expect(run.outcome).toMatchObject({ kind: 'chatter', time: 0.5, where: ['one'] });
    expect(run.outcome.why).toContain('one');
    expect(run.outcome.hint).not.toBe('');
    expect(run.log.some((e) => e.device === 'calm' && e.to === 'done' && e.t === 0.3)).toBe(true);
    expect(run.duration).toBe(0.5);
  });

  it('names all that were switching', () => {
    const made = rig({
      parts: { one: { is: seesaw }, calm: { is: bystander }, two: { is: seesaw } },
      steps: [step(0.5, 'one', 'go', 1), step(0.5, 'two', 'go', 1)],
    });
    const run = simulateWith(made.with, made.scenario);
    expect(run.outcome).toMatchObject({ kind: 'chatter', where: ['one', 'two'] });
  });

  it('chatter at the very start is reported, not hung on', () => {
    const made = rig({ parts: { one: { is: seesaw } }, steps: [step(0, 'one', 'go', 1)] });
    const run = simulateWith(made.with, made.scenario);
    expect(run.outcome).toMatchObject({ kind: 'chatter', time: 0, where: ['one'] });
    expect(() => [
      run.flags,
      run.timings,
      run.account(),
      run.series('x'),
      run.sampled('x'),
    ]).not.toThrow();
  });

  it('reports a device that switches for ever within a moment', () => {
    const made = rig({
      parts: { calm: { is: bystander }, noisy: { is: buzzer } },
      steps: [step(0.5, 'noisy', 'go', 1)],
    });
    const run = simulateWith(made.with, made.scenario);
    expect(run.outcome).toMatchObject({ kind: 'chatter', where: ['noisy'] });
    expect(run.outcome.time).toBeLessThan(0.52);
  });

  it('ends exhausted when its budget is used up, with the log, traces and account so far', () => {
    const scenario = gearUnits({ units: 1 });
    const whole = simulateWith(catalogues, scenario);
    const run = simulateWith(catalogues, scenario, { maxSteps: 400 });
    expect(run.outcome.kind).toBe('exhausted');
    expect(run.outcome.where[0]).toMatch(/\.(content|angle|speed|spool)$/);
    expect(run.outcome.time).toBeGreaterThan(0.1);
    expect(run.outcome.time).toBeLessThan(40);
    expect(run.log).toEqual(whole.log.filter((e) => e.index < run.log.length));
    expect(run.series('u0-leg.angle')!.t.at(-1)).toBe(run.outcome.time);
    expect(run.sampled('u0-leg.angle')!.t.length).toBe(run.ticks);
    expect(Number.isFinite(run.account().energy.gap)).toBe(true);
    expect(() => run.flags).not.toThrow();
  });

  it('ends stopped when told to, and keeps what it has', () => {
    const signal = { aborted: false };
    const shares: number[] = [];
    const run = simulateWith(catalogues, gearUnits({ units: 1 }), {
      signal,
      onProgress: (share) => {
        shares.push(share);
        if (share > 0.05) signal.aborted = true;
      },
    });
    expect(run.outcome.kind).toBe('stopped');
    expect(run.outcome.time).toBeLessThan(40);
    expect(run.outcome.time).toBeGreaterThan(0.1);
    expect(run.series('u0-leg.angle')!.t.at(-1)).toBe(run.outcome.time);
    expect(shares.every((s, i) => s >= 0 && s <= 1 && (i === 0 || s >= shares[i - 1]))).toBe(true);
  });

  it.each([
    ['from the start', 0],
    ['in the middle', 0.5],
  ])(
    'a figure that is no number %s ends diverged, with its place named, and nothing is thrown',
    (_, from) => {
      const spring = device('spring', {
        ports: { out: { title: 'out', volume: 1e-5 }, drain: { title: 'drain', volume: 1e-5 } },
        states: { worn: { title: 'worn', unit: '', scale: 1, initial: 0 } },
        flows: { through: { from: 'out', to: 'drain' } },
        equations: (d) => {
          d.flow(0, 0, 0, 0);
          d.rate(0, d.state(0) >= from ? NaN : 1);
        },
      });
      const made = rig({
        parts: { calm: { is: bystander }, bad: { is: spring, ports: { out: 'a', drain: 'b' } } },
      });
      const run = simulateWith(made.with, made.scenario);
      expect(run.outcome.kind).toBe('diverged');
      expect(run.outcome.where).toEqual(['bad.worn']);
      expect(Math.abs(run.outcome.time - from)).toBeLessThan(1e-6);
      expect(() => [
        run.flags,
        run.timings,
        run.series('a.pressure'),
        run.sampled('a.pressure'),
      ]).not.toThrow();
    },
  );

  it.each([['mass'], ['inertia'], ['friction']])(
    'a leg whose %s is NaN does not throw and does not end done',
    (name) => {
      const base = gearUnits({ units: 1 });
      const leg = base.mechanisms['u0-leg'];
      const scenario = {
        ...base,
        mechanisms: {
          ...base.mechanisms,
          'u0-leg': { ...leg, parameters: { ...leg.parameters, [name]: NaN } },
        },
      };
      const run = simulateWith(catalogues, scenario, { maxSteps: 20_000 });
      expect(run.outcome.kind).toBe('diverged');
    },
  );

  it('every outcome says why in a sentence', () => {
    const run = simulateWith(catalogues, gearUnits({ units: 1, duration: 1 }));
    expect(run.outcome.kind).toBe('done');
    expect(run.outcome.why).toMatch(/\.$/);
  });
});
