/** The controller: its state table as modes, guards, timers and signals, and what it refuses. */
import { describe, expect, it } from 'vitest';
import { heardNames } from '../../packages/core/src/component/shared/state-table.js';
import type { Parameters, StateTable } from '../../packages/core/src/define/index.js';
import { bench } from '../support/bench.js';

type Row = StateTable['states'][number]['next'][number];

/** A table of states with what they drive and their rows. */
function table(
  states: Readonly<Record<string, readonly [drive: readonly string[], ...next: Row[]]>>,
): StateTable {
  return {
    states: Object.entries(states).map(([name, [drive, ...next]]) => ({ name, drive, next })),
  };
}

const SEQUENCE = table({
  'down and rested': [[], { if: ['lever up', 'in-air'], to: 'doors opening' }],
  'doors opening': [
    ['open-doors'],
    { if: ['left-open', 'right-open'], to: 'gear raising' },
    { if: [], after: 8, to: 'stopped' },
  ],
  'gear raising': [
    ['open-doors', 'raise'],
    { if: ['not lever up'], to: 'stopped' },
    { if: ['left-up', 'not fault'], after: 0.5, to: 'down and rested' },
  ],
  stopped: [[]],
});

describe('controller', () => {
  const at = (of: StateTable = SEQUENCE, given: Parameters = {}) =>
    bench('controller', { table: of, ...given });

  it('hears what its rows name, once each, and drives what its states name', () => {
    expect(heardNames(SEQUENCE)).toEqual(['in-air', 'left-open', 'right-open', 'left-up', 'fault']);
    const b = at();
    expect(b.inputs).toEqual(['lever', ...heardNames(SEQUENCE)]);
    expect(Object.keys(b.device.signals!)).toEqual(['open-doors', 'raise']);
    expect(Object.keys(b.device.modes!)).toEqual(SEQUENCE.states.map((s) => s.name));
  });

  it.each(['up', 'neutral', 'down'])('starts with its lever %s as told', (lever) => {
    const b = at(SEQUENCE, { lever });
    expect(b.device.inputs!.lever.choices![b.frame.inputs[0]]).toBe(lever);
  });

  it('goes on when all terms of a row hold, not sooner', () => {
    const b = at();
    expect(b.settled()).toBe('down and rested');
    b.set('lever', 'up');
    expect(b.settled()).toBe('down and rested');
    b.set('in-air', 'on');
    expect(b.cause()).toBe('the lever is up and in-air is on');
    expect(b.settled()).toBe('doors opening');
    expect([b.says('open-doors'), b.says('raise')]).toEqual([1, 0]);
    b.set('left-open', 'on');
    expect(b.settled()).toBe('doors opening');
    b.set('right-open', 'on');
    expect(b.settled()).toBe('gear raising');
    expect([b.says('open-doors'), b.says('raise')]).toEqual([1, 1]);
    b.set('lever', 'neutral');
    expect(b.cause()).toBe('the lever is not up');
    expect(b.settled()).toBe('stopped');
    expect([b.says('open-doors'), b.says('raise')]).toEqual([0, 0]);
  });

  it('tells the log what a row reads', () => {
    const [row] = at().device.modes!['down and rested'].guards!;
    expect(row.reads).toEqual(['lever', 'in-air']);
  });

  it('leaves by time alone with a timer', () => {
    const b = at();
    const [timer, ...others] = b.device.modes!['doors opening'].timers!;
    expect(others).toEqual([]);
    expect(timer).toMatchObject({ to: 'stopped', cause: '8 s are over' });
    expect(timer.after(b.frame)).toBe(8);
  });

  it('takes a row with terms and a time when both have come', () => {
    const b = at();
    b.set('lever', 'up');
    b.frame.mode = 2;
    b.set('left-up', 'on');
    b.frame.sinceEntry = () => 0.49;
    expect(b.settled()).toBe('gear raising');
    b.frame.sinceEntry = () => 0.5;
    expect(b.cause()).toBe('left-up is on, fault is off and 0.5 s are over');
    b.set('fault', 'on');
    expect(b.settled()).toBe('gear raising');
  });

  it('keeps the declared order at the instant a time is over', () => {
    const fork = (...next: Row[]) => {
      const b = at(table({ first: [[], ...next], a: [[]], b: [[]] }));
      b.set('x', 'on');
      b.frame.sinceEntry = () => 3;
      return b.settled();
    };
    const timed: Row = { if: [], after: 3, to: 'a' };
    // What is left at `first` here is taken by the timer, which guards precede.
    expect(fork({ if: ['x'], after: 3, to: 'b' }, timed)).toBe('b');
    expect(fork(timed, { if: ['x'], after: 3, to: 'b' })).toBe('first');
    expect(fork(timed, { if: ['x'], to: 'b' })).toBe('first');
    expect(fork({ ...timed, after: 3.1 }, { if: ['x'], to: 'b' })).toBe('b');
  });

  it.each<[string, StateTable, RegExp]>([
    ['no states', { states: [] }, /at least one state/],
    [
      'a state that does not exist',
      table({ a: [[], { if: ['x'], to: 'b' }] }),
      /from "a" to "b", which is not one of its states/,
    ],
    [
      'a state no way leads to',
      table({ a: [[], { if: ['x'], to: 'b' }], b: [[]], c: [[], { if: ['x'], to: 'b' }] }),
      /a way into its state "c" from the first one, "a"/,
    ],
    [
      'a way back to itself without a time',
      table({ a: [[], { if: ['x'], to: 'a' }] }),
      /itself without a time/,
    ],
    [
      'a position the lever does not have',
      table({ a: [[], { if: ['lever sideways'], to: 'b' }], b: [[]] }),
      /not "lever sideways" \(in "a"\)/,
    ],
    [
      'a bare lever',
      table({ a: [[], { if: ['not lever'], to: 'b' }], b: [[]] }),
      /not "not lever"/,
    ],
    [
      'a position of what has none',
      table({ a: [[], { if: ['door open'], to: 'b' }], b: [[]] }),
      /not "door open"/,
    ],
    [
      'two states of one name',
      { states: [...table({ a: [[]] }).states, ...table({ a: [[]] }).states] },
      /two states called "a"/,
    ],
  ])('refuses a table with %s', (_, wrong, message) => {
    const { findings } = at(wrong);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatch(message);
  });

  it('accepts a state that nobody leaves', () => {
    expect(at().findings).toEqual([]);
  });
});
