import type { Card, PassageLaw } from '../define/index.js';
import type { NodePlan, Plan } from './plan.js';

/** What of a card decides where gas can go. */
export type GasCard = Pick<Card, 'gas' | 'steps'>;

export const NO_GAS: GasCard = { gas: {}, steps: [] };

/**
 * The nodes that gas can reach in a run: those where the card puts it, vessels, and whatever
 * hangs on them by ways that may open. A valve that nobody works in this card and that is shut
 * without a leak keeps it back, so that a normal swing pays nothing for its emergency bottle.
 * Reservoirs and accumulators take gas in and give none back.
 */
export function gasReach(plan: Plan, card: GasCard): Uint8Array {
  const reached = new Uint8Array(plan.nodes.length);
  const open: number[] = [];
  const reach = (node: number): void => {
    if (reached[node] === 1) return;
    reached[node] = 1;
    open.push(node);
  };
  for (const name of Object.keys(card.gas)) {
    const node = plan.nodeOf.get(name);
    if (node !== undefined && holds(plan.nodes[node])) reach(node);
  }
  plan.nodes.forEach((n, i) => n.vessel !== undefined && holds(n) && reach(i));
  const ways = waysOf(plan, new Set(card.steps.map((s) => s.device)));
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (!holds(plan.nodes[at])) continue;
    for (const next of ways[at]) reach(next);
  }
  return reached;
}

/** Names of nodes in which nothing can happen in a run: gas lines at rest, and charged ones before a shut valve. */
export interface Still {
  readonly air: ReadonlySet<string>;
  readonly charged: ReadonlySet<string>;
}

/**
 * What of the gas side rests through a whole run: gas lines that no gas reaches and that have no
 * open way to oil, and where no vessel has a way to anything but dry nodes, the vessels and what
 * stands under their pressure. One node at a constant pressure stands for all of each, so that a
 * swing does not pay for its bottle.
 */
export function stillGas(plan: Plan, reached: Uint8Array, card: GasCard): Still {
  const air = new Set<string>();
  const charged = new Set<string>();
  const worked = new Set(card.steps.map((s) => s.device));
  const stirred = plan.instances.some(
    ({ name, nodes }) => worked.has(name) && nodes.some((n) => reached[n] === 1),
  );
  const shut =
    !stirred && plan.nodes.every((n, i) => reached[i] === 0 || (n.dry && n.vented === undefined));
  const vessels = plan.nodes.filter((n) => n.vessel !== undefined).length;
  const open = openToOil(plan);
  plan.nodes.forEach((n, i) => {
    if (!n.dry || n.vented !== undefined || open[i] === 1) return;
    if (reached[i] === 0) air.add(n.name);
    else if (shut && vessels === 1) charged.add(n.name);
  });
  return { air, charged };
}

/** Dry nodes that stand open to oil from the start, or leak to it, and all that hang together with them. */
function openToOil(plan: Plan): Uint8Array {
  const open = new Uint8Array(plan.nodes.length);
  const pairs: (readonly [number, number])[] = [];
  for (const { definition, nodes, laws } of plan.instances) {
    const ports = Object.keys(definition.ports);
    Object.values(definition.flows ?? {}).forEach((flow, f) => {
      const from = nodes[ports.indexOf(flow.from)];
      const to = nodes[ports.indexOf(flow.to)];
      const dry = [from, to].filter((n) => plan.nodes[n].dry);
      const law = laws[f];
      if (dry.length === 2) pairs.push([from, to]);
      const shut = law !== undefined && law.open === 0 && law.leak === 0;
      if (dry.length === 1 && !shut) open[dry[0]] = 1;
    });
  }
  for (let grown = true; grown;) {
    grown = false;
    for (const [a, b] of pairs) {
      if (open[a] === open[b]) continue;
      open[a] = open[b] = 1;
      grown = true;
    }
  }
  return open;
}

/** Whether gas in a node may leave it again. */
export function holds(node: NodePlan): boolean {
  return node.vented === undefined && node.cushion === undefined;
}

/** By node: the nodes gas may go to from there. */
function waysOf(plan: Plan, worked: ReadonlySet<string>): number[][] {
  const ways: number[][] = plan.nodes.map(() => []);
  plan.instances.forEach((instance, i) => {
    const ports = Object.keys(instance.definition.ports);
    const inputs = Object.keys(instance.definition.inputs ?? {}).length;
    const idle =
      inputs > 0 && !worked.has(instance.name) && !plan.wires.some((wire) => wire.to === i);
    Object.values(instance.definition.flows ?? {}).forEach((flow, f) => {
      const from = instance.nodes[ports.indexOf(flow.from)];
      const to = instance.nodes[ports.indexOf(flow.to)];
      const { forth, back } = passable(instance.laws[f], idle);
      if (forth) ways[from].push(to);
      if (back) ways[to].push(from);
    });
  });
  return ways;
}

/** Which ways gas may take a path; an opening that is shut at the start and that nobody works stays shut. */
function passable(law: PassageLaw | undefined, idle: boolean): { forth: boolean; back: boolean } {
  if (law === undefined) return { forth: true, back: true };
  const both = law.leak > 0 || (law.constant > 0 && (law.open > 0 || !idle));
  const sense = law.check !== undefined && law.check.constant > 0 ? law.check.sense : 0;
  return { forth: both || sense === 1, back: both || sense === -1 };
}
