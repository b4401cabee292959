import type { Guard } from '../define/index.js';
import type { Plan } from '../network/index.js';

/**
 * Who can have brought a transition about: worked out once from the network's structure, so
 * that every log entry can point at the entry that caused it.
 *
 * Oil carries causes: from a port, pressure changes come through passive devices (lines,
 * restrictors, filters) from the nearest devices that switch (valves, supplies). So the
 * controllers of a node are found by breadth-first search that does not pass through them.
 */
export class Causes {
  private readonly nodeControllers: readonly (readonly string[])[];

  constructor(private readonly plan: Plan) {
    const ports = plan.nodes.map((): { instance: number; port: number }[] => []);
    plan.instances.forEach((instance, i) => {
      instance.nodes.forEach((node, port) => ports[node].push({ instance: i, port }));
    });
    const switches = (i: number): boolean => {
      const d = plan.instances[i].definition;
      return (
        d.role !== 'actuator' &&
        d.role !== 'uplock' &&
        d.role !== 'downlock' &&
        (Object.keys(d.modes ?? {}).length > 1 || Object.keys(d.inputs ?? {}).length > 0)
      );
    };
    this.nodeControllers = plan.nodes.map((_, start) => {
      const found = new Set<string>();
      const seen = new Set([start]);
      const queue = [start];
      for (let node = queue.shift(); node !== undefined; node = queue.shift()) {
        if (plan.nodes[node].vented !== undefined) continue;
        for (const { instance, port } of ports[node]) {
          if (switches(instance)) {
            found.add(plan.instances[instance].name);
            continue;
          }
          const names = Object.keys(plan.instances[instance].definition.ports);
          for (const flow of Object.values(plan.instances[instance].definition.flows ?? {})) {
            const from = names.indexOf(flow.from);
            const to = names.indexOf(flow.to);
            const other = from === port ? to : to === port ? from : -1;
            if (other < 0) continue;
            const next = plan.instances[instance].nodes[other];
            if (!seen.has(next)) {
              seen.add(next);
              queue.push(next);
            }
          }
        }
      }
      return [...found];
    });
  }

  /** Devices that may lie behind a guard of an instance. */
  ofGuard(instance: number, guard: Pick<Guard, 'reads'>): readonly string[] {
    const p = this.plan.instances[instance];
    const ports = Object.keys(p.definition.ports);
    const links = Object.keys(p.definition.links ?? {});
    const found = new Set<string>();
    for (const name of guard.reads ?? []) {
      const port = ports.indexOf(name);
      if (port >= 0) this.nodeControllers[p.nodes[port]].forEach((d) => found.add(d));
      const link = links.indexOf(name);
      if (link >= 0 && p.attachments[link] >= 0) {
        found.add(this.plan.coordinates[this.plan.attachments[p.attachments[link]].coordinate].name);
      }
      // An input is worked by the operator, whose entries carry the device's name.
      if (p.definition.inputs !== undefined && name in p.definition.inputs) found.add(p.name);
    }
    return [...found];
  }

  /** Devices that may set a coordinate in motion: its locks, and the controllers behind its actuators. */
  ofMotion(coordinate: number): readonly string[] {
    const found = new Set<string>();
    for (const p of this.plan.instances) {
      const hangs = [...p.attachments].some(
        (a) => a >= 0 && this.plan.attachments[a].coordinate === coordinate,
      );
      if (!hangs) continue;
      const { role, forces } = p.definition;
      if (role === 'uplock' || role === 'downlock') found.add(p.name);
      if (forces !== undefined) {
        for (const node of p.nodes) this.nodeControllers[node].forEach((d) => found.add(d));
      }
    }
    return [...found];
  }
}
