import type {
  Catalogues,
  CoordinateData,
  DeviceDefinition,
  MechanismDefinition,
  Parameters,
  PassageLaw,
  Scenario,
  Surroundings,
} from '../define/index.js';
import { kebab } from '../scenario/index.js';

/**
 * The network by names: which nodes, coordinates, attachments and device instances there are.
 * First half of compiling; `compile.ts` turns it into indices and slots.
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
  readonly chambers: { attachment: number; area: number }[];
}

export interface CoordinatePlan {
  readonly name: string;
  readonly definition: MechanismDefinition;
  readonly parameters: Parameters;
  readonly data: CoordinateData;
}

export interface AttachmentPlan {
  /** `device.link` */
  readonly name: string;
  readonly coordinate: number;
  readonly travel?: { readonly x: readonly number[]; readonly y: readonly number[] };
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
  readonly attachments: readonly AttachmentPlan[];
  readonly instances: readonly InstancePlan[];
  /** Name of every node a scenario name stands for (several names may share a vented node). */
  readonly nodeOf: ReadonlyMap<string, number>;
}

/** The built-in vented node that takes what leaks out. */
export const OUTSIDE = 'outside';

/** No passage is smaller than this, m3: a drilled port. */
const LEAST_VOLUME = 5e-7;

/** Makes the plan. The scenario has been checked: names resolve, required ports are connected. */
export function plan(scenario: Scenario, catalogues: Catalogues, around: Surroundings): Plan {
  const nodes: NodePlan[] = [];
  const nodeOf = new Map<string, number>();
  const node = (name: string): number => {
    const known = nodeOf.get(name);
    if (known !== undefined) return known;
    const entry = scenario.nodes[name];
    nodes.push({
      name,
      volume: entry?.volume ?? 0,
      compliance: 0,
      pocket: entry?.air ?? 0,
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

  const coordinates: CoordinatePlan[] = [];
  const coordinateOf = new Map<string, number>();
  for (const [name, entry] of Object.entries(scenario.mechanisms)) {
    const definition = catalogues.mechanisms[entry.is];
    coordinateOf.set(name, coordinates.length);
    coordinates.push({
      name,
      definition,
      parameters: entry.parameters,
      data: definition.coordinate(entry.parameters),
    });
  }

  const attachments: AttachmentPlan[] = [];
  const instances: InstancePlan[] = [];
  for (const [name, entry] of Object.entries(scenario.components)) {
    const definition = catalogues.components[entry.is];
    const ports = Object.entries(definition.ports);
    const indices = new Int32Array(ports.length);
    ports.forEach(([port, d], i) => {
      const index = node(
        entry.ports[port] ?? (port === OUTSIDE ? OUTSIDE : `${name}.${kebab(port)}`),
      );
      indices[i] = index;
      nodes[index].volume += typeof d.volume === 'number' ? d.volume : d.volume(entry.parameters);
      nodes[index].compliance += d.compliance?.(entry.parameters, around) ?? 0;
    });
    const links = Object.keys(definition.links ?? {});
    const linked = new Int32Array(links.length).fill(-1);
    links.forEach((link, i) => {
      const hung = entry.links[link];
      if (hung === undefined) return;
      linked[i] = attachments.length;
      attachments.push({
        name: `${name}.${link}`,
        coordinate: coordinateOf.get(hung.to)!,
        travel: hung.travel,
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
      k: definition.prepare(entry.parameters, around),
      laws: Object.values(definition.flows ?? {}).map((f) => f.law?.(entry.parameters, around)),
      nodes: indices,
      attachments: linked,
    });
  }
  for (const n of nodes) n.volume = Math.max(n.volume, LEAST_VOLUME);
  return { nodes, coordinates, attachments, instances, nodeOf };
}
