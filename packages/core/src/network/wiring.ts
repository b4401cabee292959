import { minimumDegreeOrder, patternFrom, placeOf, type SparsePattern } from '../solver/index.js';
import { settleGas, wireGas, wireGasEntries, type GasWiring } from './gas-wiring.js';
import {
  settle,
  VIA_LINK,
  VIA_NODE,
  VIA_STATE,
  type AlsoSlots,
  type FrameWiring,
} from './slots.js';
import type { InstancePlan, Plan } from './plan.js';

/**
 * Second half of compiling: state numbers in elimination order, the Jacobian's pattern, and for
 * every partial derivative a device writes the slot it goes to.
 *
 * Devices write partials against node pressures. Each (row, node) pair is one entry; entry 0
 * collects partials against vented nodes, whose pressure never changes. Once per Jacobian an
 * entry is turned into partials against the node's content and against the angles that move
 * its volume.
 */
export interface Wiring {
  readonly states: number;
  readonly stateNames: readonly string[];
  readonly contentState: Int32Array;
  readonly angleState: Int32Array;
  readonly speedState: Int32Array;
  /** Own states by instance. */
  readonly ownStates: readonly Int32Array[];
  readonly pattern: SparsePattern;
  readonly frames: readonly FrameWiring[];
  readonly inputs: number;
  readonly inputOffset: Int32Array;
  readonly entries: Entries;
  readonly gas: GasWiring;
  /** Jacobian slots of the coordinates' own rows. */
  readonly angleBySpeed: Int32Array;
  readonly speedByAngle: Int32Array;
  readonly speedBySpeed: Int32Array;
}

/** Pressure partials; index 0 is the bin. */
export interface Entries {
  readonly count: number;
  /** Column node. */
  readonly node: Int32Array;
  /** Coordinate whose inverse inertia scales the row, or -1. */
  readonly scaledBy: Int32Array;
  /** Jacobian slot against the node's content. */
  readonly contentSlot: Int32Array;
  /** Chambers of the column node: slots against angles, `chamberStart[e] .. chamberStart[e+1]`. */
  readonly chamberStart: Int32Array;
  readonly chamberSlot: Int32Array;
  /** Index into the network's chamber list (d volume / d angle). */
  readonly chamber: Int32Array;
}

/** Ending of a dependence on a link's rate. */
const RATE = '.rate';

interface RawEntry {
  readonly row: number;
  readonly node: number;
  readonly scaledBy: number;
}

/** `reached`: 1 for nodes that gas can reach. */
export function wire(plan: Plan, chamberStart: Int32Array, reached: Uint8Array): Wiring {
  const names: string[] = [];
  const fresh = (name: string): number => names.push(name) - 1;
  const content = plan.nodes.map((n) => fresh(`${n.name}.content`));
  const angle = plan.coordinates.map((c) => fresh(`${c.name}.angle`));
  const speed = plan.coordinates.map((c) => fresh(`${c.name}.speed`));
  const own = plan.instances.map((i) =>
    Object.keys(i.definition.states ?? {}).map((s) => fresh(`${i.name}.${s}`)),
  );
  const gas = plan.nodes.map((n, i) => (reached[i] === 1 ? fresh(`${n.name}.gas`) : -1));
  const heat = plan.nodes.map((n) =>
    n.vessel === undefined ? -1 : fresh(`${n.name}.temperature`),
  );

  // First pass: raw entries and direct places, in raw numbering.
  const raw: RawEntry[] = [{ row: -1, node: -1, scaledBy: -1 }];
  const entryOf = new Map<string, number>();
  const entry = (row: number, node: number, scaledBy: number): number => {
    if (plan.nodes[node].vented !== undefined) return 0;
    const key = `${row}:${node}`;
    const known = entryOf.get(key);
    if (known !== undefined) return known;
    raw.push({ row, node, scaledBy });
    entryOf.set(key, raw.length - 1);
    return raw.length - 1;
  };
  const places: [number, number][] = [];
  const direct = (row: number, column: number): number => places.push([row, column]) - 1;

  const angleBySpeed = angle.map((a, c) => direct(a, speed[c]));
  const speedByAngle = angle.map((a, c) => direct(speed[c], a));
  const speedBySpeed = speed.map((s) => direct(s, s));

  const contexts = plan.instances.map((_, index) => ({
    rowOfNode: (n: number) => content[n],
    rowOfCoordinate: (c: number) => speed[c],
    angleOf: (c: number) => angle[c],
    speedOf: (c: number) => speed[c],
    own: own[index],
    entry,
    direct,
  }));
  const frames = plan.instances.map((instance, i) => wireInstance(plan, instance, contexts[i]));
  const gasPaths = wireGas(plan, {
    content,
    gas,
    heat,
    angle,
    chamberStart,
    entry,
    direct,
    also: (i, f, rows) => {
      const instance = plan.instances[i];
      const depend = dependences(plan, instance, contexts[i]);
      const names = Object.values(instance.definition.flows ?? {})[f].also ?? [];
      return names.map((name) => depend(name, rows, -1));
    },
  });

  const contentPlaces = raw.map((e, i) => (i === 0 ? -1 : direct(e.row, content[e.node])));
  const start = new Int32Array(raw.length + 1);
  const chamber: number[] = [];
  const chamberPlaces: number[] = [];
  raw.forEach((e, i) => {
    if (i > 0) {
      plan.nodes[e.node].chambers.forEach((ch, k) => {
        chamber.push(chamberStart[e.node] + k);
        chamberPlaces.push(direct(e.row, angle[plan.attachments[ch.attachment].coordinate]));
      });
    }
    start[i + 1] = chamber.length;
  });
  // The oil in a chamber follows the piston (see bends.ts).
  plan.nodes.forEach(({ chambers }, node) =>
    chambers.forEach(({ attachment }) => {
      const { coordinate } = plan.attachments[attachment];
      direct(content[node], angle[coordinate]);
      direct(content[node], speed[coordinate]);
    }),
  );
  const gasEntries = wireGasEntries(raw, gas, heat, direct);

  // Number the states in elimination order, so that the solver needs no permutation.
  const order = minimumDegreeOrder(names.length, places);
  const number = new Int32Array(names.length);
  order.forEach((r, k) => (number[r] = k));
  const renumbered = places.map(([i, j]) => [number[i], number[j]] as const);
  const pattern = patternFrom(names.length, renumbered);
  const slot = renumbered.map(([i, j]) => placeOf(pattern, i, j));
  const slots = (list: readonly number[]): Int32Array =>
    Int32Array.from(list, (p) => (p < 0 ? 0 : slot[p]));
  const numbers = (list: readonly number[]): Int32Array => Int32Array.from(list, (r) => number[r]);

  const inputOffset = new Int32Array(plan.instances.length);
  let inputs = 0;
  plan.instances.forEach((i, k) => {
    inputOffset[k] = inputs;
    inputs += Object.keys(i.definition.inputs ?? {}).length;
  });

  return {
    states: names.length,
    stateNames: Array.from(order, (r) => names[r]),
    contentState: numbers(content),
    angleState: numbers(angle),
    speedState: numbers(speed),
    ownStates: own.map(numbers),
    pattern,
    frames: frames.map((f, k) => ({
      ...f,
      states: numbers(own[k]),
      inputs: Int32Array.from(
        Object.keys(plan.instances[k].definition.inputs ?? {}),
        (_, i) => inputOffset[k] + i,
      ),
      flowAlso: f.flowAlso.map((l) => l.map((a) => settle(a, slot))),
      forceAlso: f.forceAlso.map((l) => l.map((a) => settle(a, slot))),
      rateAlso: f.rateAlso.map((l) => l.map((a) => settle(a, slot))),
    })),
    inputs,
    inputOffset,
    entries: {
      count: raw.length,
      node: Int32Array.from(raw, (e) => Math.max(e.node, 0)),
      scaledBy: Int32Array.from(raw, (e) => e.scaledBy),
      contentSlot: slots(contentPlaces),
      chamberStart: start,
      chamberSlot: slots(chamberPlaces),
      chamber: Int32Array.from(chamber),
    },
    gas: settleGas({ ...gasPaths, ...gasEntries }, slot, number),
    angleBySpeed: slots(angleBySpeed),
    speedByAngle: slots(speedByAngle),
    speedBySpeed: slots(speedBySpeed),
  };
}

interface WireContext {
  readonly rowOfNode: (node: number) => number;
  readonly rowOfCoordinate: (coordinate: number) => number;
  readonly angleOf: (coordinate: number) => number;
  readonly speedOf: (coordinate: number) => number;
  readonly own: readonly number[];
  readonly entry: (row: number, node: number, scaledBy: number) => number;
  readonly direct: (row: number, column: number) => number;
}

/** Slots of an instance's dependence for one or two rows; a dependence on nothing goes to the bin. */
function dependences(
  plan: Plan,
  instance: InstancePlan,
  c: WireContext,
): (name: string, rows: readonly number[], scaledBy: number) => AlsoSlots {
  const ports = Object.keys(instance.definition.ports);
  const links = Object.keys(instance.definition.links ?? {});
  const states = Object.keys(instance.definition.states ?? {});
  return (name, rows, scaledBy) => {
    const state = states.indexOf(name);
    if (state >= 0) {
      const [first, second] = rows.map((r) => c.direct(r, c.own[state]));
      return { via: VIA_STATE, attachment: 0, first, second: second ?? first };
    }
    // `rod` is a link's travel, `rod.rate` its rate: both come through the lever arm.
    const rate = name.endsWith(RATE);
    const link = links.indexOf(rate ? name.slice(0, -RATE.length) : name);
    if (link >= 0) {
      const attachment = instance.attachments[link];
      if (attachment < 0) return { via: VIA_NODE, attachment: 0, first: 0, second: 0 };
      const { coordinate } = plan.attachments[attachment];
      const column = rate ? c.speedOf(coordinate) : c.angleOf(coordinate);
      const [first, second] = rows.map((r) => c.direct(r, column));
      return { via: VIA_LINK, attachment, first, second: second ?? first };
    }
    const node = instance.nodes[ports.indexOf(name)];
    const [first, second] = rows.map((r) => c.entry(r, node, scaledBy));
    return { via: VIA_NODE, attachment: 0, first, second: second ?? first };
  };
}

function wireInstance(plan: Plan, instance: InstancePlan, c: WireContext): FrameWiring {
  const d = instance.definition;
  const ports = Object.keys(d.ports);
  const links = Object.keys(d.links ?? {});
  const nodeAt = (port: string): number => instance.nodes[ports.indexOf(port)];
  const also = dependences(plan, instance, c);
  const flows = Object.values(d.flows ?? {});
  const flowSlots = new Int32Array(4 * flows.length);
  flows.forEach((f, i) => {
    const from = nodeAt(f.from);
    const to = nodeAt(f.to);
    flowSlots[4 * i] = c.entry(c.rowOfNode(from), from, -1);
    flowSlots[4 * i + 1] = c.entry(c.rowOfNode(from), to, -1);
    flowSlots[4 * i + 2] = c.entry(c.rowOfNode(to), from, -1);
    flowSlots[4 * i + 3] = c.entry(c.rowOfNode(to), to, -1);
  });
  const forces = Object.values(d.forces ?? {});
  const forceAttachment = Int32Array.from(
    forces,
    (f) => instance.attachments[links.indexOf(f.link)],
  );
  return {
    nodes: instance.nodes,
    attachments: instance.attachments,
    states: new Int32Array(0),
    inputs: new Int32Array(0),
    flowSlots,
    flowFrom: Int32Array.from(flows, (f) => nodeAt(f.from)),
    flowTo: Int32Array.from(flows, (f) => nodeAt(f.to)),
    flowAlso: flows.map((f) =>
      (f.also ?? []).map((name) =>
        also(name, [c.rowOfNode(nodeAt(f.from)), c.rowOfNode(nodeAt(f.to))], -1),
      ),
    ),
    forceAttachment,
    forceAlso: forces.map((f, i) => {
      if (forceAttachment[i] < 0) return [];
      const coordinate = plan.attachments[forceAttachment[i]].coordinate;
      return (f.also ?? []).map((name) => also(name, [c.rowOfCoordinate(coordinate)], coordinate));
    }),
    rateAlso: Object.values(d.states ?? {}).map((s, i) =>
      (s.also ?? []).map((name) => also(name, [c.own[i]], -1)),
    ),
  };
}
