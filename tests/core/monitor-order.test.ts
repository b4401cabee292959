import { describe, expect, it } from 'vitest';
import type { Evidence, Flag } from '../../packages/core/src/define/index.js';
import { judge, rules, timings } from '../../packages/core/src/monitor/index.js';
import { swing, type Story } from '../support/evidence.js';

// Expected margins are differences of the times stated in the story: arithmetic, no other source.
const by = (e: Evidence, rule: string, device: string): Flag[] =>
  rules[rule].judge(e).filter((f) => f.devices.includes(device));

describe('door-before-leg', () => {
  it('a door that closes before the leg locks is flagged with a negative margin', () => {
    const e = swing((s) => {
      s.left.doorCloses = 5.2;
    });
    const [flag] = by(e, 'door-before-leg', 'left-door');
    expect(flag.severity).toBe('fail');
    expect(flag.margin).toBeCloseTo(-0.8, 12);
    expect([flag.from, flag.to]).toEqual([5.2, 6]);
    expect(flag.explanation).toContain('0.80 s before left-leg');
    expect(by(e, 'door-before-leg', 'right-door')[0].severity).toBe('note');
  });
  it('a door that waits is noted with the time it waited', () => {
    const [flag] = by(swing(), 'door-before-leg', 'left-door');
    expect(flag.margin).toBeCloseTo(0.4, 12);
    expect(flag.severity).toBe('note');
  });
  it('a leg that never locks counts until the next selection', () => {
    const e = swing((s) => {
      s.left.legUp = null;
      s.left.uplockEngages = null;
    });
    const [flag] = by(e, 'door-before-leg', 'left-door');
    expect(flag.margin).toBeCloseTo(6.4 - 12, 12);
    expect(flag.explanation).toContain('never locked');
  });
  it('a door that never closes cannot be judged', () => {
    const e = swing((s) => {
      s.left.doorCloses = s.left.doorClosed = s.left.doorOpens = s.left.doorOpen = null;
    });
    expect(by(e, 'door-before-leg', 'left-door')).toEqual([]);
  });
  it('a bounce of the door at its stop is not a closing motion', () => {
    const e = swing((s) => {
      s.extraLog.push(
        {
          t: 3,
          device: 'left-door',
          from: 'at open',
          to: 'falling',
          cause: 'bounce',
          by: -1,
          kind: 'motion',
          speed: 0,
        },
        {
          t: 3.01,
          device: 'left-door',
          from: 'falling',
          to: 'at open',
          cause: 'bounce',
          by: -1,
          kind: 'motion',
          speed: 0,
        },
      );
    });
    expect(by(e, 'door-before-leg', 'left-door').map((f) => f.margin)).toEqual([
      expect.closeTo(0.4, 12),
    ]);
  });
});

describe('leg-before-door', () => {
  it('a leg that sets out before its door is open is flagged', () => {
    const e = swing((s) => {
      s.right.legFalls = 12.9;
    });
    const [flag] = by(e, 'leg-before-door', 'right-leg');
    expect(flag.margin).toBeCloseTo(12.9 - 13.6, 12);
    expect(flag.severity).toBe('fail');
  });
  it('a leg that waits is noted, and doors already open are not judged', () => {
    const flags = by(swing(), 'leg-before-door', 'left-leg');
    expect(flags.map((f) => f.margin)).toEqual([expect.closeTo(0.4, 12)]);
  });
  it('a leg that never moves cannot be judged', () => {
    const e = swing((s) => {
      s.left.legFalls = s.left.legDown = s.left.downlockEngages = null;
    });
    expect(by(e, 'leg-before-door', 'left-leg')).toEqual([]);
  });
  it('stick-slip counts from the first real motion', () => {
    const motion = (t: number, from: string, to: string) =>
      ({
        t,
        device: 'left-leg',
        from,
        to,
        cause: 'friction',
        by: -1,
        kind: 'motion',
        speed: 0,
      }) as const;
    const e = swing((s) => {
      s.extraLog.push(motion(14.5, 'falling', 'held'), motion(14.6, 'held', 'falling'));
    });
    expect(by(e, 'leg-before-door', 'left-leg')[0].margin).toBeCloseTo(0.4, 12);
  });
});

describe('sequence-valve-early', () => {
  it('a plunger pushed before its leg is locked is flagged', () => {
    const e = swing((s) => {
      s.left.doorValveTrips = 5.5;
    });
    const [flag] = by(e, 'sequence-valve-early', 'left-door-valve');
    expect(flag.margin).toBeCloseTo(-0.5, 12);
    expect(flag.severity).toBe('caution');
  });
  it('a plunger pushed before its door is open is flagged', () => {
    const e = swing((s) => {
      s.left.legValveTrips = 13;
    });
    const [flag] = by(e, 'sequence-valve-early', 'left-leg-valve');
    // The door opens from 12.3 s to 13.3 s; its last hundredth begins 10 ms before the end.
    expect(flag.margin).toBeCloseTo(13 - 13.29, 9);
  });
  it('a plunger touched just before the stop is no early trip', () => {
    const e = swing((s) => {
      s.left.legValveTrips = 13.295;
    });
    const [flag] = by(e, 'sequence-valve-early', 'left-leg-valve');
    expect(flag.margin).toBeCloseTo(0.005, 9);
    expect(flag.severity).toBe('note');
  });
  it('without angles the arrival counts', () => {
    const e = swing((s) => {
      s.angles = false;
      s.left.legValveTrips = 13;
    });
    expect(by(e, 'sequence-valve-early', 'left-leg-valve')[0].margin).toBeCloseTo(-0.3, 12);
  });
  it('valves that trip at full travel are noted', () => {
    const flags = rules['sequence-valve-early'].judge(swing());
    expect(flags).toHaveLength(4);
    expect(flags.map((f) => f.severity)).toEqual(['note', 'note', 'note', 'note']);
    expect(by(swing(), 'sequence-valve-early', 'left-leg-valve')[0].margin).toBeCloseTo(0.11, 9);
  });
  it('a valve that never trips cannot be judged', () => {
    const e = swing((s) => {
      s.left.doorValveTrips = null;
    });
    expect(by(e, 'sequence-valve-early', 'left-door-valve')).toEqual([]);
  });
});

describe('switch-before-lock', () => {
  /** A swing whose left leg makes its switch at this time. */
  const watched = (made: number, change?: (story: Story) => void): Evidence =>
    swing((s) => {
      s.extraLog.push({
        ...{ t: made, device: 'left-up-switch', from: 'open', to: 'made', cause: '', by: -1 },
        ...{ kind: 'mode', speed: 0 },
      });
      change?.(s);
    });
  it('a switch that is made long before the lock is a caution, by how much', () => {
    const e = watched(5.2);
    const [flag, ...more] = by(e, 'switch-before-lock', 'left-up-switch');
    expect(more).toEqual([]);
    expect(flag.severity).toBe('caution');
    // The lock holds at 6 s; a fifth of a second is for it to drop in.
    expect(flag.margin).toBeCloseTo(5.2 - 5.8, 12);
    expect(flag.explanation).toContain('0.80 s before left-uplock');
  });
  it('one that is made with the lock, or just before it drops in, is none', () => {
    for (const made of [5.85, 6, 6.2]) {
      const [flag] = by(watched(made), 'switch-before-lock', 'left-up-switch');
      expect(flag.severity).toBe('note');
      expect(flag.margin).toBeCloseTo(made - 5.8, 12);
    }
  });
  it('one that is made for a lock that never holds fails', () => {
    const e = watched(6, (s) => {
      s.left.uplockEngages = s.left.uplockOpens = null;
    });
    const [flag] = by(e, 'switch-before-lock', 'left-uplock');
    expect(flag.severity).toBe('fail');
    expect(flag.margin).toBeCloseTo(6 - 12, 12);
    expect(flag.explanation).toContain('can fold or fall');
  });
  it('where none is made there is nothing to judge', () => {
    expect(rules['switch-before-lock'].judge(swing())).toEqual([]);
  });
});

describe('leg-not-locked', () => {
  it('a leg that did not lock where it was sent is flagged', () => {
    const e = swing((s) => {
      s.left.downlockEngages = null;
    });
    const [flag] = by(e, 'leg-not-locked', 'left-leg');
    expect(flag.margin).toBeCloseTo(-13, 12);
    expect(flag.severity).toBe('fail');
  });
  it('a leg that never left the ground end when sent up is flagged', () => {
    const e = swing((s) => {
      s.leverDown = null;
      for (const key of Object.keys(s.left) as (keyof typeof s.left)[]) s.left[key] = null;
      for (const key of [
        'doorOpens',
        'doorOpen',
        'legValveTrips',
        'uplockOpens',
        'legFalls',
        'legDown',
        'downlockEngages',
      ] as const)
        s.right[key] = null;
    });
    expect(by(e, 'leg-not-locked', 'left-leg')[0].margin).toBeCloseTo(-24, 12);
    expect(by(e, 'leg-not-locked', 'right-leg')[0].margin).toBeCloseTo(25 - 6.3, 12);
  });
  it('a locked leg is noted with the time it has been locked', () => {
    expect(by(swing(), 'leg-not-locked', 'left-leg')[0].margin).toBeCloseTo(7, 12);
  });
  it('without a selection there is nothing to judge', () => {
    const e = swing((s) => {
      s.leverUp = s.leverDown = null;
    });
    expect(rules['leg-not-locked'].judge(e)).toEqual([]);
  });
});

describe('door-not-closed', () => {
  it('a door that stays ajar after gear up is flagged', () => {
    const e = swing((s) => {
      s.right.doorClosed = null;
    });
    const [flag] = by(e, 'door-not-closed', 'right-door');
    expect(flag.margin).toBeCloseTo(-11, 12);
    expect(flag.severity).toBe('fail');
  });
  it('a closed door is noted', () => {
    expect(by(swing(), 'door-not-closed', 'left-door')[0].margin).toBeCloseTo(12 - 7.4, 12);
  });
  it('a door nobody watched cannot be judged', () => {
    const e = swing((s) => {
      s.angles = false;
      s.left.doorCloses = s.left.doorClosed = s.left.doorOpens = s.left.doorOpen = null;
    });
    expect(by(e, 'door-not-closed', 'left-door')).toEqual([]);
  });
});

describe('timings', () => {
  it('give selector, first motion, lock, doors and total per unit and direction', () => {
    const all = timings(swing());
    expect(all.map((t) => `${t.unit} ${t.direction}`)).toEqual([
      'left up',
      'right up',
      'left down',
      'right down',
    ]);
    expect(all[0]).toMatchObject({ side: 'left', start: 1, moving: 1.5, locked: 6, doors: 7.4 });
    expect(all[0].total).toBeCloseTo(6.4, 12);
    // Down ends with the later of the lock and the doors, which stay open here.
    expect(all[2]).toMatchObject({ start: 12, moving: 13.7, locked: 18, doors: 18 });
    expect(all[2].total).toBeCloseTo(6, 12);
  });
  it('are NaN for what was not reached', () => {
    const [left, right] = timings(
      swing((s) => {
        s.left.doorClosed = null;
      }),
    );
    expect(left.locked).toBe(6);
    expect(left.doors).toBeNaN();
    expect(left.total).toBeNaN();
    expect(right.total).toBeCloseTo(6.7, 12);
  });
});

describe('judge', () => {
  it('puts fails first, then cautions, then notes, each by time', () => {
    const flags = judge(
      swing((s) => {
        s.left.doorCloses = 5.2;
        s.left.doorValveTrips = 5;
        s.right.downlockEngages = null;
      }),
    );
    const rank = { fail: 0, caution: 1, note: 2 };
    const keys = flags.map((f) => rank[f.severity] * 1e6 + f.from);
    expect(keys).toEqual([...keys].sort((a, b) => a - b));
    expect(flags[0].rule).toBe('door-before-leg');
    expect(flags.some((f) => f.severity === 'caution')).toBe(true);
  });
  it('takes how things stand at the start for no event', () => {
    const change = (starts: boolean) => (s: Story) => {
      s.starts = starts;
      s.leverUp = 0;
      s.left.doorCloses = 5.2;
      s.right.downlockEngages = null;
    };
    expect(judge(swing(change(true)))).toEqual(judge(swing(change(false))));
  });
  it('finds nothing wrong with a healthy swing', () => {
    expect(judge(swing()).filter((f) => f.severity !== 'note')).toEqual([]);
  });
});
