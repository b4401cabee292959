import { describe, expect, it } from 'vitest';
import type { Evidence, LogEntry } from '../../packages/core/src/define/index.js';
import { rules } from '../../packages/core/src/monitor/index.js';
import { AMBIENT, swing, type Story } from '../support/evidence.js';

/** Stories that spoil many things at once, and one that says almost nothing. */
const stories: Record<string, (s: Story) => void> = {
  healthy: () => undefined,
  spoilt: (s) => {
    s.limits = {
      timeUp: 1,
      timeDown: 1,
      spread: 0.01,
      arrivalSpeed: 0.1,
      doorArrivalSpeed: 0.1,
      peakPressure: 1e5,
      residualPressure: 1e3,
      lineVelocity: 0.1,
      clearance: 1,
      reservoirContent: 1,
    };
    s.left.doorCloses = 5;
    s.left.doorValveTrips = 4;
    s.right.legFalls = 12.5;
    s.right.downlockEngages = null;
    s.right.doorClosed = s.right.doorOpens = null;
    s.outcome = { kind: 'stuck', time: 24, where: ['pump'], why: 'Why.', hint: 'Hint.' };
    for (const node of ['up-line', 'down-line', 'suction-line']) {
      s.channels[`${node}.pressure`] = [
        'pressure',
        node,
        [
          [0, 1e4],
          [5, 2 * AMBIENT],
          [25, 5 * AMBIENT],
        ],
      ];
      s.channels[`${node}.void`] = [
        'volume',
        node,
        [
          [0, 1e-4],
          [25, 0],
        ],
      ];
    }
    s.channels['relief.flow'] = [
      'flow',
      'relief',
      [
        [0, 1e-4],
        [25, 1e-4],
      ],
    ];
    s.channels['up-pipe.flow'] = [
      'flow',
      'up-pipe',
      [
        [0, 1e-3],
        [25, 1e-3],
      ],
    ];
    s.channels['reservoir.content'] = [
      'volume',
      'reservoir',
      [
        [0, 1e-3],
        [25, 1e-3],
      ],
    ];
    s.extraLog.push(
      ...said('lap', [
        [0, 'clear'],
        [7, 'clashed'],
      ]),
      ...said('left-up-switch', [
        [0, 'open'],
        [5, 'made'],
      ]),
      ...said('pump', [
        [0, 'unloaded'],
        [0.2, 'loading'],
        [0.5, 'unloaded'],
        [0.7, 'loading'],
      ]),
    );
    const steady = (v: number): [number, number][] => [
      [0, v],
      [25, v],
    ];
    s.channels['pump.current'] = ['current', 'pump', steady(60)];
    s.channels['pump.speed'] = ['angular-speed', 'pump', steady(0)];
    s.outline = (name, angle) =>
      name.endsWith('leg')
        ? {
            line: [{ x: 0, y: 0, z: 0 }],
            tyre: {
              centre: { x: 0, y: angle, z: 0 },
              axle: { x: 0.6, y: 0.8, z: 0 },
              radius: 0.3,
              width: 0.2,
            },
          }
        : { line: [{ x: 0, y: angle, z: 0 }], edge: [{ x: 0, y: 1, z: angle }] };
  },
  blown: (s) => {
    s.limits = { timeBlowDown: 5, blowDownSpread: 1 };
    s.leverDown = null;
    s.right.legFalls = s.right.legDown = s.right.downlockEngages = null;
    s.extraLog.push({
      ...{ kind: 'operator', device: 'blow-down', from: 'closed', to: 'open' },
      ...{ t: 12, cause: 'as told', by: -1, speed: 0 },
    });
    const falls = (high: number, low: number): [number, number][] => [
      [0, high],
      [12, high],
      [25, low],
    ];
    s.channels['bottle.gauge'] = ['gauge-pressure', 'bottle', falls(8e6, 3e6)];
    for (const node of ['gas-line', 'pushed', 'up-line'])
      s.channels[`${node}.pressure`] = ['pressure', node, falls(1e5, 3.1e6)];
    s.channels['vented.pressure'] = ['pressure', 'vented', falls(1e5, 1e5)];
    s.channels['tank.gas'] = ['free-gas', 'tank', falls(0, 1e-2)];
  },
  silent: (s) => {
    s.leverUp = s.leverDown = null;
    s.angles = false;
    for (const side of [s.left, s.right])
      for (const k of Object.keys(side) as (keyof typeof side)[]) side[k] = null;
  },
};

/** What the made-up swing has no words for: a well, doors that lap, a door that opens by itself. */
function more(e: Evidence): Evidence {
  const { components, units } = e.scenario;
  const links = { under: { to: 'left-door' }, over: { to: 'right-door' } };
  const bay = { roof: 0, walls: [-1, 1], ends: [-1, 1] } as const;
  const ajar = {
    t: Float64Array.of(0, 5, 7.4, 9, 10, 12.3, 13.3, 25),
    v: Float64Array.of(1.5, 1.5, 0, 0, 0.5, 0.5, 1.5, 1.5),
  };
  return {
    ...e,
    scenario: {
      ...e.scenario,
      components: { ...components, lap: { ...components.relief, links } },
      units: { ...units, left: { ...units.left, bay } },
    },
    series: (name) => (name === 'left-door.angle' ? ajar : e.series(name)),
    role: (name) => (name === 'lap' ? 'coupling' : e.role(name)),
  };
}

/** An emergency system around the made-up swing. */
function withBottle(e: Evidence): Evidence {
  const { components, units } = e.scenario;
  const part = (ports: Record<string, string>, parameters = {}) => ({
    ...components.relief,
    ports,
    parameters,
  });
  const roles: Record<string, ReturnType<Evidence['role']>> = {
    bottle: 'gas-supply',
    'blow-down': 'blow-down',
    shuttle: 'shuttle',
    dump: 'dump',
  };
  const charge = { gas: 'nitrogen', charge: 8e6, tableCharge: 12.4e6, chargeTemperature: 294.26 };
  return {
    ...e,
    scenario: {
      ...e.scenario,
      components: {
        ...components,
        reservoir: part({ return: 'tank' }),
        bottle: part({ outlet: 'bottle-out' }, charge),
        'blow-down': part({ inlet: 'bottle-out', outlet: 'gas-line' }),
        shuttle: part({ normal: 'down-line', emergency: 'gas-line', outlet: 'pushed' }),
        dump: part({ line: 'up-line', return: 'tank' }),
        jack: { ...part({ head: 'vented', rod: 'pushed' }), links: { rod: { to: 'right-leg' } } },
      },
      units: { ...units, right: { ...units.right, actuators: ['jack'] } },
    },
    role: (name) => roles[name] ?? e.role(name),
  };
}

function said(device: string, words: readonly (readonly [number, string])[]) {
  const entry = { kind: 'mode', device, cause: 'as told', by: -1, speed: 0 } as const;
  return words.map(([t, to], i): Omit<LogEntry, 'index'> => {
    return { ...entry, t, from: i === 0 ? '' : words[i - 1][1], to };
  });
}

/** Evidence of a story by name, made once more. */
function tell(name: string): Evidence {
  const e = swing(stories[name]);
  return name === 'spoilt' ? more(e) : name === 'blown' ? withBottle(e) : e;
}

describe.each(Object.entries(rules))('rule %s', (name, rule) => {
  it('is declared under its own name, with a title, a summary and a source', () => {
    expect(rule.name).toBe(name);
    expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    for (const text of [rule.title, rule.summary, rule.source])
      expect(text.length).toBeGreaterThan(10);
    expect(rule.summary).toMatch(/Margin/);
  });

  it.each(Object.keys(stories))('gives well-formed flags on a %s run', (story) => {
    const e = tell(story);
    for (const flag of rule.judge(e)) {
      expect(flag.rule).toBe(name);
      expect(Number.isFinite(flag.margin)).toBe(true);
      expect(flag.margin < 0 || flag.severity === 'note').toBe(true);
      expect(flag.from).toBeGreaterThanOrEqual(0);
      expect(flag.to).toBeGreaterThanOrEqual(flag.from);
      expect(flag.to).toBeLessThanOrEqual(e.duration);
      expect(flag.devices.length).toBeGreaterThan(0);
      expect(flag.explanation.length).toBeGreaterThan(10);
      expect(flag.explanation).not.toMatch(/NaN|undefined|Infinity/);
      expect(flag.suggestion).toContain('approved data');
    }
  });

  it('raises something on a spoilt run, and judges nothing it cannot see', () => {
    const flags = ['spoilt', 'blown'].flatMap((story) => rule.judge(tell(story)));
    expect(flags.some((f) => f.margin < 0)).toBe(true);
    expect(rule.judge(tell('silent'))).toEqual([]);
  });

  it('gives the same flags for the same evidence, and leaves the evidence alone', () => {
    const e = tell('spoilt');
    const before = JSON.stringify([e.log, e.scenario]);
    expect(rule.judge(e)).toEqual(rule.judge(e));
    expect(JSON.stringify([e.log, e.scenario])).toBe(before);
  });
});
