/**
 * A circuit around any device of the catalogue, built from its declaration alone: a new kind is put
 * to the test on the day it arrives. Every port stands behind a hole on a line that a selector fills
 * and empties, on the tank, or behind a relief valve; every link hangs on a heavy damped coordinate
 * that a jack of its own moves; every control is worked through its positions.
 */
import type {
  CardStep,
  CoordinateData,
  DeviceDefinition,
  ParameterValue,
  Shape,
  UnitEntry,
} from '../../../packages/core/src/define/index.js';
import { catalogues, tailored } from '../../../packages/core/src/index.js';
import {
  simulateWith,
  type SimulatedRun,
  type SimulateOptions,
} from '../../../packages/core/src/machine/index.js';
import { coordinate, flat, rig, step, type RigPart } from '../rig.js';
import { seeded } from '../sample-parameters.js';
import { sensible, type Random } from './sensible.js';

/** Name of the device in its circuit. */
export const SUBJECT = 'subject';
const DURATION = 4;
/** Travel of a link, m, over the coordinate's radian; jacks keep a centimetre in hand. */
const TRAVEL: Shape = { x: [0, 1], y: [0.01, 0.21] };
const LONGEST_TRAVEL = 0.22;

/** Values for a control that takes a figure, by its quantity, SI. */
const FIGURES: Readonly<Record<string, readonly number[]>> = {
  'angular-speed': [200, 60, 260],
  moment: [20, 0, -20],
};

/** What stands around the subject: parts, coordinates, steps, as the circuit grows. */
interface Circuit {
  readonly parts: Record<string, RigPart>;
  readonly nodes: Record<string, { volume: number }>;
  readonly coordinates: Record<string, CoordinateData>;
  readonly units: Record<string, UnitEntry>;
  readonly steps: CardStep[];
}

/** Supply, relief valve, and a selector that fills `left` and empties `right`, then the other way about. */
function stand(): Circuit {
  return {
    parts: {
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 8e-3, level: 6e-3 },
      },
      stand: {
        is: 'ground-supply',
        ports: { inlet: 'tank', outlet: 'pressure' },
        // Below the relief valve's crack: what it gives is used, and a small loss shows beside it.
        parameters: { flow: 2.5e-4, pressure: 6.5e6, on: true },
      },
      relief: reliefOn('pressure'),
      shuttle: {
        is: 'selector-valve',
        ports: { pressure: 'pressure', return: 'tank', up: 'left', down: 'right' },
        parameters: { centre: 'lines-to-return' },
      },
      // Something always flows: where all rests, only the filling of the lines would be accounted for.
      bleed: hole('left', 'right', 0.0008),
    },
    nodes: { pressure: { volume: 2e-4 }, left: { volume: 1e-4 }, right: { volume: 1e-4 } },
    coordinates: {},
    units: {},
    steps: [
      step(0.2, 'shuttle', 'lever', 0),
      step(1.6, 'shuttle', 'lever', 1),
      step(1.9, 'shuttle', 'lever', 2),
      step(3.3, 'shuttle', 'lever', 0),
    ],
  };
}

const reliefOn = (node: string): RigPart => ({
  is: 'relief-valve',
  ports: { inlet: node, outlet: 'tank' },
  parameters: { crack: 7e6, full: 8e6, flow: 4e-4 },
});

const hole = (inlet: string, outlet: string, bore: number): RigPart => ({
  is: 'orifice',
  ports: { inlet, outlet },
  parameters: { bore },
});

/** Joins the subject's ports. */
function join(circuit: Circuit, device: DeviceDefinition, random: Random): Record<string, string> {
  const ports: Record<string, string> = {};
  const flows = Object.values(device.flows ?? {}).filter(({ source }) => source === true);
  const sucks = new Set(flows.map(({ from }) => from));
  const gives = new Set(flows.map(({ to }) => to));
  let turn = Math.floor(random() * 2);
  for (const [port, { optional, cushion, vessel }] of Object.entries(device.ports)) {
    // A cushion's or vessel's node is private; other ports that may be left are left as often as not.
    if (cushion !== undefined || vessel !== undefined || (optional === true && random() < 0.5))
      continue;
    const node = `${SUBJECT}-${port}`;
    ports[port] = node;
    circuit.nodes[node] = { volume: 3e-5 };
    if (sucks.has(port)) {
      circuit.parts[`hole-${port}`] = hole('tank', node, 0.008);
      continue;
    }
    if (gives.has(port)) circuit.parts[`relief-${port}`] = reliefOn(node);
    const line = random() < 0.15 ? 'tank' : ['left', 'right'][turn++ % 2];
    circuit.parts[`hole-${port}`] = hole(line, node, 0.001 + 0.002 * random());
  }
  return ports;
}

/** Hangs the subject's links, each on a coordinate of its own where it couples two, else all on one. */
function hang(circuit: Circuit, device: DeviceDefinition, random: Random): RigPart['links'] {
  const links: Record<string, { to: string; travel?: Shape }> = {};
  const names = Object.keys(device.links ?? {});
  names.forEach((link, i) => {
    const to = device.role === 'coupling' ? `arm-${i}` : 'arm-0';
    const { shape } = device.links![link];
    links[link] = { to, ...(shape === 'travel' && { travel: TRAVEL }) };
    circuit.coordinates[to] ??= coordinate({
      inertia: flat(10 + 10 * random()),
      moment: flat(-300 + 400 * random()),
      damping: 20 + 60 * random(),
      friction: 5 + 20 * random(),
      staticRatio: 1.2,
      restitution: 0.1,
    });
  });
  const moves = new Set((device.chambers ?? []).map(({ link }) => links[link].to));
  for (const to of Object.keys(circuit.coordinates)) {
    if (moves.has(to)) continue;
    for (const line of ['left', 'right']) {
      circuit.parts[`${to}-hole-${line}`] = hole(line, `${to}-${line}`, 0.0022);
    }
    circuit.parts[`${to}-jack`] = {
      is: 'double-acting-actuator',
      ports: {
        head: `${to}-left`,
        headChamber: `${to}-left`,
        rod: `${to}-right`,
        rodChamber: `${to}-right`,
      },
      links: { rod: { to, travel: TRAVEL } },
      parameters: { bore: 0.04, rodDiameter: 0.016, stroke: LONGEST_TRAVEL },
    };
  }
  return links;
}

/** A lock gets its like at the other end, so that the two could hold against each other. */
function oppose(circuit: Circuit, device: DeviceDefinition): void {
  const other = { uplock: 'downlock', downlock: 'uplock' }[device.role as string];
  if (other === undefined) return;
  circuit.parts.opposite = {
    is: other,
    ports: { release: other === 'downlock' ? 'left' : 'right' },
    links: { leg: { to: 'arm-0' } },
    parameters: { at: other === 'downlock' ? 0 : 1 },
  };
  circuit.units.unit = {
    side: 'left',
    leg: 'arm-0',
    doors: [],
    uplock: device.role === 'uplock' ? SUBJECT : 'opposite',
    downlock: device.role === 'uplock' ? 'opposite' : SUBJECT,
    sequence: [],
    actuators: [],
  };
}

/** Works every control through all its positions, at times of its own. */
function work(circuit: Circuit, inputs: DeviceDefinition['inputs'], random: Random): void {
  for (const [input, { choices, quantity }] of Object.entries(inputs ?? {})) {
    const values = choices?.map((_, i) => i) ?? FIGURES[quantity ?? ''] ?? [0, 1];
    const first = Math.floor(random() * values.length);
    for (let t = 0.1 + 0.4 * random(), i = 1; t < DURATION; t += 0.5 + 0.5 * random(), i++)
      circuit.steps.push(step(t, SUBJECT, input, values[(first + i) % values.length]));
  }
}

/** Figures that the circuit asks for: where a lock or switch is, how long a jack. */
function asked(device: DeviceDefinition, random: Random): Record<string, ParameterValue> {
  const own: Record<string, ParameterValue> = {};
  const { at, stroke, extendedAt, retractedAt } = device.parameters;
  if (stroke !== undefined && device.role === 'actuator') own.stroke = LONGEST_TRAVEL + 0.05;
  if (at !== undefined && device.role === 'uplock')
    own.at = random() < 0.5 ? 1 : 0.3 + random() / 2;
  if (at !== undefined && device.role === 'downlock') own.at = 0;
  if (extendedAt !== undefined) own.extendedAt = 1;
  if (retractedAt !== undefined) own.retractedAt = 0;
  return own;
}

/**
 * Work that moments from outside did on the coordinate of the subject, J: a control that sets a
 * moment (a side load) stands for a person or the wind, which no supply pays for.
 */
export function outsideWork(run: SimulatedRun): number {
  const { is, links } = run.scenario.components[SUBJECT];
  const moments = Object.entries(catalogues.components[is].inputs ?? {}).filter(
    ([, { quantity }]) => quantity === 'moment',
  );
  let work = 0;
  for (const [input, { initial }] of moments) {
    const steps = run.card.steps.filter((s) => s.device === SUBJECT && s.input === input);
    const { t, v } = run.series(`${Object.values(links)[0].to}.angle`)!;
    let value = initial as number;
    for (let i = 1, next = 0; i < t.length; i++) {
      work += value * (v[i] - v[i - 1]);
      while (next < steps.length && steps[next].at <= t[i]) value = steps[next++].value;
    }
  }
  return work;
}

/**
 * Plays the circuit of a kind; the same seed gives the same circuit. `change` makes another device
 * of it after it has been placed.
 * @throws Error with the kind's name when it cannot be placed.
 */
export function playDevice(
  kind: string,
  seed: number,
  options: SimulateOptions,
  change: (definition: DeviceDefinition) => DeviceDefinition = (d) => d,
): SimulatedRun {
  const random = seeded(seed * 7919 + 13);
  const definition = catalogues.components[kind];
  const circuit = stand();
  const parameters = sensible(definition, random, asked(definition, random));
  const device = tailored(definition, parameters);
  const ports = join(circuit, device, random);
  const links = hang(circuit, device, random);
  circuit.parts[SUBJECT] = { is: kind, ports, links, parameters };
  oppose(circuit, device);
  work(circuit, device.inputs, random);
  circuit.steps.sort((a, b) => a.at - b.at);
  const made = rig({
    ...circuit,
    duration: DURATION,
    oil: { freeAir: 0.02 * random() ** 2, viscosity: 1e-5 * 10 ** random() },
  });
  try {
    const components = { ...made.with.components, [kind]: change(definition) };
    return simulateWith({ ...made.with, components }, made.scenario, options);
  } catch (error) {
    throw new Error(`${kind}, seed ${seed}: cannot be placed`, { cause: error });
  }
}
