/** The circuit of the aircraft on show: where its parts and lines are drawn, found once for each aircraft. */
import { layOut } from '../drawing/circuit/layout.js';
import type { Layout } from '../drawing/circuit/layout.js';
import type { PartToPlace } from '../drawing/circuit/part.js';
import { drawingOf, turnsOf } from '../drawing/symbol/index.js';
import type { CircuitFacts, CircuitNode, PartFacts, PortFacts } from '../worker/circuit-message.js';
import type { Picture } from '../worker/message.js';
import { plain } from './sentence.js';

/** Faults and figures change nothing of where things are drawn: the layout is kept by what does. */
let kept: { readonly key: string; readonly layout: Layout } | undefined;
const known = new WeakMap<CircuitFacts, Layout>();

export function circuitLayout(picture: Picture): Layout {
  const layout = known.get(picture.circuit) ?? find(picture);
  known.set(picture.circuit, layout);
  return layout;
}

function find(picture: Picture): Layout {
  const parts = picture.circuit.parts.map((p) => toPlace(p, picture.circuit));
  const units = picture.units.map(({ name, side }) => ({ name, side }));
  const key = JSON.stringify([parts, units]);
  if (kept?.key !== key) kept = { key, layout: layOut(parts, units) };
  return kept.layout;
}

/** Takes oil out of the reservoir: joined to it by a line; all else goes back by a tank beside it. */
function drawsFrom(part: PartFacts, port: PortFacts): boolean {
  if (part.role === 'reservoir') return true;
  return (part.role === 'supply' || part.role === 'hand-supply') && port.outOf.length > 0;
}

function toPlace(part: PartFacts, { nodes }: CircuitFacts): PartToPlace {
  const nodeOf = (port: PortFacts): CircuitNode | undefined =>
    nodes.find((n) => n.name === port.node);
  return {
    name: part.name,
    label: plain(part.name),
    drawing: drawingOf(part.symbol, part.kind, part.traits),
    size: part.size,
    ports: part.ports.map((p) => ({
      name: p.name,
      node: p.node,
      at: p.at,
      tank: nodeOf(p)?.tank === true && !drawsFrom(part, p),
    })),
    turns: turnsOf(part.symbol),
    standing:
      part.role === 'reservoir' || part.role === 'gas-supply'
        ? 'source'
        : part.role === 'actuator'
          ? 'end'
          : 'between',
    unit: part.unit,
    ...(part.place && { place: part.place }),
  };
}
