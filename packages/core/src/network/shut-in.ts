import type { Plan } from './plan.js';

/**
 * Nodes from which no lasting way leads to a reservoir: what is shut in when a system rests. Ways
 * that last are those of devices that never switch and are open at rest (lines, restrictors,
 * filters); valves, supplies, check valves and pistons shut oil in.
 */
export function shutInNodes(plan: Plan): ReadonlySet<number> {
  const open = new Set(plan.nodes.flatMap((n, i) => (n.vented === undefined ? [] : [i])));
  for (let grew = true; grew;) {
    grew = false;
    for (const { definition, nodes, laws } of plan.instances) {
      if (definition.modes !== undefined || definition.inputs !== undefined) continue;
      const ports = Object.keys(definition.ports);
      const moving = definition.chambers?.map((c) => c.port) ?? [];
      Object.values(definition.flows ?? {}).forEach(({ from, to }, i) => {
        const law = laws[i];
        if (law !== undefined && law.open === 0) return;
        if (moving.includes(from) && moving.includes(to)) return;
        const a = nodes[ports.indexOf(from)];
        const b = nodes[ports.indexOf(to)];
        if (open.has(a) === open.has(b) || ports[ports.indexOf(to)] === 'outside') return;
        open.add(a).add(b);
        grew = true;
      });
    }
  }
  return new Set(plan.nodes.flatMap((_, i) => (open.has(i) ? [] : [i])));
}
