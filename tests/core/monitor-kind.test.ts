import { describe, expect, it } from 'vitest';
import type { Flag, RuleEntry } from '../../packages/core/src/define/index.js';
import { judge } from '../../packages/core/src/monitor/index.js';
import { swing, type Story } from '../support/evidence.js';

// Expected margins are arithmetic on the healthy story's times, no other source.
function user(
  rule: Omit<RuleEntry, 'name' | 'text' | 'severity'>,
  change?: (s: Story) => void,
): Flag[] {
  const own: RuleEntry = { name: 'own', text: 'My own rule', severity: 'caution', ...rule };
  const e = swing((s) => {
    s.rules = [own];
    change?.(s);
  });
  return judge(e).filter((f) => f.rule === 'own');
}
const margins = (...args: Parameters<typeof user>): number[] => user(...args).map((f) => f.margin);

describe('order', () => {
  const rule = {
    kind: 'order',
    first: { device: 'left-uplock', to: 'engaged' },
    second: { device: 'left-door', to: 'falling' },
  } as const;
  it('has a positive margin the right way round', () => {
    const [flag] = user(rule);
    expect(flag.margin).toBeCloseTo(0.4, 12);
    expect(flag.severity).toBe('note');
    expect(flag.title).toBe('My own rule');
  });
  it('has a negative margin the wrong way round', () => {
    const [flag] = user(rule, (s) => (s.left.doorCloses = 5));
    expect(flag.margin).toBeCloseTo(-1, 12);
    expect(flag.severity).toBe('caution');
  });
  it('counts a first event that never came until the end of the move', () => {
    expect(margins(rule, (s) => (s.left.uplockEngages = null))).toEqual([
      expect.closeTo(6.4 - 12, 12),
    ]);
  });
  it('is silent when the second event never came', () => {
    expect(margins(rule, (s) => (s.left.doorCloses = null))).toEqual([]);
  });
  const entry = (t: number, device: string, to: string) =>
    ({ t, device, from: 'off', to, cause: '', by: -1, kind: 'mode', speed: 0 }) as const;
  const pair = {
    kind: 'order',
    first: { device: 'a', to: 'on' },
    second: { device: 'b', to: 'on' },
  } as const;
  const told = (...log: [number, string][]): number[] =>
    margins(pair, (s) => s.extraLog.push(...log.map(([t, d]) => entry(t, d, 'on'))));
  it('does not let one early cycle spend the first event of the next', () => {
    // The gear is selected at 1 s and at 12 s.
    expect(told([2, 'b'], [3, 'a'], [14, 'b'], [16, 'a'])).toEqual([-1, -2]);
  });
  it('counts a valve that flutters within one move once', () => {
    expect(told([2, 'a'], [3, 'b'], [4, 'b'], [5, 'b'])).toEqual([1]);
  });
  it('looks back before the selection where the move has no first event', () => {
    expect(told([3, 'a'], [14, 'b'])).toEqual([11]);
    expect(told([3, 'a'], [4, 'b'], [14, 'b'])).toEqual([-11, 1]);
  });
});

describe('within', () => {
  const rule = {
    kind: 'within',
    first: { device: 'selector', to: 'up' },
    second: { device: 'left-uplock', to: 'engaged' },
  } as const;
  it('is the limit less the time', () => {
    expect(margins({ ...rule, limit: 6 })).toEqual([expect.closeTo(1, 12)]);
    expect(margins({ ...rule, limit: 4.5 })).toEqual([expect.closeTo(-0.5, 12)]);
  });
  it('judges a missing event only when its time had run out', () => {
    const never = (s: Story): void => {
      s.left.uplockEngages = null;
    };
    expect(margins({ ...rule, limit: 10 }, never)).toEqual([expect.closeTo(10 - 24, 12)]);
    expect(margins({ ...rule, limit: 100 }, never)).toEqual([]);
  });
});

describe('together', () => {
  const rule = {
    kind: 'together',
    first: { device: 'left-uplock', to: 'engaged' },
    second: { device: 'right-uplock', to: 'engaged' },
  } as const;
  it('is the limit less the difference, either first', () => {
    expect(margins({ ...rule, limit: 0.5 })).toEqual([expect.closeTo(0.2, 12)]);
    expect(margins({ ...rule, limit: 0.5 }, (s) => (s.left.uplockEngages = 8))).toEqual([
      expect.closeTo(0.5 - 1.7, 12),
    ]);
  });
  it('is silent when neither came', () => {
    expect(
      margins({ ...rule, limit: 0.5 }, (s) => {
        s.left.uplockEngages = s.right.uplockEngages = null;
      }),
    ).toEqual([]);
  });
});

describe('never', () => {
  it('is minus the time both were true', () => {
    const rule = {
      kind: 'never',
      condition: { device: 'left-door', in: 'falling' },
      during: { device: 'left-leg', in: 'rising' },
    } as const;
    expect(margins(rule, (s) => (s.left.doorCloses = 5.2))).toEqual([expect.closeTo(-0.8, 12)]);
    expect(margins(rule)).toEqual([expect.closeTo(0.4, 12)]);
  });
  it('reads channels too, crossings between samples', () => {
    // The left leg's angle runs 0 to 1.5 rad from 1.5 s to 6 s and back from 13.7 s to 18 s.
    const rule = {
      kind: 'never',
      condition: { channel: 'left-leg.angle', above: 1.2 },
      during: { device: 'left-leg', in: 'rising' },
    } as const;
    expect(margins(rule)).toEqual([expect.closeTo(-0.2 * 4.5, 9)]);
  });
  it('cannot judge a channel that is not there', () => {
    expect(margins({ kind: 'never', condition: { channel: 'nothing', above: 1 } })).toEqual([]);
  });
});

describe('holds', () => {
  const rule = {
    kind: 'holds',
    condition: { device: 'left-uplock', in: 'engaged' },
    from: { device: 'left-door', to: 'falling' },
  } as const;
  it('is minus the time it lapsed', () => {
    // From 6.4 s; the uplock opens at 13.5 s, the run ends at 25 s.
    expect(margins(rule)).toEqual([expect.closeTo(-11.5, 12)]);
  });
  it('is the time it held, within what is asked', () => {
    expect(margins({ ...rule, during: { device: 'left-leg', in: 'at up' } })).toEqual([
      expect.closeTo(-0.2, 12), // the hook opens 0.2 s before the leg falls
    ]);
    expect(margins({ ...rule, during: { device: 'left-door', in: 'falling' } })).toEqual([
      expect.closeTo(1, 12),
    ]);
  });
  it('understands not', () => {
    expect(
      margins({ kind: 'holds', condition: { device: 'left-uplock', in: 'engaged', not: true } }),
    ).toEqual([expect.closeTo(-7.5, 12)]);
  });
  it('cannot judge a device the log never mentions', () => {
    expect(margins({ kind: 'holds', condition: { device: 'nothing', in: 'on' } })).toEqual([]);
  });
});

describe('limit', () => {
  const rule = { kind: 'limit', channel: 'left-leg.angle' } as const;
  it('is the distance to the nearer bound, in the unit of the channel', () => {
    const [flag] = user({ ...rule, low: -0.1, high: 1.3 });
    expect(flag.margin).toBeCloseTo(-0.2, 12);
    expect(flag.marginQuantity).toBe('angle');
    expect(flag.from).toBeCloseTo(1.5 + (1.3 / 1.5) * 4.5, 9);
    expect(margins({ ...rule, low: -0.1, high: 2 })).toEqual([expect.closeTo(0.1, 12)]);
  });
  it('counts only while asked, ends of the span included', () => {
    expect(
      margins({ ...rule, high: 1, during: { device: 'left-downlock', in: 'engaged' } }),
    ).toEqual([expect.closeTo(1, 12)]);
    // From lever down (12 s) on the leg starts up at 1.5 rad.
    expect(margins({ ...rule, high: 1, from: { device: 'selector', to: 'down' } })).toEqual([
      expect.closeTo(-0.5, 12),
    ]);
  });
  it('cannot judge from an event that never came', () => {
    expect(margins({ ...rule, high: 1, from: { device: 'selector', to: 'sideways' } })).toEqual([]);
  });
});
