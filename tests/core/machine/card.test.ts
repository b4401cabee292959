import { describe, expect, it } from 'vitest';
import type { CardStep, ModeDefinition } from '../../../packages/core/src/define/index.js';
import { simulateWith, type SimulatedRun } from '../../../packages/core/src/machine/index.js';
import { device, rig, step } from '../../support/rig.js';

/** A lamp with a switch, and a bell that rings half a second whenever it is pushed. */
const lamp = device('lamp', {
  inputs: { knob: { title: 'knob', choices: ['off', 'on'], initial: 0 } },
  modes: {
    dark: {
      title: 'dark',
      guards: [{ to: 'lit', when: (d) => d.input(0) - 0.5, cause: 'switched on', reads: ['knob'] }],
    },
    lit: {
      title: 'lit',
      guards: [
        { to: 'dark', when: (d) => 0.5 - d.input(0), cause: 'switched off', reads: ['knob'] },
      ],
    },
  },
});
const bell = device('bell', {
  inputs: { button: { title: 'button', choices: ['out', 'in'], initial: 0 } },
  modes: {
    silent: {
      title: 'silent',
      guards: [
        { to: 'ringing', when: (d) => d.input(0) - 0.5, cause: 'pushed', reads: ['button'] },
      ],
    },
    ringing: { title: 'ringing', timers: [{ to: 'silent', after: () => 0.5, cause: 'rung out' }] },
  } satisfies Record<string, ModeDefinition>,
});

function play(steps: readonly CardStep[], duration = 5): SimulatedRun {
  const { scenario, with: catalogues } = rig({
    parts: { lamp: { is: lamp }, bell: { is: bell } },
    steps,
    duration,
  });
  return simulateWith(catalogues, scenario);
}
const told = (run: SimulatedRun): [number, string, string][] =>
  run.log.filter((e) => e.t > 0 || e.kind === 'operator').map((e) => [e.t, e.device, e.to]);

describe('a card', () => {
  it('does timed steps at their times, exactly', () => {
    const run = play([step(1 / 3, 'lamp', 'knob', 1), step(Math.SQRT2, 'lamp', 'knob', 0)]);
    expect(told(run)).toEqual([
      [1 / 3, 'lamp', 'on'],
      [1 / 3, 'lamp', 'lit'],
      [Math.SQRT2, 'lamp', 'off'],
      [Math.SQRT2, 'lamp', 'dark'],
    ]);
  });

  it('points from a device’s answer to the operator’s entry, and words come from the choices', () => {
    const run = play([step(1, 'lamp', 'knob', 1)]);
    const [asked, answer] = run.log.slice(-2);
    expect(asked).toMatchObject({
      kind: 'operator',
      from: 'off',
      to: 'on',
      by: -1,
      cause: 'the operator sets knob',
    });
    expect(answer).toMatchObject({ kind: 'mode', by: asked.index, cause: 'switched on' });
  });

  it('does a step after an event, with its delay', () => {
    const run = play([
      step(1, 'lamp', 'knob', 1),
      step(0.25, 'bell', 'button', 1, { device: 'lamp', to: 'lit' }),
      step(0, 'bell', 'button', 0, { device: 'bell', to: 'ringing' }),
    ]);
    expect(told(run).slice(2)).toEqual([
      [1.25, 'bell', 'in'],
      [1.25, 'bell', 'ringing'],
      [1.25, 'bell', 'out'],
      [1.75, 'bell', 'silent'],
    ]);
  });

  it('a step with no delay happens at the event itself', () => {
    const run = play([
      step(1, 'bell', 'button', 1),
      step(0, 'bell', 'button', 0, { device: 'bell', to: 'ringing' }),
      step(0, 'lamp', 'knob', 1, { device: 'bell', to: 'silent' }),
    ]);
    expect(told(run)).toEqual([
      [1, 'bell', 'in'],
      [1, 'bell', 'ringing'],
      [1, 'bell', 'out'],
      [1.5, 'bell', 'silent'],
      [1.5, 'lamp', 'on'],
      [1.5, 'lamp', 'lit'],
    ]);
  });

  it('waits in order: an event before the step’s turn does not count', () => {
    const run = play([
      step(1, 'lamp', 'knob', 1),
      step(2, 'lamp', 'knob', 0),
      // The lamp was lit at 1 s; this waits for it to be lit again, which never happens.
      step(0, 'bell', 'button', 1, { device: 'lamp', to: 'lit' }),
    ]);
    expect(run.log.some((e) => e.device === 'bell' && e.t > 0)).toBe(false);
    expect(run.outcome).toMatchObject({ kind: 'done', where: ['bell'] });
    expect(run.outcome.why).toContain("lamp to be 'lit'");
  });

  it('a later step never happens before an earlier one, whatever its time says', () => {
    const run = play([step(2, 'lamp', 'knob', 1), step(1, 'bell', 'button', 1)]);
    expect(told(run).filter(([, d]) => d === 'bell')[0][0]).toBe(2);
  });

  it('steps at one time are all done at it, in order', () => {
    const run = play([step(1, 'lamp', 'knob', 1), step(1, 'bell', 'button', 1)]);
    expect(run.log.filter((e) => e.kind === 'operator').map((e) => [e.t, e.device])).toEqual([
      [1, 'lamp'],
      [1, 'bell'],
    ]);
    expect(run.log.filter((e) => e.kind === 'mode' && e.t === 1)).toHaveLength(2);
  });

  it('steps at the very start are done before time begins', () => {
    const run = play([step(0, 'lamp', 'knob', 1)]);
    expect(told(run)[0]).toEqual([0, 'lamp', 'on']);
    expect(run.log.at(-1)).toMatchObject({ device: 'lamp', to: 'lit', t: 0 });
  });

  it('a step at the very end is still done', () => {
    const run = play([step(5, 'lamp', 'knob', 1)]);
    expect(told(run)).toEqual([
      [5, 'lamp', 'on'],
      [5, 'lamp', 'lit'],
    ]);
    expect(run.outcome).toMatchObject({ kind: 'done', where: [] });
  });

  it('a step after the end is not done, and the outcome says so', () => {
    const run = play([step(6, 'lamp', 'knob', 1)]);
    expect(told(run)).toEqual([]);
    expect(run.outcome).toMatchObject({ kind: 'done', time: 5, where: ['lamp'] });
  });

  it('a number input takes the number, and the log the card’s words', () => {
    const dial = device('dial', {
      inputs: { setting: { title: 'setting', quantity: 'pressure', initial: 2 } },
      modes: {
        low: {
          title: 'low',
          guards: [{ to: 'high', when: (d) => d.input(0) - 10, cause: 'turned up' }],
        },
        high: { title: 'high' },
      },
    });
    const turn = { ...step(1, 'dial', 'setting', 12.5), text: '12.5 Pa' };
    const made = rig({ parts: { dial: { is: dial } }, steps: [turn] });
    const run = simulateWith(made.with, made.scenario);
    expect(run.log.at(-2)).toMatchObject({ kind: 'operator', to: '12.5 Pa' });
    expect(run.log.at(-1)).toMatchObject({ kind: 'mode', to: 'high' });
  });

  it('a card without anything to do plays to its end', () => {
    expect(play([]).outcome).toMatchObject({ kind: 'done', time: 5 });
  });
});

describe('a timer', () => {
  it('fires after its time in the mode, exactly, and again for every entry', () => {
    const run = play([
      step(1, 'bell', 'button', 1),
      step(1.1, 'bell', 'button', 0),
      step(3.1, 'bell', 'button', 1),
      step(3.2, 'bell', 'button', 0),
    ]);
    const silent = run.log.filter((e) => e.device === 'bell' && e.to === 'silent' && e.t > 0);
    expect(silent.map((e) => e.t)).toEqual([1.5, 3.6]);
    expect(silent[0].cause).toBe('rung out');
  });

  it('does not fire when its mode is left before', () => {
    const left = device('left', {
      inputs: { stop: { title: 'stop', choices: ['no', 'yes'], initial: 0 } },
      modes: {
        waiting: {
          title: 'waiting',
          timers: [{ to: 'late', after: () => 2, cause: 'time is up' }],
          guards: [{ to: 'stopped', when: (d) => d.input(0) - 0.5, cause: 'stopped' }],
        },
        late: { title: 'late' },
        stopped: { title: 'stopped' },
      },
    });
    const made = rig({
      parts: { left: { is: left } },
      steps: [step(1.9, 'left', 'stop', 1)],
      duration: 4,
    });
    const run = simulateWith(made.with, made.scenario);
    expect(run.log.filter((e) => e.kind === 'mode').map((e) => e.to)).toEqual([
      'waiting',
      'stopped',
    ]);
  });
});
