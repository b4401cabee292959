/** Small invented definitions and a scenario of them, for tests of reading that must not depend on the real catalogues. */
import type {
  Catalogues,
  DeviceDefinition,
  DrawingSymbol,
  FaultDefinition,
  MechanismDefinition,
  RuleDefinition,
  StateTable,
} from '../../packages/core/src/define/index.js';

const symbol: DrawingSymbol = { name: 'other', size: [4, 4], ports: {} };
const about = { summary: 'Invented.', source: 'invented for tests', symbol };
const why = 'invented for tests';
const prepare = (): Float64Array => new Float64Array(0);

const tap: DeviceDefinition = {
  ...about,
  kind: 'tap',
  title: 'Tap',
  role: 'selector',
  parameters: {
    bore: { title: 'bore', why, quantity: 'length', range: [1e-3, 0.05], default: 0.01 },
    crackAt: { title: 'crack', why, quantity: 'gauge-pressure', range: [1e5, 3e7] },
    style: { type: 'choice', title: 'style', why, choices: ['poppet', 'spool'], default: 'spool' },
    detent: { type: 'switch', title: 'detent', why, default: false },
  },
  ports: {
    pressureIn: { title: 'in', volume: 0 },
    out: { title: 'out', volume: 0 },
    drain: { title: 'drain', volume: 0, optional: true },
  },
  inputs: { lever: { title: 'lever', choices: ['up', 'neutral', 'down'], initial: 1 } },
  flows: { through: { from: 'pressureIn', to: 'out' } },
  modes: { shut: { title: 'shut' }, 'fully open': { title: 'open' } },
  prepare,
};

const source: DeviceDefinition = {
  ...about,
  kind: 'source',
  title: 'Source',
  role: 'supply',
  parameters: {
    flow: { title: 'flow', why, quantity: 'flow', range: [0, 1e-3], default: 2e-4 },
    airShare: { title: 'air', why, quantity: 'ratio', range: [0, 0.07], default: 0 },
    least: { title: 'least', why, quantity: 'gauge-pressure', range: [0, 3e7], default: 1e6 },
    most: { title: 'most', why, quantity: 'gauge-pressure', range: [0, 3e7], default: 2e7 },
  },
  check: (p) =>
    p.least <= p.most
      ? []
      : [{ parameter: 'least', message: 'the least pressure is above the most' }],
  ports: { out: { title: 'out', volume: 0 } },
  inputs: { rate: { title: 'rate', quantity: 'flow', initial: 0 } },
  prepare,
};

const jack: DeviceDefinition = {
  ...about,
  kind: 'jack',
  title: 'Jack',
  role: 'actuator',
  parameters: {
    bore: { title: 'bore', why, quantity: 'length', range: [5e-3, 0.3] },
    stroke: { title: 'stroke', why, quantity: 'length', range: [0.01, 1], default: 0.3 },
  },
  ports: { head: { title: 'head', volume: 0 }, rod: { title: 'rod', volume: 0 } },
  links: {
    rod: { title: 'rod', shape: 'travel' },
    guide: { title: 'guide', shape: 'plain', optional: true },
  },
  readings: { stroke: { title: 'stroke', quantity: 'length', value: () => 0 } },
  prepare,
};

const hook: DeviceDefinition = {
  ...about,
  kind: 'hook',
  title: 'Hook',
  role: 'uplock',
  parameters: {},
  ports: {},
  links: { on: { title: 'what it holds', shape: 'plain' } },
  modes: {
    open: { title: 'open' },
    engaged: { title: 'engaged', bounds: { link: 'on', high: () => 1 } },
  },
  prepare,
};

/** Says by wire where what it feels is. */
const feeler: DeviceDefinition = {
  ...about,
  kind: 'feeler',
  title: 'Feeler',
  role: 'switch',
  parameters: {},
  ports: {},
  links: { on: { title: 'what it feels', shape: 'plain' } },
  modes: { free: { title: 'free' }, made: { title: 'made' } },
  signals: {
    made: { title: 'made', value: (d) => d.mode },
    notMade: { title: 'not made', value: (d) => 1 - d.mode },
  },
  prepare,
};

/** Worked by a wire. */
const magnet: DeviceDefinition = {
  ...about,
  kind: 'magnet',
  title: 'Magnet',
  role: 'other',
  parameters: {},
  ports: {},
  inputs: {
    coil: { title: 'coil', choices: ['off', 'on'], initial: 0 },
    spareCoil: { title: 'second coil', choices: ['off', 'on'], initial: 0 },
    load: { title: 'load', quantity: 'force', initial: 0 },
  },
  prepare,
};

/** Its table decides its modes, what it hears and what it says. */
const watcher: DeviceDefinition = {
  ...about,
  kind: 'watcher',
  title: 'Watcher',
  role: 'control',
  parameters: { table: { type: 'state-table', title: 'what it does', why } },
  ports: {},
  inputs: { lever: { title: 'lever', choices: ['up', 'down'], initial: 1 } },
  tailor: (p) => {
    const { states } = p.table as StateTable;
    const terms = states.flatMap(({ next }) => next.flatMap((row) => row.if));
    const heard = terms.map((term) => term.replace(/^not /, '')).filter((t) => !t.includes(' '));
    return {
      modes: Object.fromEntries(states.map(({ name }) => [name, { title: name }])),
      inputs: {
        ...watcher.inputs,
        ...Object.fromEntries(
          heard.map((name) => [name, { title: name, choices: ['off', 'on'], initial: 0 }]),
        ),
      },
      signals: Object.fromEntries(
        states
          .flatMap(({ drive }) => drive)
          .map((name) => [
            name,
            { title: name, value: (d) => Number(states[d.mode].drive.includes(name)) },
          ]),
      ),
    };
  },
  prepare,
};

const flat = (y: number) => ({ x: [-4, 4], y: [y, y] });

const arm: MechanismDefinition = {
  ...about,
  kind: 'arm',
  title: 'Arm',
  role: 'leg',
  parameters: {
    travel: { title: 'travel', why, quantity: 'angle', range: [0.1, 3], default: 1.5 },
    mass: { title: 'mass', why, quantity: 'mass', range: [0.1, 1000], default: 20 },
    pull: {
      type: 'shape',
      title: 'pull',
      why,
      of: 'angle',
      variable: 'angle',
      gives: 'moment',
      range: [-1e3, 1e3],
      default: flat(0),
    },
    pivot: { type: 'point', title: 'pivot', why, range: [-5, 5], default: [0, 0] },
  },
  ends: ['down', 'up'],
  coordinate: (p) => ({
    low: 0,
    high: p.travel as number,
    inertia: flat(p.mass as number),
    moment: flat(0),
    damping: 0,
    friction: 0,
    staticRatio: 1,
    restitution: 0,
    initial: 0,
  }),
  outline: () => ({ shape: 'leg', at: () => ({ line: [] }) }),
};

const flap: MechanismDefinition = {
  ...arm,
  kind: 'flap',
  title: 'Flap',
  role: 'door',
  ends: ['closed', 'open'],
};

const leak: FaultDefinition = {
  kind: 'narrow-bore',
  group: 'actuators, locks, structure',
  title: 'Narrow bore',
  meaning: 'invented',
  shows: 'invented',
  confirm: 'invented',
  remedy: 'invented',
  caution: 'invented',
  source: why,
  prior: 'rare',
  priorWhy: why,
  befalls: ['jack', 'tap'],
  worst: 'half the bore',
  change: (p, severity) => ({ bore: (p.bore as number) * (1 - 0.5 * severity) }),
};

const thinOil: FaultDefinition = {
  ...leak,
  kind: 'thin-oil',
  title: 'Thin oil',
  group: 'fluid and environment',
  befalls: ['fluid'],
  worst: 'half as thick, 10 K warmer',
  change: (p, severity) => ({
    thickness: (p.thickness as number) * (1 - 0.5 * severity),
    temperature: (p.temperature as number) + 10 * severity,
  }),
};

const swappedLines: FaultDefinition = {
  ...leak,
  kind: 'swapped-lines',
  title: 'Swapped lines',
  group: 'valves and lines',
  befalls: ['tap'],
  worst: 'in and out swapped',
  change: () => ({}),
  reconnect: (ports) => ({ ...ports, pressureIn: ports.out, out: ports.pressureIn }),
};

const slowRule: RuleDefinition = {
  name: 'too-slow',
  title: 'Too slow',
  summary: 'invented',
  source: why,
  kind: 'limit',
  limits: ['timeUp', 'ownLimit'],
  judge: () => [],
};

const byKind = <T extends { kind: string }>(...all: T[]): Record<string, T> =>
  Object.fromEntries(all.map((d) => [d.kind, d]));

export const madeUp: Catalogues = {
  components: byKind(tap, source, jack, hook, feeler, magnet, watcher),
  mechanisms: byKind(arm, flap),
  faults: byKind(leak, thinOil, swappedLines),
  rules: { 'too-slow': slowRule },
  gases: {},
  fluids: byKind({
    kind: 'red-oil',
    title: 'Red oil',
    summary: 'invented',
    viscosity: [
      { temperature: 300, viscosity: 1e-5 },
      { temperature: 350, viscosity: 5e-6 },
    ],
    density: 860,
    densityAt: 288,
    expansion: 8e-4,
    bulkModulus: 1.6e9,
    vapourPressure: 10,
    source: why,
  }),
};

/** A sound scenario of the made-up parts that uses every section. */
export const MADE_UP_TEXT = `wheelwell: 1
title: Made up
note: for tests of reading
fluid: { kind: red-oil, temperature: 20 degC, free-air: 0.5 %, thickness: 1.3, warmed-by: 5 K }
ambient: 101325 Pa
airspeed: 10 knot
components:
  pump:
    is: source
    ports: { out: line }
    flow: 3.2 gal/min
  selector:
    is: tap
    note: invented
    ports:
      pressure-in: line
      out: up
      drain: blanked
    crack-at: 1500 psi
    style: poppet
    detent: yes
    place: [3, 2]
  left-jack:
    is: jack
    ports: { head: up, rod: gauge-stub }
    links:
      rod:
        to: left-leg
        pivots: { fixed: 420 mm, moving: 150 mm, at-low: 40 deg, sense: opening }
      guide: { to: left-leg }
    bore: 1 3/4 in
  door-jack:
    is: jack
    ports: { head: up, rod: blanked }
    links:
      rod: { to: left-door, table: [[0 deg, 0 mm], [45 deg, 60 mm], [90 deg, 90 mm]] }
    bore: 30 mm
  left-hook:
    is: hook
    links: { on: { to: left-leg } }
  left-feeler:
    is: feeler
    links: { on: { to: left-leg } }
  brain:
    is: watcher
    signals: { left-up: left-feeler, door-shut: tail-feeler.not-made }
    table:
      resting:
        next: [{ if: [lever up, not left-up], after: 2 s, to: raising gear }]
      raising gear:
        drive: [open, warning-lamp]
        next:
          - { if: [left-up, door-shut], to: resting }
          - { after: 30 s, to: failed }
      failed:
  tail-feeler:
    is: feeler
    links: { on: { to: tail-door } }
  coil-valve:
    is: magnet
    signals: { coil: brain, spare-coil: brain.warning-lamp }
  tail-hook:
    is: hook
    links: { on: { to: tail-flap } }
mechanisms:
  left-leg:
    is: arm
    travel: 80 deg
    pull: { expression: "40 * cos(angle)" }
    pivot: [120 mm, 3 in]
  left-door: { is: flap, pull: [[0 rad, 1 N m], [1.5 rad, 12 lbf ft]] }
  tail-door:
    is: flap
    driven:
      by: left-leg
      linkage: { ground: 300 mm, crank: 80 mm, coupler: 280 mm, rocker: 90 mm, crank-at-low: 40 deg, sense: opening }
  tail-flap: { is: flap, travel: 100 deg, driven: { by: tail-door, ratio: -0.5, at-low: 90 deg } }
  nose-flap: { is: flap, driven: { by: left-door, table: [[0 deg, 5 deg], [90 deg, 75 deg]] } }
  nose-cover: { is: flap, driven: { by: left-leg, expression: "0.9 * sin(angle)" } }
nodes:
  gauge-stub: { volume: 20 cm^3, air: 1 cm^3, note: deliberate dead end }
units:
  left: { side: left, leg: left-leg, doors: [left-door], uplock: left-hook, sequence: [], actuators: [left-jack, door-jack], bay: { roof: 300 mm, walls: [-200 mm, -1100 mm], ends: [-40 cm, 50 cm] } }
limits: { time-up: 9 s, peak-pressure: 2025 psi, arrival-speed: 0.6 rad/s, own-limit: 3 mm }
rules:
  - { name: hook-first, kind: order, text: hook before door, first: { device: left-hook, to: engaged }, second: { device: left-door, to: at closed } }
  - { name: in-time, kind: within, text: quick, first: { device: left-leg, to: rising }, second: { device: left, to: up and locked }, limit: 8 s, severity: fail }
  - { name: quiet, kind: never, text: no, condition: { channel: line.pressure, above: 200 bar }, during: { device: selector, in: shut } }
  - { name: stays, kind: holds, text: yes, condition: { device: left-hook, in: engaged, not: no }, from: { device: left-leg, to: at up } }
  - { name: inside, kind: limit, text: band, channel: left-jack.stroke, low: 0 mm, high: 300 mm }
cards:
  healthy:
    title: Healthy
    duration: 40 s
    steps:
      - { at: 1 s, device: selector, input: lever, value: up }
      - { after: { device: left, to: up and closed }, at: 2 s, device: selector, input: lever, value: down }
      - { at: 3 s, device: pump, value: 2 L/min }
      - { after: { device: brain, to: raising gear }, device: brain, input: lever, value: down }
    expect: [hook-first]
  cold:
    title: Cold
    note: winter
    duration: 60 s
    temperature: -20 degC
    airspeed: 90 knot
    set: { components.pump.flow: 4 gal/min, components.selector.style: spool, fluid.free-air: 2 %, fluid.thickness: 2, fluid.warmed-by: -10 K, mechanisms.left-leg.mass: 50 lb }
    faults: [{ fault: narrow-bore, on: left-jack, severity: 0.6 }, { fault: thin-oil, on: fluid, severity: 0.5 }]
    start: { left-leg: 10 deg }
`;
