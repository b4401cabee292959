import type { Guard } from '../define/index.js';
import type { Plan } from '../network/index.js';
import type { Log } from './log.js';

const MOVING: readonly string[] = ['rising', 'falling'];

/** A chamber that turns a coordinate, and what switches its pressure. */
export interface Push {
  readonly attachment: number;
  /** Signed area, m2: the chamber pushes towards rising travel where it is positive. */
  readonly area: number;
  readonly behind: readonly string[];
}

/**
 * Who can have brought a transition about: worked out once from the network's structure, so
 * that every log entry can point at the entry that caused it.
 *
 * Oil carries causes: to a port, pressure comes through passive devices (lines, restrictors,
 * filters) from the nearest devices that switch and deliver there (valves, supplies). So the
 * devices behind a node are found by breadth-first search that does not pass through them.
 */
export class Causes {
  private readonly behindNode: readonly (readonly string[])[];
  private readonly pushes: readonly (readonly Push[])[];
  private readonly locks: readonly (readonly string[])[];

  constructor(private readonly plan: Plan) {
    this.behindNode = devicesBehindNodes(plan);
    this.pushes = plan.coordinates.map((_, c) =>
      plan.nodes.flatMap(({ chambers }, node) =>
        chambers
          .filter(({ attachment }) => plan.attachments[attachment].coordinate === c)
          .map((chamber) => ({ ...chamber, behind: this.behindNode[node] })),
      ),
    );
    this.locks = plan.coordinates.map((_, c) =>
      plan.instances
        .filter(({ definition: { role }, attachments }) => {
          const hangs = attachments.some((a) => a >= 0 && plan.attachments[a].coordinate === c);
          return hangs && (role === 'uplock' || role === 'downlock');
        })
        .map(({ name }) => name),
    );
  }

  /**
   * Index of the log entry behind a guard or timer of an instance, -1 when there is none: the
   * mechanism it reads where that is moving, else the latest of everything it reads; the
   * instance's own last entry where it reads nothing.
   */
  ofGuard(instance: number, { reads = [] }: Pick<Guard, 'reads'>, log: Log): number {
    const p = this.plan.instances[instance];
    if (reads.length === 0) return log.lastOf(p.name);
    const ports = Object.keys(p.definition.ports);
    const links = Object.keys(p.definition.links ?? {});
    const found = new Set<string>();
    for (const name of reads) {
      const attachment = p.attachments[links.indexOf(name)] ?? -1;
      if (attachment >= 0) {
        const mechanism = this.plan.members[this.plan.attachments[attachment].member].name;
        const last = log.lastOf(mechanism);
        if (last >= 0 && MOVING.includes(log.entries[last].to)) return last;
        found.add(mechanism);
      }
      const port = ports.indexOf(name);
      if (port >= 0) this.behindNode[p.nodes[port]].forEach((d) => found.add(d));
      // An input is set by wire, or worked by the operator, whose entries carry the device's name.
      const input = Object.keys(p.definition.inputs ?? {}).indexOf(name);
      if (input < 0) continue;
      const wire = this.plan.wires.find((w) => w.to === instance && w.input === input);
      found.add(wire === undefined ? p.name : this.plan.instances[wire.from].name);
    }
    return log.latestOf([...found]);
  }

  /** Locks that hang on a coordinate. */
  locksOf(coordinate: number): readonly string[] {
    return this.locks[coordinate];
  }

  /** Chambers that act on a coordinate. */
  pushesOn(coordinate: number): readonly Push[] {
    return this.pushes[coordinate];
  }
}

/** Per node the names of the nearest switching devices that deliver there, else of any nearby. */
function devicesBehindNodes(plan: Plan): string[][] {
  const ports = plan.nodes.map((): { instance: number; port: string }[] => []);
  plan.instances.forEach(({ nodes, definition }, instance) => {
    Object.keys(definition.ports).forEach((port, k) => ports[nodes[k]].push({ instance, port }));
  });
  return plan.nodes.map((_, start) => {
    const delivering = new Set<string>();
    const near = new Set<string>();
    const seen = new Set([start]);
    const queue = [start];
    for (let node = queue.shift(); node !== undefined; node = queue.shift()) {
      if (plan.nodes[node].vented !== undefined) continue;
      for (const { instance, port } of ports[node]) {
        const { name, definition, nodes } = plan.instances[instance];
        const flows = Object.values(definition.flows ?? {});
        if (switches(plan, instance)) {
          near.add(name);
          // Its first flow at a port is its working direction; free return flow comes after.
          const first = flows.find(({ from, to }) => from === port || to === port);
          if (first?.to === port) delivering.add(name);
          continue;
        }
        // From chamber to chamber only a leak goes.
        const chambers = definition.chambers?.map((c) => c.port) ?? [];
        for (const { from, to } of flows) {
          if (chambers.includes(from) && chambers.includes(to)) continue;
          const other = from === port ? to : to === port ? from : undefined;
          if (other === undefined) continue;
          const next = nodes[Object.keys(definition.ports).indexOf(other)];
          if (!seen.has(next)) queue.push(next);
          seen.add(next);
        }
      }
    }
    return [...(delivering.size > 0 ? delivering : near)];
  });
}

/** Roles that feel pressure or are moved by it, but do not send it anywhere. */
const STILL: readonly string[] = [
  'actuator',
  'uplock',
  'downlock',
  'switch',
  'control',
  'coupling',
];

/** Whether a device switches pressure: by modes of its own or by the operator. */
function switches(plan: Plan, instance: number): boolean {
  const { role, modes, inputs } = plan.instances[instance].definition;
  if (STILL.includes(role)) return false;
  return Object.keys(modes ?? {}).length > 1 || Object.keys(inputs ?? {}).length > 0;
}
