import { catalogues } from '@wheelwell/core';
import type {
  Card,
  ComponentEntry,
  MechanismEntry,
  ParameterDefinitions,
  Parameters,
  ParameterValue,
  Scenario,
  Shape,
  UnitEntry,
} from '@wheelwell/core';

const { components, mechanisms } = catalogues;

/**
 * Scenarios made by code, for benchmarks and laws: `units` gear units on one supply, each a leg
 * and a door with their actuators, plunger-operated sequence valves both ways, a one-way
 * restrictor and pressure-released locks. Flow and bores grow with the number of units, so that
 * every size takes the same time. Figures are invented.
 */
export interface GearUnitsOptions {
  readonly units?: number;
  /** Relative difference between odd and even units. */
  readonly spread?: number;
  /** Difference from each unit to the next, so that no two events coincide. */
  readonly drift?: number;
  readonly duration?: number;
  readonly up?: number;
  readonly down?: number;
  readonly temperature?: number;
  readonly freeAir?: number;
  /** Changes to every device of a kind. */
  readonly change?: Readonly<Record<string, Readonly<Record<string, ParameterValue>>>>;
  /** Order in which units are declared. */
  readonly order?: readonly number[];
  readonly rename?: (name: string) => string;
}

const GPM = (231 * 0.0254 ** 3) / 60;
const PSI = 6894.757;
const DEG = Math.PI / 180;

function withDefaults(
  definitions: ParameterDefinitions,
  own: Readonly<Record<string, ParameterValue>>,
): Parameters {
  const all: Record<string, ParameterValue> = {};
  for (const [name, d] of Object.entries(definitions)) {
    const value = own[name] ?? d.default;
    if (value === undefined) throw new Error(`no value for ${name}`);
    all[name] = value;
  }
  return all;
}

/** Travel of an actuator between two pivots, law of cosines, zero at its shortest. */
export function pivots(fixed: number, moving: number, atLow: number, range: number): Shape {
  const x = Array.from({ length: 181 }, (_, i) => (range * i) / 180);
  const length = x.map((a) =>
    Math.sqrt(fixed ** 2 + moving ** 2 - 2 * fixed * moving * Math.cos(atLow + a)),
  );
  const shortest = Math.min(...length);
  return { x, y: length.map((l) => l - shortest) };
}

export function gearUnits(options: GearUnitsOptions = {}): Scenario {
  const n = options.units ?? 2;
  const spread = options.spread ?? 0.04;
  const share = n / 2;
  const rename = options.rename ?? ((s: string): string => s);
  const parts: Record<string, ComponentEntry> = {};
  const moving: Record<string, MechanismEntry> = {};
  const units: Record<string, UnitEntry> = {};
  const add = (
    name: string,
    is: string,
    ports: Readonly<Record<string, string>>,
    own: Readonly<Record<string, ParameterValue>> = {},
    links: ComponentEntry['links'] = {},
  ): void => {
    const parameters = withDefaults(components[is].parameters, { ...own, ...options.change?.[is] });
    const renamed = Object.fromEntries(Object.entries(ports).map(([p, node]) => [p, rename(node)]));
    const linked = Object.fromEntries(
      Object.entries(links).map(([l, e]) => [l, { ...e, to: rename(e.to) }]),
    );
    parts[rename(name)] = { is, note: '', parameters, ports: renamed, links: linked, signals: {} };
  };
  add(
    'reservoir',
    'reservoir',
    { outlet: 'tank' },
    { capacity: 0.01 * share, level: 0.006 * share },
  );
  add(
    'supply',
    'engine-pump',
    { inlet: 'tank', outlet: 'pressure' },
    {
      displacement: (4 * GPM * share) / 251,
      speed: 251,
    },
  );
  add(
    'relief',
    'relief-valve',
    { inlet: 'pressure', outlet: 'tank' },
    { crack: 1750 * PSI, full: 1950 * PSI, flow: 6 * GPM * share },
  );
  add(
    'selector',
    'selector-valve',
    { pressure: 'pressure', return: 'tank', up: 'up', down: 'down' },
    { bore: 0.006 * Math.sqrt(share) },
  );
  const order = options.order ?? Array.from({ length: n }, (_, i) => i);
  for (const i of order) {
    const side = i % 2 === 0 ? 'left' : 'right';
    const s = (1 + (i % 2) * spread) * (1 + i * (options.drift ?? 0));
    const u = `u${i}`;
    moving[rename(`${u}-leg`)] = {
      is: 'leg',
      note: '',
      parameters: withDefaults(mechanisms.leg.parameters, {
        travel: 90 * DEG,
        retract: 'inboard',
        mass: 70 * s,
        cog: 0.55,
        inertia: 26 * s,
        length: 0.9,
        friction: 25 * s,
        tyreRadius: 0.3,
        tyreWidth: 0.15,
        pivotRight: i % 2 === 0 ? -1 : 1,
        damping: 5,
      }),
    };
    moving[rename(`${u}-door`)] = {
      is: 'door',
      note: '',
      parameters: withDefaults(mechanisms.door.parameters, {
        travel: 90 * DEG,
        mass: 6 * s,
        cog: 0.2,
        inertia: 0.35 * s,
        chord: 0.4,
        span: 0.7,
        sealMoment: 20,
        friction: 2,
        initial: 90 * DEG,
        hingeRight: i % 2 === 0 ? -1 : 1,
        damping: 1,
      }),
    };
    const door = { to: `${u}-door`, travel: pivots(0.35, 0.1, 35 * DEG, 90 * DEG) };
    const leg = { to: `${u}-leg`, travel: pivots(0.5, 0.2, 40 * DEG, 90 * DEG) };
    const striker = (to: string): { to: string; travel: Shape } => ({
      to,
      travel: { x: [0, 90 * DEG], y: [0, 90 * DEG * 0.1] },
    });
    add(
      `${u}-restrictor`,
      'one-way-restrictor',
      { inlet: 'up', outlet: `${u}-lift` },
      { bore: 0.0021, freeBore: 0.0025 },
    );
    add(
      `${u}-leg-jack`,
      'double-acting-actuator',
      { head: `${u}-lift`, headChamber: `${u}-lift`, rod: `${u}-lower`, rodChamber: `${u}-lower` },
      { bore: 0.0445, rodDiameter: 0.0222, stroke: 0.29, bypass: 1e-14 },
      { rod: leg },
    );
    add(
      `${u}-door-jack`,
      'double-acting-actuator',
      { head: `${u}-open`, headChamber: `${u}-open`, rod: `${u}-close`, rodChamber: `${u}-close` },
      { bore: 0.025, rodDiameter: 0.0125, stroke: 0.16, bypass: 1e-14, seals: 30 },
      { rod: door },
    );
    add(`${u}-door-feed`, 'orifice', { inlet: 'down', outlet: `${u}-open` }, { bore: 0.0011 });
    add(
      `${u}-close-valve`,
      'sequence-valve',
      { inlet: 'up', outlet: `${u}-close` },
      { sense: 'high', trip: 90 * DEG * 0.1 - 0.0045, bore: 0.0012 },
      { plunger: striker(`${u}-leg`) },
    );
    add(
      `${u}-lower-valve`,
      'sequence-valve',
      { inlet: 'down', outlet: `${u}-lower` },
      { sense: 'high', trip: 90 * DEG * 0.1 - 0.0045 },
      { plunger: striker(`${u}-door`) },
    );
    add(
      `${u}-uplock`,
      'uplock',
      { release: `${u}-lower` },
      { at: 90 * DEG, release: 250 * PSI },
      { leg: { to: `${u}-leg` } },
    );
    add(
      `${u}-downlock`,
      'downlock',
      { release: 'up' },
      { release: 250 * PSI },
      { leg: { to: `${u}-leg` } },
    );
    units[rename(u)] = {
      side,
      leg: rename(`${u}-leg`),
      doors: [rename(`${u}-door`)],
      uplock: rename(`${u}-uplock`),
      downlock: rename(`${u}-downlock`),
      sequence: [rename(`${u}-close-valve`), rename(`${u}-lower-valve`)],
      actuators: [rename(`${u}-leg-jack`), rename(`${u}-door-jack`)],
    };
  }
  const lever = (at: number, value: number, text: string): Card['steps'][number] => ({
    at,
    device: rename('selector'),
    input: 'lever',
    value,
    text,
  });
  return {
    wheelwell: 1,
    file: '<made>',
    title: `${n} gear units on one supply`,
    note: '',
    fluid: {
      kind: 'mineral-red',
      temperature: options.temperature ?? 293.15,
      freeAir: options.freeAir ?? 0.005,
      thickness: 1,
      warmedBy: 0,
    },
    ambient: 101325,
    airspeed: 0,
    sideslip: 0,
    components: parts,
    mechanisms: moving,
    nodes: Object.fromEntries(
      [
        ['pressure', 3e-4 * share],
        ['up', 8e-5 * share],
        ['down', 8e-5 * share],
      ].map(([k, v]) => [rename(k as string), { volume: v as number, air: 0, note: '' }]),
    ),
    units,
    limits: {},
    rules: [],
    cards: {
      swing: {
        title: 'up and down',
        note: '',
        duration: options.duration ?? 40,
        set: {},
        faults: [],
        expect: [],
        start: {},
        gas: {},
        steps: [lever(options.up ?? 0.1, 0, 'up'), lever(options.down ?? 20, 2, 'down')],
      },
    },
  };
}
