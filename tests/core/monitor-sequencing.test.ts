import { describe, expect, it } from 'vitest';
import type {
  Evidence,
  Flag,
  LogEntry,
  Role,
  Scenario,
} from '../../packages/core/src/define/index.js';
import { judge, rules, timings } from '../../packages/core/src/monitor/index.js';
import { swing, type Story } from '../support/evidence.js';

// Other ways to put doors and leg in order than doors that stay open with the gear down. Expected
// margins are differences of the times stated in the story: arithmetic, no other source.
const of = (flags: readonly Flag[], rule: string, device: string): Flag[] =>
  flags.filter((f) => f.rule === rule && f.devices.includes(device));

type Motion = readonly [t: number, to: string];

const motions = (device: string, words: readonly Motion[]): Omit<LogEntry, 'index'>[] =>
  words.map(([t, to], i) => ({
    t,
    kind: 'motion',
    device,
    from: i === 0 ? '' : words[i - 1][1],
    to,
    cause: 'as told',
    by: -1,
    speed: 0,
  }));

/** Doors open first and close last, both ways. */
const BOTH_WAYS: readonly Motion[] = [
  [0, 'at closed'],
  [1.1, 'rising'],
  [1.4, 'at open'],
  [6.4, 'falling'],
  [7.4, 'at closed'],
  [12.3, 'rising'],
  [13.3, 'at open'],
  [18.5, 'falling'],
  [19.5, 'at closed'],
];

/** The story of the left side with doors of another kind; log only, no angles. */
function bothWays(doors: readonly Motion[] = BOTH_WAYS, change?: (s: Story) => void): Evidence {
  return swing((s) => {
    s.angles = false;
    s.starts = true;
    s.left.doorCloses = s.left.doorClosed = s.left.doorOpens = s.left.doorOpen = null;
    change?.(s);
    s.extraLog.push(...motions('left-door', doors));
  });
}

/** Without what the made-up swing says of the door at the start. */
function cleaned(e: Evidence): Evidence {
  const log = e.log.filter(
    (x) => !(x.device === 'left-door' && x.t === 0 && x.to === 'at open' && x.from === ''),
  );
  return { ...e, log };
}

const changed = (t: number, to: string, at: number): readonly Motion[] =>
  BOTH_WAYS.map(([time, word]) => (time === t && word === to ? [at, to] : [time, word]));

describe('doors that open first and close last, both ways', () => {
  it('are right in their order, up and down', () => {
    const flags = judge(cleaned(bothWays()));
    expect(flags.filter((f) => f.severity !== 'note')).toEqual([]);
    const margins = (rule: string) => of(flags, rule, 'left-door').map((f) => f.margin);
    // Leg from 1.5 s, door open at 1.4 s; leg from 13.7 s, door open at 13.3 s.
    expect(margins('leg-before-door')).toEqual([expect.closeTo(0.1, 9), expect.closeTo(0.4, 9)]);
    // Locked at 6 s, door from 6.4 s; locked at 18 s, door from 18.5 s.
    expect(margins('door-before-leg')).toEqual([expect.closeTo(0.4, 9), expect.closeTo(0.5, 9)]);
    // Closed from 7.4 s to the selection at 12 s; from 19.5 s to the end.
    expect(margins('door-not-closed')).toEqual([expect.closeTo(4.6, 9), expect.closeTo(5.5, 9)]);
  });
  it('are flagged when the leg rises before they are open', () => {
    const e = cleaned(bothWays(changed(1.4, 'at open', 2)));
    const [up] = of(judge(e), 'leg-before-door', 'left-door');
    expect(up.margin).toBeCloseTo(1.5 - 2, 9);
    expect(up.severity).toBe('fail');
  });
  it('are flagged when they close before the leg is locked down', () => {
    const e = cleaned(bothWays(changed(18.5, 'falling', 17)));
    const [down] = of(judge(e), 'door-before-leg', 'left-door');
    expect(down.margin).toBeCloseTo(17 - 18, 9);
    expect(down.severity).toBe('fail');
  });
  it('end the time down with their last motion', () => {
    const down = timings(cleaned(bothWays())).find(
      (t) => t.unit === 'left' && t.direction === 'down',
    );
    expect(down).toMatchObject({ moving: 13.7, locked: 18, doors: 19.5 });
    expect(down?.total).toBeCloseTo(7.5, 9);
  });
  it('have not finished while they stay open after the gear came down', () => {
    const e = cleaned(bothWays(BOTH_WAYS.slice(0, -2)));
    const down = timings(e).find((t) => t.unit === 'left' && t.direction === 'down');
    expect(down?.locked).toBe(18);
    expect(down?.total).toBeNaN();
    const [flag] = of(judge(e), 'door-not-closed', 'left-door');
    expect(flag.margin).toBeCloseTo(12 - 25, 9);
    expect(flag.severity).toBe('fail');
    expect(flag.explanation).toContain('sent down');
    const slow = { ...e, scenario: { ...e.scenario, limits: { timeDown: 8 } } };
    expect(rules['slow-swing'].judge(slow)[0].margin).toBeCloseTo(8 - 13, 9);
  });
});

describe('doors that stay open with the gear down', () => {
  it('are not asked to close, and finish with the leg', () => {
    const e = swing((s) => (s.starts = true));
    expect(of(judge(e), 'door-not-closed', 'left-door')).toHaveLength(1);
    expect(timings(e).find((t) => t.direction === 'down')?.total).toBeCloseTo(6, 9);
  });
});

describe('doors that their leg moves', () => {
  // They open after the leg has set out and close before it is locked, as a linkage has it.
  const linked: readonly Motion[] = [
    [0, 'at open'],
    [1.6, 'falling'],
    [5.9, 'at closed'],
    [13.8, 'rising'],
    [17.9, 'at open'],
  ];
  const evidence = (scenario: (s: Scenario) => Scenario, coupling?: string): Evidence => {
    const e = cleaned(bothWays(linked));
    return {
      ...e,
      scenario: scenario(e.scenario),
      role: (name: string): Role | undefined =>
        name === coupling ? 'coupling' : name === 'jack' ? 'actuator' : e.role(name),
    };
  };
  const order = (e: Evidence): Flag[] => [
    ...of(judge(e), 'door-before-leg', 'left-door'),
    ...of(judge(e), 'leg-before-door', 'left-door'),
  ];
  const driven =
    (by: string) =>
    (s: Scenario): Scenario => ({
      ...s,
      mechanisms: {
        ...s.mechanisms,
        'left-door': {
          ...s.mechanisms['left-door'],
          driven: { by, angle: { x: [0, 1.5], y: [1.5, 0] } },
        },
      },
    });
  const coupled =
    (jack: boolean) =>
    (s: Scenario): Scenario => {
      const links = { driver: { to: 'left-leg' }, follower: { to: 'left-door' } };
      const plain = s.components['left-door-valve'];
      const components: Record<string, Scenario['components'][string]> = { ...s.components };
      components.chain = { ...plain, links };
      if (jack) components.jack = { ...plain, links: { rod: { to: 'left-door' } } };
      return { ...s, components };
    };

  it('are not judged for order with it', () => {
    expect(order(evidence((s) => s)).some((f) => f.severity === 'fail')).toBe(true);
    expect(order(evidence(driven('left-leg')))).toEqual([]);
    expect(order(evidence(coupled(false), 'chain'))).toEqual([]);
  });
  it('are judged when another leg moves them, or an actuator of their own', () => {
    expect(order(evidence(driven('right-leg'))).length).toBeGreaterThan(0);
    expect(order(evidence(coupled(true), 'chain')).length).toBeGreaterThan(0);
  });
});

describe('legs without a lock of their own', () => {
  const unlocked = (change: (s: Story) => void): Evidence => {
    const e = swing((s) => {
      s.left.uplockEngages = s.left.uplockOpens = null;
      s.leverDown = null;
      s.left.doorOpens = s.left.legFalls = s.left.legDown = s.left.downlockEngages = null;
      s.left.doorOpen = s.left.legValveTrips = null;
      change(s);
    });
    const left = { ...e.scenario.units.left, uplock: undefined };
    return { ...e, scenario: { ...e.scenario, units: { ...e.scenario.units, left } } };
  };
  it('count as locked where they rest', () => {
    const e = unlocked((s) => (s.left.doorCloses = 6.4));
    expect(of(judge(e), 'leg-not-locked', 'left-leg')[0].margin).toBeCloseTo(25 - 6, 9);
    expect(of(judge(e), 'door-before-leg', 'left-leg')[0].margin).toBeCloseTo(0.4, 9);
    expect(timings(e)[0]).toMatchObject({ locked: 6, doors: 7.4 });
  });
  it('are flagged when they have sagged', () => {
    const e = unlocked((s) => {
      s.extraLog.push(
        { ...motions('left-leg', [[20, 'falling']])[0], from: 'at up' },
        { ...motions('left-leg', [[22, 'held']])[0], from: 'falling' },
      );
    });
    const [flag] = of(judge(e), 'leg-not-locked', 'left-leg');
    expect(flag.margin).toBeCloseTo(1 - 25, 9);
  });
});

describe('a leg locked inside its actuator', () => {
  it('is locked by the words of that lock, at the end where it rests', () => {
    const e = swing((s) => {
      s.left.downlockOpens = s.left.downlockEngages = null;
      s.left.uplockEngages = s.left.uplockOpens = null;
      const words: readonly Motion[] = [
        [0, 'locked extended'],
        [1.2, 'free'],
        [6, 'locked retracted'],
        [13.5, 'free'],
        [18, 'locked extended'],
      ];
      s.extraLog.push(...motions('jack', words).map((x) => ({ ...x, kind: 'mode' as const })));
    });
    const left = { ...e.scenario.units.left, uplock: 'jack', downlock: 'jack' };
    const own = { ...e, scenario: { ...e.scenario, units: { left } } };
    expect(timings(own).map((t) => t.locked)).toEqual([6, 18]);
    expect(rules['leg-not-locked'].judge(own)[0].margin).toBeCloseTo(7, 9);
    // Never let go: still locked up when it was sent down.
    const stuck = { ...own, log: own.log.filter((x) => x.t < 13.4) };
    expect(rules['leg-not-locked'].judge(stuck)[0].margin).toBeCloseTo(12 - 25, 9);
  });
});
