/** What the circuit does at a moment: pressures, flows, where moving pieces stand; read from the run's channels. */
import type { Piece } from '../drawing/circuit/wire.js';
import type { CircuitFacts, PartFacts, PortFacts } from '../worker/circuit-message.js';
import type { Picture, Trace } from '../worker/message.js';
import { stateAt, stretches } from './history.js';
import { valueAt } from './series.js';

type Traces = ReadonlyMap<string, Trace>;

/** Time over which a travel's speed is taken, s. */
const OVER = 0.02;
/** The pressure gas is told at, Pa (ISO 8778). */
const STANDARD = 1e5;

/** Every channel the drawing reads that the run has. */
export function channelsNeeded(picture: Picture): string[] {
  const there = new Set(picture.channels.map((c) => c.name));
  const { nodes, parts } = picture.circuit;
  const ways = parts.flatMap((p) => p.ports).flatMap((p) => [...p.into, ...p.outOf]);
  const names = [
    ...nodes.map((n) => `${n.name}.pressure`),
    ...ways,
    ...ways.map((w) => `${w}-gas`),
    ...parts.flatMap((p) => p.ports.flatMap((q) => q.chambers.map((c) => c.channel))),
    ...parts.flatMap((p) => (p.move !== undefined && 'channel' in p.move ? [p.move.channel] : [])),
  ];
  return [...new Set(names)].filter((name) => there.has(name));
}

/** Pressure above that outside, Pa; NaN while it has not come. */
export function gaugeAt(circuit: CircuitFacts, series: Traces, node: string, time: number): number {
  const trace = series.get(`${node}.pressure`);
  return trace === undefined ? NaN : valueAt(trace, time) - circuit.ambient;
}

/** Most pressure above that outside that any node of the run has, Pa. */
export function mostPressure(circuit: CircuitFacts, series: Traces): number {
  let most = 0;
  for (const { name } of circuit.nodes)
    for (const p of series.get(`${name}.pressure`)?.v ?? [])
      if (p - circuit.ambient > most) most = p - circuit.ambient;
  return most;
}

/** How far a part's moving piece stands, 0 to 1 (a selector's spool from -1); 0 while it is not known. */
export function standing(picture: Picture, series: Traces, part: PartFacts, time: number): number {
  const { move } = part;
  if (move === undefined) return 0;
  if ('modes' in move) return move.modes[stateAt(stretches(picture, part.name, 'mode'), time)] ?? 0;
  const trace = series.get(move.channel);
  if (trace === undefined || move.high === move.low) return 0;
  const share = (valueAt(trace, time) - move.low) / (move.high - move.low);
  return Math.min(Math.max(share, move.both ? -1 : 0), 1);
}

/** Volume flow that a part sends into the node at one of its ports, m3/s; gas by the room it takes there. */
function sent(picture: Picture, series: Traces, port: PortFacts, time: number): number {
  const read = (name: string): number => {
    const trace = series.get(name);
    return trace === undefined ? 0 : valueAt(trace, time);
  };
  const sum = (names: readonly string[], ending = ''): number =>
    names.reduce((total, name) => total + read(name + ending), 0);
  const gas = sum(port.into, '-gas') - sum(port.outOf, '-gas');
  const pressure = gaugeAt(picture.circuit, series, port.node, time) + picture.circuit.ambient;
  const swept = port.chambers.reduce((total, { channel, area }) => {
    const trace = series.get(channel);
    if (trace === undefined) return total;
    const speed = (valueAt(trace, time + OVER / 2) - valueAt(trace, time - OVER / 2)) / OVER;
    return total + area * speed;
  }, 0);
  const room = gas === 0 || !(pressure > 0) ? 0 : (gas * STANDARD) / pressure;
  return sum(port.into) - sum(port.outOf) + room - swept;
}

/** Flow along each piece of line from its first point to its last, m3/s. */
export function flowsAlong(
  picture: Picture,
  series: Traces,
  pieces: readonly Piece[],
  time: number,
): number[] {
  const flows = new Map<string, { total: number; of: Map<string, number> }>();
  for (const part of picture.circuit.parts)
    for (const port of part.ports) {
      const node = flows.get(port.node) ?? { total: 0, of: new Map<string, number>() };
      const q = sent(picture, series, port, time);
      node.total += q;
      node.of.set(`${part.name}.${port.name}`, q);
      flows.set(port.node, node);
    }
  return pieces.map(({ node, beyond }) => {
    const known = flows.get(node);
    if (known === undefined) return 0;
    const far = beyond.reduce((s, e) => s + (known.of.get(`${e.part}.${e.port}`) ?? 0), 0);
    // What comes in and does not go out is stored along the way: the mean of both ends.
    return (known.total - far - far) / 2;
  });
}
