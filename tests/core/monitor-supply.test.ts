import { describe, expect, it } from 'vitest';
import type { Evidence, Flag, LogEntry } from '../../packages/core/src/define/index.js';
import { rules } from '../../packages/core/src/monitor/index.js';
import { AMBIENT, swing, type Story } from '../support/evidence.js';

// Expected margins are arithmetic on the numbers stated in each story, no other source.
const judged = (rule: string, e: Evidence): readonly Flag[] => rules[rule].judge(e);

/** Mode entries of one device, each from the mode before. */
const modes = (device: string, words: readonly (readonly [number, string])[]) =>
  words.map(([t, to], i): Omit<LogEntry, 'index'> => ({
    t,
    kind: 'mode',
    device,
    from: i === 0 ? '' : words[i - 1][1],
    to,
    cause: 'pressure',
    by: -1,
    speed: 0,
  }));

describe('supply-cycling', () => {
  const cycling = (
    words: readonly (readonly [number, string])[],
    change: (s: Story) => void = () => undefined,
  ): readonly Flag[] =>
    judged(
      'supply-cycling',
      swing((s) => {
        s.extraLog.push(...modes('pump', words));
        change(s);
      }),
    );
  // Nothing moves between 7.7 s (the right door is closed) and 12.3 s.
  const unloader = [
    [0, 'loading'],
    [7.8, 'unloaded'],
    [8, 'loading'],
    [8.1, 'unloaded'],
    [9.5, 'loading'],
    [9.6, 'unloaded'],
    [11.8, 'loading'],
  ] as const;
  it('flags an unloader that loads again too soon, once, by its shortest rest', () => {
    const flags = cycling(unloader, (s) => (s.limits.cycleTime = 4));
    expect(flags).toHaveLength(1);
    expect(flags[0].margin).toBeCloseTo(1.5 - 4, 9);
    expect([flags[0].from, flags[0].to]).toEqual([8, 9.5]);
    expect(flags[0].severity).toBe('caution');
  });
  it('flags a pack that its pressure switch starts again and again', () => {
    const [flag] = cycling([
      [1, 'up'],
      [8, 'up held'],
      [9, 'up'],
      [9.1, 'up held'],
      [11, 'up'],
    ]);
    // Without a limit of the scenario: 10 s.
    expect(flag.margin).toBeCloseTo(2 - 10, 9);
  });
  it('notes a supply that rests long enough', () => {
    const [flag] = cycling(unloader, (s) => (s.limits.cycleTime = 1));
    expect(flag.margin).toBeCloseTo(0.5, 9);
    expect(flag.severity).toBe('note');
  });
  it('does not count starts while the gear uses oil, nor what an operator starts', () => {
    const busy = [
      [0, 'loading'],
      [2, 'unloaded'],
      [3, 'loading'],
      [3.5, 'unloaded'],
      [4, 'loading'],
    ] as const;
    expect(cycling(busy)).toEqual([]);
    const operated = [
      [8, 'up'],
      [8.5, 'off'],
      [9, 'up'],
      [9.5, 'off'],
      [10, 'up'],
    ] as const;
    expect(cycling(operated)).toEqual([]);
  });
});

describe('motor-stalled', () => {
  // Switched on from 1 to 8 s; it turns until `stall`, then stands until `free`.
  const motor = (stall: number, free: number) => (s: Story) => {
    s.channels['pump.current'] = [
      'current',
      'pump',
      [
        [0, 0],
        [1, 0],
        [1.000001, 60],
        [8, 60],
        [8.000001, 0],
        [25, 0],
      ],
    ];
    s.channels['pump.speed'] = [
      'angular-speed',
      'pump',
      [
        [0, 0],
        [1, 0],
        [1.1, -300],
        [stall, -300],
        [stall + 1e-6, 0],
        [free, 0],
        [free + 1e-6, -300],
        [8, -300],
        [8.1, 0],
        [25, 0],
      ],
    ];
  };
  it('flags a motor that stands under current, whichever way it turned', () => {
    const [flag] = judged('motor-stalled', swing(motor(3, 5)));
    expect(flag.margin).toBeCloseTo(-2, 4);
    expect(flag.from).toBeCloseTo(3, 4);
    expect(flag.severity).toBe('caution');
  });
  it('lets it run up, and stand without current', () => {
    const [flag] = judged('motor-stalled', swing(motor(3, 3.2)));
    expect(flag.severity).toBe('note');
    expect(flag.margin).toBeCloseTo(25, 9);
  });
  it('cannot judge what has no motor', () => {
    expect(judged('motor-stalled', swing())).toEqual([]);
  });
});

describe('trapped-pressure of other devices than a selector', () => {
  // Both lines hold pressure at the end, 5 bar in the up line and 70 bar in the down line.
  const lines = (device: string, words: readonly (readonly [number, string])[]) => {
    const e = swing((s) => {
      s.limits.residualPressure = 3e5;
      s.leverUp = s.leverDown = null;
      s.extraLog.push(...modes(device, words));
      s.extraLog.push(
        ...(
          [
            [1, 'up'],
            [12, 'down'],
          ] as const
        ).map(([t, to]): Omit<LogEntry, 'index'> => ({
          t,
          kind: 'operator',
          device: 'lever',
          from: '',
          to,
          cause: 'operator',
          by: -1,
          speed: 0,
        })),
      );
      for (const [node, gauge] of [
        ['up-line', 5e5],
        ['down-line', 70e5],
      ] as const)
        s.channels[`${node}.pressure`] = [
          'pressure',
          node,
          [
            [0, AMBIENT],
            [25, AMBIENT + gauge],
          ],
        ];
    });
    const { selector, ...rest } = e.scenario.components;
    const components = { ...rest, [device]: { ...selector, is: 'made-up' } };
    return { ...e, scenario: { ...e.scenario, components } };
  };
  const found = (e: Evidence): unknown =>
    judged('trapped-pressure', e).map((f) => [f.devices.join(), Math.round(f.margin)]);

  it('judges the line a pack did not press into last, though the pack stands', () => {
    const words = [
      [1, 'up'],
      [9, 'up held'],
      [12, 'down'],
      [20, 'off'],
    ] as const;
    expect(found(lines('pump', words))).toEqual([['pump,up-line', -200_000]]);
  });
  it('judges both lines of a valve worked by wire that stands in neutral', () => {
    const words = [
      [1, 'up'],
      [9, 'neutral'],
      [12, 'down'],
      [20, 'neutral'],
    ] as const;
    expect(found(lines('solenoids', words))).toEqual([
      ['solenoids,up-line', -200_000],
      ['solenoids,down-line', -6_700_000],
    ]);
  });
  it('leaves the line alone that holds a leg without a lock', () => {
    const e = lines('solenoids', [
      [1, 'up'],
      [12, 'down'],
      [20, 'neutral'],
    ]);
    const left = { ...e.scenario.units.left, downlock: undefined };
    const units = { ...e.scenario.units, left };
    expect(found({ ...e, scenario: { ...e.scenario, units } })).toEqual([
      ['solenoids,up-line', -200_000],
    ]);
  });
});
