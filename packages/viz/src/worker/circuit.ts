/** Draws the facts of the hydraulic circuit out of a scenario; what has no oil or gas in it is left out. */
import { catalogues, kept, tailored } from '@wheelwell/core';
import type { ComponentEntry, DeviceDefinition, Parameters, Scenario } from '@wheelwell/core';
import type {
  CircuitFacts,
  CircuitNode,
  FigureFacts,
  MoveFacts,
  PartFacts,
  PortFacts,
} from './circuit-message.js';

const { components } = catalogues;

/** A flow that opens a check valve in the drawing, m3/s: a drop a second. */
const DROP = 5e-8;

export function circuitFacts(scenario: Scenario): CircuitFacts {
  const nodes = new Map<string, CircuitNode>();
  const parts = Object.entries(scenario.components).flatMap(([name, entry]): PartFacts[] => {
    const kind = components[entry.is];
    if (kind === undefined || Object.keys(entry.ports).length === 0) return [];
    for (const [port, node] of Object.entries(entry.ports)) {
      const known = nodes.get(node);
      const tank = kind.vented?.ports.includes(port) === true || known?.tank === true;
      const gas = kind.ports[port]?.dry === true && known?.gas !== false;
      nodes.set(node, { name: node, tank, gas });
    }
    return [part(scenario, name, entry, kind)];
  });
  return { ambient: scenario.ambient, parts, nodes: [...nodes.values()] };
}

function part(
  scenario: Scenario,
  name: string,
  entry: ComponentEntry,
  kind: DeviceDefinition,
): PartFacts {
  const move = moveOf(name, kind, entry.parameters);
  return {
    name,
    kind: kind.kind,
    title: kind.title,
    role: kind.role,
    symbol: kind.symbol.name,
    size: kind.symbol.size,
    traits: traitsOf(kind, entry),
    ports: portsOf(name, entry, kind),
    unit: unitOf(scenario, name, entry),
    ...(entry.place && { place: entry.place }),
    ...(move && { move }),
    parameters: figures(entry.parameters, kind),
  };
}

/** The first port of each node stands for all that join it. */
function portsOf(name: string, entry: ComponentEntry, kind: DeviceDefinition): PortFacts[] {
  const { flows = {} } = tailored(kind, entry.parameters);
  const joined = Object.entries(entry.ports);
  return [...new Set(Object.values(entry.ports))].flatMap((node): PortFacts[] => {
    const ports = joined.filter(([, n]) => n === node).map(([port]) => port);
    const [first] = ports;
    const at = first === undefined ? undefined : kind.symbol.ports[first];
    if (first === undefined || at === undefined) return [];
    const ways = (end: 'from' | 'to'): string[] =>
      Object.entries(flows)
        .filter(([, f]) => ports.includes(f[end]))
        .map(([way]) => `${name}.${way}`);
    const chambers = (kind.chambers ?? [])
      .filter((c) => ports.includes(c.port))
      .map((c) => ({ channel: `${name}.${c.link}`, area: c.area(entry.parameters) }));
    const title = kind.ports[first]?.title ?? first;
    return [{ name: first, title, node, at, into: ways('to'), outOf: ways('from'), chambers }];
  });
}

/** A cushioned end has a chamber that no port of the circuit joins. */
function traitsOf(kind: DeviceDefinition, { parameters: p, ports }: ComponentEntry): string[] {
  const words = [p.centre, p.atRest].filter((w) => typeof w === 'string');
  const ends = ['head', 'rod'].filter(
    (end) => ports[end] !== undefined && kind.ports[`${end}Chamber`] && !ports[`${end}Chamber`],
  );
  return [...words, ...ends, ...(kind.kind === 'locking-actuator' ? ['lock'] : [])];
}

/** The unit it serves: as it is told, or because it hangs on the unit's leg or doors. */
function unitOf(scenario: Scenario, name: string, entry: ComponentEntry): string {
  const hangsOn = Object.values(entry.links).map((l) => l.to);
  const found = Object.entries(scenario.units).find(
    ([, u]) =>
      [u.uplock, u.downlock, ...u.sequence, ...u.actuators].includes(name) ||
      hangsOn.some((to) => to === u.leg || u.doors.includes(to)),
  );
  return found?.[0] ?? '';
}

const value = (p: Parameters, name: string): number => {
  const v = p[name];
  return typeof v === 'number' ? v : 0;
};

/** Modes in which something stands half way or all the way, by their names in the definitions. */
const STANDS: Readonly<Record<string, number>> = {
  opening: 0.5,
  open: 1,
  flowing: 1,
  'by-passing': 1,
  unloaded: 1,
  engaged: 1,
  'dropping in': 0.5,
};

function moveOf(name: string, kind: DeviceDefinition, p: Parameters): MoveFacts | undefined {
  const along = (what: string, low: number, high: number): MoveFacts => ({
    channel: `${name}.${what}`,
    low,
    high,
    both: what === 'spool',
  });
  if (kind.role === 'actuator') return along('rod', 0, value(p, 'stroke'));
  if (kind.kind === 'sequence-valve') {
    const sense = p.sense === 'low' ? -1 : 1;
    const from = value(p, 'trip') + sense * value(p, 'rigging');
    return along('plunger', from + sense * value(p, 'lap'), from + sense * value(p, 'stroke'));
  }
  for (const state of ['spool', 'lift', 'armature', 'position'])
    if (kind.states?.[state] !== undefined) return along(state, 0, 1);
  if (kind.kind === 'accumulator') return along('stored', 0, value(p, 'volume'));
  if (kind.readings?.fullness !== undefined) return along('fullness', 0, 1);
  if (kind.kind.endsWith('check-valve')) return along('through', 0, DROP);
  const modes = Object.keys(tailored(kind, p).modes ?? {});
  if (modes.length < 2) return undefined;
  return { modes: Object.fromEntries(modes.map((m) => [m, STANDS[m] ?? 0])) };
}

/** Parameters that are one number or word; shapes and tables are read in the file. */
const figures = kept((p: Parameters, kind: DeviceDefinition): readonly FigureFacts[] =>
  Object.entries(kind.parameters).flatMap(([name, definition]): FigureFacts[] => {
    const { title } = definition;
    const v = p[name];
    if (typeof v === 'boolean') return [{ title, value: v ? 'yes' : 'no', quantity: 'ratio' }];
    if (typeof v === 'string') return [{ title, value: v, quantity: 'ratio' }];
    if (typeof v !== 'number' || !('quantity' in definition)) return [];
    return [{ title, value: v, quantity: definition.quantity }];
  }),
);
