import type { Plan } from './plan.js';

/**
 * What is shut in when a system rests: groups of nodes with a lasting way between them and none to
 * a reservoir. Ways that last are those of devices that never switch and are open at rest (lines,
 * restrictors, filters); valves, supplies, check valves and pistons shut oil in.
 */
export function shutInGroups(plan: Plan): readonly (readonly number[])[] {
  const root = plan.nodes.map((_, i) => i);
  const find = (i: number): number => (root[i] === i ? i : (root[i] = find(root[i])));
  for (const { definition, nodes, laws } of plan.instances) {
    if (definition.modes !== undefined || definition.inputs !== undefined) continue;
    const ports = Object.keys(definition.ports);
    const moving = definition.chambers?.map((c) => c.port) ?? [];
    Object.values(definition.flows ?? {}).forEach(({ from, to }, i) => {
      if (laws[i]?.open === 0) return;
      if (to === 'outside' || (moving.includes(from) && moving.includes(to))) return;
      root[find(nodes[ports.indexOf(from)])] = find(nodes[ports.indexOf(to)]);
    });
  }
  const groups = new Map<number, number[]>();
  plan.nodes.forEach((_, i) => groups.set(find(i), [...(groups.get(find(i)) ?? []), i]));
  const closed = ({ vented, cushion }: Plan['nodes'][number]): boolean =>
    vented === undefined && cushion === undefined;
  return [...groups.values()].filter((g) => g.every((i) => closed(plan.nodes[i])));
}
