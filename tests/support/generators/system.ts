/**
 * Random systems of everything in the catalogues, as the text of a scenario file: any devices with
 * their ports on a few nodes or capped, links on any mechanism, wires, followers, faults. Most are
 * nonsense as gears; all are what a file may hold. fast-check shrinks towards a bare stand.
 */
import fc from 'fast-check';
import { stringify } from 'yaml';
import { catalogues, tailored } from '../../../packages/core/src/index.js';
import { kebab } from '../../../packages/core/src/scenario/names.js';
import { figures, si } from '../../../packages/core/src/scenario/write-figure.js';
import type {
  DeviceDefinition,
  InputDefinition,
  Parameters,
} from '../../../packages/core/src/define/index.js';
import { seeded } from '../sample-parameters.js';
import { sensible, type Random } from './sensible.js';
import { slips, type Slip } from './slips.js';

/** A device or mechanism; its figures and what it is joined to follow from the seed. */
interface GeneratedPart {
  readonly kind: string;
  readonly seed: number;
}

export interface GeneratedSystem {
  /** Tank, stand, relief valve, selector and a jack on the first mechanism, which make things move. */
  readonly stand: boolean;
  readonly devices: readonly GeneratedPart[];
  /** At least one. */
  readonly mechanisms: readonly GeneratedPart[];
  /** How many nodes the ports of the devices may be on. */
  readonly nodes: number;
  /** Share of ports that are capped. */
  readonly capped: number;
  readonly faults: readonly { readonly seed: number; readonly severity: number }[];
  readonly slip: Slip | undefined;
  /** Seed of all that is common: oil, wind, what the operator does. */
  readonly seed: number;
  readonly duration: number;
}

const seed = fc.integer({ min: 0, max: 2 ** 30 });
const part = (kinds: readonly string[]): fc.Arbitrary<GeneratedPart> =>
  fc.record({ kind: fc.constantFrom(...kinds), seed });

export const system: fc.Arbitrary<GeneratedSystem> = fc.record({
  stand: fc.oneof({ weight: 4, arbitrary: fc.constant(true) }, fc.constant(false)),
  devices: fc.array(part(Object.keys(catalogues.components)), { maxLength: 10 }),
  mechanisms: fc.array(part(Object.keys(catalogues.mechanisms)), { minLength: 1, maxLength: 4 }),
  nodes: fc.integer({ min: 3, max: 8 }),
  capped: fc.constantFrom(0, 0.1, 0.3),
  faults: fc.array(
    fc.record({ seed, severity: fc.integer({ min: 0, max: 20 }).map((n) => n / 20) }),
    { maxLength: 3 },
  ),
  slip: fc.oneof(
    { weight: 4, arbitrary: fc.constant(undefined) },
    fc.constantFrom(...(Object.keys(slips) as Slip[])),
  ),
  seed,
  duration: fc.constantFrom(2, 3),
});

type Written = Record<string, unknown>;
export interface Document {
  readonly components: Record<string, Written>;
  readonly mechanisms: Record<string, Written>;
  readonly nodes: Record<string, Written>;
  readonly cards: {
    readonly card: Written & { readonly steps: Written[]; readonly faults: Written[] };
  };
  readonly [section: string]: unknown;
}

const NODES = ['tank', 'pressure', 'up', 'down', 'a', 'b', 'c', 'd'];
const STROKE = 0.3;

const pick = <T>(random: Random, all: readonly T[]): T => all[Math.floor(random() * all.length)];

/** Devices that make the rest move. */
const STAND: Readonly<Record<string, Written>> = {
  tank: {
    is: 'reservoir',
    ports: { outlet: 'tank', return: 'tank' },
    capacity: '8 L',
    level: '5 L',
  },
  stand: {
    is: 'ground-supply',
    ports: { inlet: 'tank', outlet: 'pressure' },
    flow: '200 cm^3/s',
    pressure: '8 MPa',
    on: true,
  },
  relief: {
    is: 'relief-valve',
    ports: { inlet: 'pressure', outlet: 'tank' },
    crack: '9 MPa',
    full: '10 MPa',
    flow: '400 cm^3/s',
  },
  selector: {
    is: 'selector-valve',
    ports: { pressure: 'pressure', return: 'tank', up: 'up', down: 'down' },
  },
  jack: {
    is: 'double-acting-actuator',
    ports: { head: 'up', rod: 'down' },
    links: { rod: { to: 'm0', expression: '0.01 + 0.1 * angle' } },
    bore: '40 mm',
    'rod-diameter': '16 mm',
    stroke: '350 mm',
  },
};

/** One of the ways to write the travel of a link, for a mechanism of this travel, rad. */
function travel(random: Random, range: number): Written {
  switch (Math.floor(random() * 4)) {
    case 0:
      return {
        table: [
          ['0 deg', '0 mm'],
          [si(range, 'angle'), si(STROKE * random(), 'length')],
        ],
      };
    case 1:
      return { expression: `${0.01 + 0.1 * random()} * (1 + sin(angle))` };
    case 2:
      return { expression: `0.15 - ${0.04 * random()} * angle` };
    default:
      return {
        pivots: {
          fixed: si(0.3 + 0.2 * random(), 'length'),
          moving: si(0.08 + 0.05 * random(), 'length'),
          'at-low': si(0.3 + 0.5 * random(), 'angle'),
          sense: 'opening',
        },
      };
  }
}

/** Mechanisms, some of them driven by one before. */
function writeMechanisms(system: GeneratedSystem): {
  readonly written: Record<string, Written>;
  readonly ranges: readonly number[];
} {
  const written: Record<string, Written> = {};
  const ranges: number[] = [];
  system.mechanisms.forEach(({ kind, seed }, i) => {
    const random = seeded(seed);
    const definition = catalogues.mechanisms[kind];
    const { initial: _, ...p } = sensible(definition, random, { initial: 0 });
    const by = Math.floor(random() * i);
    const range = definition.coordinate({ ...p, initial: 0 }).high;
    const driven = i > 0 && random() < 0.3;
    const ratio = (range / ranges[by]) * (random() < 0.9 ? 0.99 : 1.1);
    written[`m${i}`] = {
      is: kind,
      ...figures(p, definition.parameters),
      ...(driven && { driven: { by: `m${by}`, ...follow(random, ratio) } }),
    };
    ranges.push(range);
  });
  return { written, ranges };
}

const follow = (random: Random, ratio: number): Written =>
  random() < 0.5 ? { ratio } : { expression: `${ratio} * angle` };

function writePorts(system: GeneratedSystem, device: DeviceDefinition, random: Random): Written {
  const nodes = NODES.slice(0, system.nodes);
  return Object.fromEntries(
    Object.entries(device.ports).flatMap(([port, { optional, cushion, vessel }]) => {
      const [leave, cap, where] = [random(), random(), pick(random, nodes)];
      if (cushion !== undefined || vessel !== undefined || (optional === true && leave < 0.6))
        return [];
      return [[kebab(port), cap < system.capped ? 'blanked' : where]];
    }),
  );
}

interface Placed {
  readonly name: string;
  readonly device: DeviceDefinition;
  readonly random: Random;
}

function writeDevice(
  system: GeneratedSystem,
  { kind, seed }: GeneratedPart,
  ranges: readonly number[],
): { readonly written: Written; readonly device: DeviceDefinition; readonly random: Random } {
  const random = seeded(seed);
  const definition = catalogues.components[kind];
  const own: Record<string, number> = {};
  if (definition.role === 'actuator') own.stroke = STROKE;
  const parameters: Parameters = sensible(definition, random, own);
  const device = tailored(definition, parameters);
  const links = Object.entries(device.links ?? {}).flatMap(([link, { shape, optional }]) => {
    if (optional === true && random() < 0.5) return [];
    const to = Math.floor(random() * ranges.length);
    return [[link, { to: `m${to}`, ...(shape === 'travel' && travel(random, ranges[to])) }]];
  });
  const written = {
    is: kind,
    ports: writePorts(system, device, random),
    links: Object.fromEntries(links) as Written,
    ...figures(parameters, definition.parameters),
  };
  return { written, device, random };
}

/** What an input may be set to, as written in a step. */
const value = (input: InputDefinition, random: Random): unknown =>
  input.choices !== undefined
    ? pick(random, input.choices)
    : si(250 * random(), input.quantity ?? 'ratio');

/** Wires from what talks, steps of the operator for the rest. */
function operate(document: Document, placed: readonly Placed[], duration: number): void {
  const talkers = placed.flatMap(({ name, device }) =>
    Object.keys(device.signals ?? {}).map((signal) => `${name}.${kebab(signal)}`),
  );
  const { steps } = document.cards.card;
  for (const { name, device, random } of placed) {
    const signals: Record<string, string> = {};
    for (const [input, definition] of Object.entries(device.inputs ?? {})) {
      const two = definition.choices?.length === 2;
      if (two && talkers.length > 0 && random() < 0.5) {
        signals[kebab(input)] = pick(random, talkers);
        continue;
      }
      for (let i = 0; i < 2; i++)
        steps.push({
          at: `${duration * random()} s`,
          device: name,
          input: kebab(input),
          value: value(definition, random),
        });
    }
    if (Object.keys(signals).length > 0) document.components[name].signals = signals;
  }
}

function writeFaults(document: Document, system: GeneratedSystem): void {
  const kinds = new Map<string, string>([['fluid', 'fluid']]);
  for (const [name, { is }] of Object.entries({ ...document.components, ...document.mechanisms }))
    kinds.set(name, is as string);
  const able = Object.values(catalogues.faults).flatMap(({ kind, befalls }) =>
    [...kinds].flatMap(([on, is]) => (befalls.includes(is) ? [{ fault: kind, on }] : [])),
  );
  for (const { seed, severity } of system.faults)
    document.cards.card.faults.push({ ...pick(seeded(seed), able), severity });
}

/** A unit about the first leg, of whatever is there. */
function writeUnits(system: GeneratedSystem, placed: readonly Placed[]): Written {
  const leg = system.mechanisms.findIndex(({ kind }) => catalogues.mechanisms[kind].role === 'leg');
  if (leg < 0) return {};
  const named = (role: string): string[] =>
    placed.flatMap(({ name, device }) => (device.role === role ? [name] : []));
  const doors = system.mechanisms.flatMap(({ kind }, i) =>
    catalogues.mechanisms[kind].role === 'door' ? [`m${i}`] : [],
  );
  const [uplock] = named('uplock');
  const [downlock] = named('downlock');
  return {
    unit: {
      side: 'left',
      leg: `m${leg}`,
      doors,
      ...(uplock && { uplock }),
      ...(downlock && { downlock }),
      sequence: named('sequence-valve'),
      actuators: named('actuator'),
    },
  };
}

/** Nodes that only one port joins are dead ends that are meant. */
function declareDeadEnds(document: Document): void {
  const joined = new Map<string, number>();
  for (const { ports } of Object.values(document.components))
    for (const node of Object.values((ports ?? {}) as Record<string, string>))
      if (node !== 'blanked') joined.set(node, (joined.get(node) ?? 0) + 1);
  for (const [node, count] of joined) if (count === 1) document.nodes[node] = { volume: '20 cm^3' };
}

/** The file of a system. */
export function systemText(system: GeneratedSystem): string {
  const random = seeded(system.seed);
  const { written: mechanisms, ranges } = writeMechanisms(system);
  const components: Record<string, Written> = {};
  if (system.stand) for (const [name, p] of Object.entries(STAND)) components[name] = { ...p };
  const placed = system.devices.map((device, i): Placed => {
    const made = writeDevice(system, device, ranges);
    components[`d${i}`] = made.written;
    return { name: `d${i}`, device: made.device, random: made.random };
  });
  const lever = (at: number, to: string): Written => ({
    at: `${at} s`,
    device: 'selector',
    input: 'lever',
    value: to,
  });
  const document: Document = {
    wheelwell: 1,
    title: 'a random system',
    fluid: {
      kind: pick(random, Object.keys(catalogues.fluids)),
      temperature: `${-30 + 80 * random()} degC`,
      'free-air': `${5 * random() ** 3} %`,
      'warmed-by': random() < 0.2 ? `${20 * random()} K` : '0 K',
    },
    airspeed: random() < 0.3 ? `${60 * random()} m/s` : '0 m/s',
    sideslip: random() < 0.2 ? `${-20 + 40 * random()} deg` : '0 deg',
    components,
    mechanisms,
    nodes: {},
    units: writeUnits(system, placed),
    cards: {
      card: {
        title: 'random',
        duration: `${system.duration} s`,
        steps: system.stand ? [lever(0.1, 'up'), lever(0.6 * system.duration, 'down')] : [],
        faults: [],
      },
    },
  };
  operate(document, placed, system.duration);
  writeFaults(document, system);
  declareDeadEnds(document);
  if (system.slip !== undefined) slips[system.slip](document, random);
  return stringify(document, { aliasDuplicateObjects: false });
}
