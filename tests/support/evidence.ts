/**
 * Made-up evidence for monitors and reports: an invented gear swing told as a list of times.
 * Nothing here is simulated, so a test can state exactly what happened and when.
 */
import type {
  Card,
  Evidence,
  LogEntry,
  Outcome,
  Placement,
  Quantity,
  Role,
  Scenario,
  Series,
} from '../../packages/core/src/define/index.js';

/** When things happen on one side, s; null: never. */
export interface SideTimes {
  downlockOpens: number | null;
  legRises: number | null;
  legUp: number | null;
  uplockEngages: number | null;
  doorValveTrips: number | null;
  doorCloses: number | null;
  doorClosed: number | null;
  doorOpens: number | null;
  doorOpen: number | null;
  legValveTrips: number | null;
  uplockOpens: number | null;
  legFalls: number | null;
  legDown: number | null;
  downlockEngages: number | null;
}

const HEALTHY: SideTimes = {
  downlockOpens: 1.2,
  legRises: 1.5,
  legUp: 6,
  uplockEngages: 6,
  doorValveTrips: 6.2,
  doorCloses: 6.4,
  doorClosed: 7.4,
  doorOpens: 12.3,
  doorOpen: 13.3,
  legValveTrips: 13.4,
  uplockOpens: 13.5,
  legFalls: 13.7,
  legDown: 18,
  downlockEngages: 18,
};

export interface Story {
  left: SideTimes;
  right: SideTimes;
  leverUp: number | null;
  leverDown: number | null;
  duration: number;
  outcome?: Outcome;
  limits: Record<string, number>;
  rules: Scenario['rules'];
  /** Speeds of arrival, rad/s. */
  speeds: { legUp: number; legDown: number; doorClosed: number; doorOpen: number };
  /** Extra channels: name -> [quantity, owner, [t, v] points]. */
  channels: Record<string, [Quantity, string, readonly (readonly [number, number])[]]>;
  /** Without angles, as in a log written by hand. */
  angles: boolean;
  /** With entries at 0 s that say how everything stands, as a simulated run has them. */
  starts: boolean;
  outline: (mechanism: string, angle: number) => Placement | undefined;
  extraLog: Omit<LogEntry, 'index'>[];
}

/** Ends of travel of every made-up leg and door, rad. */
export const TRAVEL = 1.5;
/** Ambient pressure, Pa. */
export const AMBIENT = 101325;

/** A whole healthy swing, up and down, that `change` may spoil. */
export function swing(change: (story: Story) => void = () => undefined): Evidence {
  const late = Object.fromEntries(
    Object.entries(HEALTHY).map(([k, v]) => [k, (v as number) + 0.3]),
  ) as unknown as SideTimes;
  const story: Story = {
    left: { ...HEALTHY },
    right: late,
    leverUp: 1,
    leverDown: 12,
    duration: 25,
    limits: {},
    rules: [],
    speeds: { legUp: 0.3, legDown: 0.4, doorClosed: 1, doorOpen: 1.2 },
    channels: {},
    angles: true,
    starts: false,
    outline: () => undefined,
    extraLog: [],
  };
  change(story);
  return build(story);
}

const ROLES: Readonly<Record<string, Role>> = {
  'left-leg': 'leg',
  'right-leg': 'leg',
  'left-door': 'door',
  'right-door': 'door',
  'left-uplock': 'uplock',
  'right-uplock': 'uplock',
  'left-downlock': 'downlock',
  'right-downlock': 'downlock',
  'left-door-valve': 'sequence-valve',
  'right-door-valve': 'sequence-valve',
  'left-leg-valve': 'sequence-valve',
  'right-leg-valve': 'sequence-valve',
  'left-up-switch': 'switch',
  selector: 'selector',
  relief: 'relief',
  pump: 'supply',
  reservoir: 'reservoir',
  'up-pipe': 'line',
};

function build(s: Story): Evidence {
  const log: Omit<LogEntry, 'index'>[] = [...s.extraLog];
  const points: Record<string, [number, number][]> = {};
  const add = (
    t: number | null,
    kind: LogEntry['kind'],
    device: string,
    from: string,
    to: string,
    cause: string,
    speed = 0,
  ): void => {
    if (t !== null) log.push({ t, kind, device, from, to, cause, by: -1, speed });
  };
  add(s.leverUp, 'operator', 'selector', 'neutral', 'up', 'operator');
  add(s.leverDown, 'operator', 'selector', 'up', 'down', 'operator');
  for (const side of ['left', 'right'] as const) {
    const x = s[side];
    const leg = `${side}-leg`;
    const door = `${side}-door`;
    if (s.starts) {
      for (const [device, to] of [
        ['downlock', 'engaged'],
        ['uplock', 'open'],
        ['door-valve', 'closed'],
        ['leg-valve', 'open'],
      ]) {
        add(0, 'mode', `${side}-${device}`, '', to, 'at the start');
      }
      add(0, 'motion', leg, '', 'at down', 'at the start');
      add(0, 'motion', door, '', 'at open', 'at the start');
    }
    add(x.downlockOpens, 'mode', `${side}-downlock`, 'engaged', 'open', 'pressure');
    add(x.legRises, 'motion', leg, 'at down', 'rising', 'pressure in its actuator');
    add(x.legUp, 'motion', leg, 'rising', 'at up', 'end of travel', s.speeds.legUp);
    add(x.uplockEngages, 'mode', `${side}-uplock`, 'open', 'engaged', 'leg in the hook');
    add(x.doorValveTrips, 'mode', `${side}-door-valve`, 'closed', 'opening', 'plunger pushed');
    add(x.doorCloses, 'motion', door, 'at open', 'falling', 'pressure in its actuator');
    add(x.doorClosed, 'motion', door, 'falling', 'at closed', 'end of travel', s.speeds.doorClosed);
    add(x.doorOpens, 'motion', door, 'at closed', 'rising', 'pressure in its actuator');
    add(x.doorOpen, 'motion', door, 'rising', 'at open', 'end of travel', s.speeds.doorOpen);
    add(x.legValveTrips, 'mode', `${side}-leg-valve`, 'closed', 'opening', 'plunger pushed');
    add(x.uplockOpens, 'mode', `${side}-uplock`, 'engaged', 'open', 'pressure');
    add(x.legFalls, 'motion', leg, 'at up', 'falling', 'weight');
    add(x.legDown, 'motion', leg, 'falling', 'at down', 'end of travel', s.speeds.legDown);
    add(x.downlockEngages, 'mode', `${side}-downlock`, 'open', 'engaged', 'leg over centre');
    points[`${leg}.angle`] = ramp(0, [x.legRises, x.legUp, TRAVEL], [x.legFalls, x.legDown, 0], s);
    points[`${door}.angle`] = ramp(
      TRAVEL,
      [x.doorCloses, x.doorClosed, 0],
      [x.doorOpens, x.doorOpen, TRAVEL],
      s,
    );
  }
  const entries = log.sort((a, b) => a.t - b.t).map((e, index): LogEntry => ({ ...e, index }));
  const channels = new Map<string, [Quantity, string, readonly (readonly [number, number])[]]>(
    Object.entries(s.channels),
  );
  if (s.angles) {
    for (const [name, p] of Object.entries(points))
      channels.set(name, ['angle', name.slice(0, -6), p]);
  }
  const side = (name: 'left' | 'right'): Scenario['units'][string] => ({
    side: name,
    leg: `${name}-leg`,
    doors: [`${name}-door`],
    uplock: `${name}-uplock`,
    downlock: `${name}-downlock`,
    sequence: [`${name}-door-valve`, `${name}-leg-valve`],
    actuators: [],
  });
  return {
    scenario: scenario(s, { left: side('left'), right: side('right') }),
    card,
    duration: s.duration,
    outcome: s.outcome ?? { kind: 'done', time: s.duration, where: [], why: '', hint: '' },
    log: entries,
    channels: [...channels].map(([name, [quantity, of]]) => ({ name, title: name, quantity, of })),
    series: (name) => toSeries(channels.get(name)?.[2]),
    role: (name) => ROLES[name],
    outline: s.outline,
  };
}

/** Straight moves between the two ends; a move that never arrives stops half-way at the end of the run. */
function ramp(
  start: number,
  first: [number | null, number | null, number],
  second: [number | null, number | null, number],
  s: Story,
): [number, number][] {
  const out: [number, number][] = [[0, start]];
  let at = start;
  for (const [from, to, end] of [first, second]) {
    if (from === null) continue;
    out.push([from, at]);
    at = to === null ? (at + end) / 2 : end;
    out.push([to ?? from + 1, at]);
  }
  out.push([s.duration, at]);
  return out;
}

function toSeries(points: readonly (readonly [number, number])[] | undefined): Series | undefined {
  if (points === undefined) return undefined;
  return {
    t: Float64Array.from(points, (p) => p[0]),
    v: Float64Array.from(points, (p) => p[1]),
  };
}

const card: Card = {
  title: 'Made-up swing',
  note: '',
  duration: 25,
  set: {},
  faults: [],
  steps: [],
  expect: [],
  start: {},
  gas: {},
};

function scenario(s: Story, units: Scenario['units']): Scenario {
  const entry = (is: string): Scenario['components'][string] => ({
    is,
    note: '',
    parameters: {},
    ports: {},
    links: {},
    signals: {},
  });
  const plunger = (to: string): Scenario['components'][string] => ({
    ...entry('sequence-valve'),
    links: { plunger: { to } },
  });
  return {
    wheelwell: 1,
    file: '<text>',
    title: 'Made-up aircraft',
    note: '',
    fluid: {
      kind: 'mineral-red',
      temperature: 293.15,
      freeAir: 0.005,
      thickness: 1,
      warmedBy: 0,
    },
    ambient: AMBIENT,
    airspeed: 0,
    sideslip: 0,
    components: {
      selector: {
        ...entry('selector'),
        ports: {
          pressure: 'pressure-line',
          return: 'return-line',
          up: 'up-line',
          down: 'down-line',
        },
      },
      relief: entry('relief-valve'),
      pump: { ...entry('pump'), ports: { inlet: 'suction-line', outlet: 'pressure-line' } },
      reservoir: entry('reservoir'),
      'up-pipe': { ...entry('line'), parameters: { bore: 0.01 } },
      'left-door-valve': plunger('left-leg'),
      'right-door-valve': plunger('right-leg'),
      'left-leg-valve': plunger('left-door'),
      'right-leg-valve': plunger('right-door'),
      'left-uplock': entry('uplock'),
      'right-uplock': entry('uplock'),
      'left-up-switch': {
        ...entry('position-switch'),
        parameters: { at: 0.98 * TRAVEL, side: 'above' },
        links: { mechanism: { to: 'left-leg' } },
      },
      'left-downlock': entry('downlock'),
      'right-downlock': entry('downlock'),
    },
    mechanisms: Object.fromEntries(
      ['left-leg', 'right-leg', 'left-door', 'right-door'].map((name) => {
        const parameters: Readonly<Record<string, number>> = name.endsWith('leg')
          ? { travel: TRAVEL }
          : {};
        return [name, { is: ROLES[name], note: '', parameters }];
      }),
    ),
    nodes: {},
    units,
    limits: s.limits,
    rules: s.rules,
    cards: { swing: card },
  };
}
