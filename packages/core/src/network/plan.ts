import { kept, tailored } from '../define/index.js';
import type {
  Catalogues,
  CoordinateData,
  DeviceDefinition,
  GasCushion,
  GasVessel,
  MechanismDefinition,
  Parameters,
  PassageLaw,
  Scenario,
  Shape,
  SignalDefinition,
  Surroundings,
} from '../define/index.js';
import { chargeAt, vesselCharge } from '../medium/index.js';
import { kebab } from '../scenario/index.js';
import type { Still } from './gas-reach.js';
import {
  composed,
  dynamicPressure,
  inWind,
  reflected,
  withoutOvershoot,
  type MemberPlan,
} from './member.js';

/**
 * The network by names: which nodes, coordinates, attachments and device instances there are.
 * First half of compiling; `wiring.ts` turns it into indices and slots.
 */
export interface NodePlan {
  readonly name: string;
  volume: number;
  compliance: number;
  pocket: number;
  /** Set for nodes held at a constant pressure, Pa absolute. */
  vented?: number;
  /** Oil at the start where a reservoir says so, m3. */
  content?: number;
  /** Set where the oil stands against a gas cushion: the pressure follows from the content alone. */
  cushion?: GasCushion;
  /** Set where it is the inside of a gas vessel. */
  vessel?: GasVessel;
  /** Gas in a vessel that rests through the whole run, m3 at ANR. */
  resting?: number;
  /** Only gas ports hang on it: it starts filled with gas. */
  dry: boolean;
  readonly chambers: { attachment: number; area: number }[];
}

/** A coordinate: a mechanism with a motion of its own, and all it drives reflected to it. */
export interface CoordinatePlan {
  readonly name: string;
  readonly definition: MechanismDefinition;
  readonly data: CoordinateData;
}

export interface AttachmentPlan {
  /** `device.link` */
  readonly name: string;
  readonly coordinate: number;
  /** Mechanism it hangs on. */
  readonly member: number;
  /** Travel against the coordinate's angle; absent where it is that angle. */
  readonly travel?: Shape;
}

/** A wire: a signal of one device that sets an input of another. */
export interface WirePlan {
  readonly from: number;
  readonly signal: SignalDefinition;
  readonly to: number;
  /** Position among the inputs of the instance it goes to. */
  readonly input: number;
}

export interface InstancePlan {
  readonly name: string;
  readonly definition: DeviceDefinition;
  readonly parameters: Parameters;
  /** Constants of the loop. */
  readonly k: Float64Array;
  readonly nodes: Int32Array;
  readonly attachments: Int32Array;
  /** Law of every flow that has one. */
  readonly laws: readonly (PassageLaw | undefined)[];
}

export interface Plan {
  readonly nodes: readonly NodePlan[];
  readonly coordinates: readonly CoordinatePlan[];
  /** Every mechanism, in declared order. */
  readonly members: readonly MemberPlan[];
  readonly attachments: readonly AttachmentPlan[];
  readonly instances: readonly InstancePlan[];
  readonly wires: readonly WirePlan[];
  /** Name of every node a scenario name stands for (several names may share a vented node). */
  readonly nodeOf: ReadonlyMap<string, number>;
}

/** The built-in vented node that takes what leaks out. */
export const OUTSIDE = 'outside';

/** No passage is smaller than this, m3: a drilled port. */
const LEAST_VOLUME = 5e-7;
/** Nor is more of it than this share trapped air. */
const MOST_AIR = 0.9;

/**
 * Makes the plan. The scenario has been checked: names resolve, required ports are connected. `still`:
 * nodes that rest at a constant pressure, one for all of a set.
 */
export function plan(
  scenario: Scenario,
  catalogues: Catalogues,
  around: Surroundings,
  still?: Still,
): Plan {
  const nodes: NodePlan[] = [];
  const nodeOf = new Map<string, number>();
  const rests = new Map<ReadonlySet<string>, number>();
  const node = (name: string): number => {
    const known = nodeOf.get(name);
    if (known !== undefined) return known;
    const set = still?.air.has(name)
      ? still.air
      : still?.charged.has(name)
        ? still.charged
        : undefined;
    const same = set && rests.get(set);
    if (set !== undefined) rests.set(set, same ?? nodes.length);
    if (same !== undefined) {
      nodeOf.set(name, same);
      return same;
    }
    const entry = scenario.nodes[name];
    nodes.push({
      name,
      volume: entry?.volume ?? 0,
      compliance: 0,
      pocket: entry?.air ?? 0,
      dry: true,
      chambers: [],
    });
    nodeOf.set(name, nodes.length - 1);
    return nodes.length - 1;
  };
  nodes[node(OUTSIDE)].vented = around.ambient;

  // Ports of one reservoir are one node, so they are joined before anything else is numbered.
  for (const [device, entry] of Object.entries(scenario.components)) {
    const vented = catalogues.components[entry.is].vented;
    if (vented === undefined) continue;
    const connected = vented.ports.flatMap((port) => entry.ports[port] ?? []);
    if (connected.length === 0) continue;
    const index = node(connected[0]);
    for (const port of vented.ports)
      nodeOf.set(entry.ports[port] ?? `${device}.${kebab(port)}`, index);
    nodes[index].vented = vented.pressure(entry.parameters, around);
    nodes[index].content = (nodes[index].content ?? 0) + vented.content(entry.parameters);
  }

  const { coordinates, members } = planMembers(scenario, catalogues);
  const memberOf = new Map(members.map(({ name }, i) => [name, i]));

  const attachments: AttachmentPlan[] = [];
  const instances: InstancePlan[] = [];
  for (const [name, entry] of Object.entries(scenario.components)) {
    const definition = tailored(catalogues.components[entry.is], entry.parameters);
    const ports = Object.entries(definition.ports);
    const indices = new Int32Array(ports.length);
    ports.forEach(([port, d], i) => {
      const index = node(
        entry.ports[port] ?? (port === OUTSIDE ? OUTSIDE : `${name}.${kebab(port)}`),
      );
      indices[i] = index;
      nodes[index].volume += typeof d.volume === 'number' ? d.volume : d.volume(entry.parameters);
      nodes[index].compliance += d.compliance?.(entry.parameters, around) ?? 0;
      nodes[index].pocket += d.pocket?.(entry.parameters) ?? 0;
      if (d.dry !== true) nodes[index].dry = false;
      if (d.vessel !== undefined) nodes[index].vessel = d.vessel(entry.parameters, around);
      if (d.cushion !== undefined) nodes[index].cushion = d.cushion(entry.parameters, around);
    });
    const links = Object.keys(definition.links ?? {});
    const linked = new Int32Array(links.length).fill(-1);
    links.forEach((link, i) => {
      const hung = entry.links[link];
      if (hung === undefined) return;
      linked[i] = attachments.length;
      const member = memberOf.get(hung.to)!;
      attachments.push({
        name: `${name}.${link}`,
        coordinate: members[member].coordinate,
        member,
        travel: travelOf(members[member], hung.travel, coordinates),
      });
    });
    for (const chamber of definition.chambers ?? []) {
      const port = ports.findIndex(([p]) => p === chamber.port);
      const attachment = linked[links.indexOf(chamber.link)];
      if (attachment >= 0) {
        nodes[indices[port]].chambers.push({ attachment, area: chamber.area(entry.parameters) });
      }
    }
    instances.push({
      name,
      definition,
      parameters: entry.parameters,
      ...preparedFor(entry.parameters, definition, around),
      nodes: indices,
      attachments: linked,
    });
  }
  for (const n of nodes) if (n.vessel !== undefined) n.volume = n.vessel.volume;
  for (const i of rests.values()) rest(nodes[i], catalogues, around);
  // Trapped air brings its own room.
  for (const n of nodes) n.volume = Math.max(n.volume, LEAST_VOLUME, n.pocket / MOST_AIR);
  const wires = planWires(scenario, instances);
  return { nodes, coordinates, members, attachments, instances, wires, nodeOf };
}

/** Makes a node one that rests: at the pressure of its vessel at the run's temperature, or at ambient. */
function rest(node: NodePlan, { gases }: Catalogues, { ambient, temperature }: Surroundings): void {
  const { vessel } = node;
  node.vented = ambient;
  if (vessel === undefined) return;
  const gas = gases[vessel.gas];
  node.vented = chargeAt(gas, vessel.pressure, vessel.temperature, temperature);
  node.resting = vesselCharge(gas, vessel.volume, vessel.pressure, vessel.temperature);
  node.vessel = undefined;
}

/** What a device has worked out for the loop, kept as the data of mechanisms are. */
const preparedFor = kept(
  (
    parameters: Parameters,
    definition: DeviceDefinition,
    around: Surroundings,
  ): Pick<InstancePlan, 'k' | 'laws'> => ({
    k: definition.prepare(parameters, around),
    laws: Object.values(definition.flows ?? {}).map((f) => f.law?.(parameters, around)),
  }),
);

/** Data of mechanisms as they were last asked for: most runs of a scenario change few of them. */
const dataOf = kept(
  (
    parameters: Parameters,
    definition: MechanismDefinition,
    pressure: number,
    sideslip: number,
  ): CoordinateData => inWind(definition.coordinate(parameters), pressure, sideslip),
);

/** Coordinates for the mechanisms that move of themselves, and who moves the others. */
function planMembers(
  scenario: Scenario,
  catalogues: Catalogues,
): { coordinates: CoordinatePlan[]; members: MemberPlan[] } {
  const { airspeed, sideslip } = scenario;
  const pressure = dynamicPressure(airspeed);
  const entries = Object.entries(scenario.mechanisms);
  const data = new Map(
    entries.map(([name, { is, parameters }]) => [
      name,
      dataOf(parameters, catalogues.mechanisms[is], pressure, sideslip),
    ]),
  );
  const leaders = entries.filter(([, e]) => e.driven === undefined).map(([name]) => name);
  /** Leader of a mechanism, and its angle against the leader's. */
  const trace = (name: string): { leader: string; angle?: Shape } => {
    const { driven } = scenario.mechanisms[name];
    if (driven === undefined) return { leader: name };
    const { leader, angle } = trace(driven.by);
    const own = withoutOvershoot(driven.angle);
    if (angle === undefined) return { leader, angle: own };
    const { low, high } = data.get(leader)!;
    return { leader, angle: composed(own, angle, low, high) };
  };
  const members = entries.map(([name, { is, parameters }]): MemberPlan => {
    const { leader, angle } = trace(name);
    return {
      name,
      definition: catalogues.mechanisms[is],
      parameters,
      data: data.get(name)!,
      coordinate: leaders.indexOf(leader),
      angle,
    };
  });
  const coordinates = leaders.map((name, c) => ({
    name,
    definition: catalogues.mechanisms[scenario.mechanisms[name].is],
    data: reflected(
      data.get(name)!,
      members.flatMap((m) =>
        m.coordinate === c && m.angle !== undefined ? [{ data: m.data, angle: m.angle }] : [],
      ),
    ),
  }));
  return { coordinates, members };
}

/** Travel of a link against the coordinate's angle. */
function travelOf(
  { coordinate, angle }: MemberPlan,
  travel: Shape | undefined,
  coordinates: readonly CoordinatePlan[],
): Shape | undefined {
  if (angle === undefined || travel === undefined) return travel ?? angle;
  const { low, high } = coordinates[coordinate].data;
  return composed(travel, angle, low, high);
}

function planWires(scenario: Scenario, instances: readonly InstancePlan[]): WirePlan[] {
  const at = new Map(instances.map(({ name }, i) => [name, i]));
  return instances.flatMap(({ name, definition }, to) =>
    Object.entries(scenario.components[name].signals).map(([input, { device, signal }]) => {
      const from = at.get(device)!;
      return {
        from,
        signal: instances[from].definition.signals![signal],
        to,
        input: Object.keys(definition.inputs ?? {}).indexOf(input),
      };
    }),
  );
}
