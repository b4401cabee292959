/**
 * A block of parts in layers: by how many parts lie between each and where flow comes from. Parts of one
 * layer are put in the order that their neighbours have (barycentres), then moved as near to them as
 * the others allow. The same parts always give the same block.
 */
import { turnPart } from './part.js';
import type { Flat, PartToPlace, Turned } from './part.js';
import { spread } from './spread.js';

export interface Put {
  readonly body: Turned;
  readonly x: number;
  readonly y: number;
}

export interface BlockOptions {
  /** Nodes that flow comes in by. */
  readonly from: readonly string[];
  /** rise: layers upwards; right: layers to the right. */
  readonly towards: 'rise' | 'right';
  /** Most that a layer may measure across, modules; what is wider is folded into two. */
  readonly most: number;
}

/** Free room between parts of a layer, and least between layers. */
const BESIDE = 3;
const BETWEEN = 4;
/** Room for each line that leaves a part towards its neighbour in the layer. */
const LEAVING = 1.2;

const tied = (p: PartToPlace): readonly string[] =>
  p.ports.filter((q) => !q.tank).map((q) => q.node);

interface Ranks {
  readonly part: ReadonlyMap<string, number>;
  readonly node: ReadonlyMap<string, number>;
}

/** Breadth first from sources and from the nodes that flow comes in by. */
function rank(parts: readonly PartToPlace[], from: readonly string[]): Ranks {
  const node = new Map(from.map((n): [string, number] => [n, 0]));
  const part = new Map<string, number>();
  const take = (p: PartToPlace, r: number): void => {
    part.set(p.name, r);
    for (const n of tied(p)) if (!node.has(n)) node.set(n, r + 1);
  };
  for (const p of parts) if (p.standing === 'source') take(p, 0);
  const least = (p: PartToPlace): number =>
    Math.min(...tied(p).map((n) => node.get(n) ?? Infinity));
  for (let r = 0; part.size < parts.length; r++) {
    const left = parts.filter((p) => !part.has(p.name));
    const now = left.filter((p) => least(p) <= r);
    for (const p of now) take(p, r);
    // What hangs on nothing that has been reached begins a part of its own.
    if (now.length === 0 && left.every((p) => least(p) === Infinity) && left[0] !== undefined)
      take(left[0], 0);
  }
  const last = Math.max(...part.values());
  for (const p of parts) if (p.standing === 'end' && last > 0) part.set(p.name, last);
  return { part, node };
}

export function block(parts: readonly PartToPlace[], options: BlockOptions): Put[] {
  if (parts.length === 0) return [];
  const rise = options.towards === 'rise';
  const source: Flat = rise ? [0, 1] : [-1, 0];
  const ranks = rank(parts, options.from);
  const bodies = parts.map((p) => {
    const own = ranks.part.get(p.name) ?? 0;
    return turnPart(p, (n) => (ranks.node.get(n) ?? 0) <= own, source);
  });
  // Across and along the way of flow, from the part's middle.
  const across = ({ whole: [l, t, r, b], ports }: Turned): Flat => {
    const leaving = (sense: number): number =>
      LEAVING * ports.filter((p) => p.out[rise ? 0 : 1] === sense).length;
    const [low, high] = rise ? [l, r] : [t, b];
    return [low - leaving(-1), high + leaving(1)];
  };
  const along = ({ whole: [l, t, r, b] }: Turned): Flat => (rise ? [-b, -t] : [l, r]);
  const width = (b: Turned): number => across(b)[1] - across(b)[0] + BESIDE;

  const layers = fold(bodies, ranks, options.most, width);
  order(layers);
  const cross = spread(layers, across, (p) => (rise ? p.at[0] : p.at[1]), BESIDE);

  let at = 0;
  const out: Put[] = [];
  layers.forEach((layer, i) => {
    if (i > 0) at += between(layers, i);
    const low = Math.min(...layer.map((b) => along(b)[0]));
    const high = Math.max(...layer.map((b) => along(b)[1]));
    // What ends the flow stands at the far side of its layer.
    const middle = at - low;
    for (const body of layer) {
      const w = cross.get(body.part.name) ?? 0;
      out.push(
        rise
          ? { body, x: Math.round(w), y: -Math.round(middle) }
          : { body, x: Math.round(middle), y: Math.round(w) },
      );
    }
    at += Math.ceil(high - low);
  });
  return out;
}

function fold(
  bodies: readonly Turned[],
  ranks: Ranks,
  most: number,
  width: (b: Turned) => number,
): Turned[][] {
  const layers: Turned[][] = [];
  const last = Math.max(...ranks.part.values());
  for (let r = 0; r <= last; r++) {
    const here = bodies.filter((b) => ranks.part.get(b.part.name) === r);
    const total = here.reduce((sum, b) => sum + width(b), 0);
    // Evenly filled, so that no layer holds a single part.
    const limit = total / Math.ceil(total / most) + 1e-9;
    let used = Infinity;
    for (const b of here) {
      if (used + width(b) / 2 > limit) {
        layers.push([]);
        used = 0;
      }
      layers[layers.length - 1]?.push(b);
      used += width(b);
    }
  }
  return layers;
}

/** Parts that share a node, with how many nodes they share. */
function neighbours(layers: readonly (readonly Turned[])[]): Map<Turned, Turned[]> {
  const all = layers.flat();
  const on = new Map<string, Turned[]>();
  for (const b of all) for (const n of tied(b.part)) on.set(n, [...(on.get(n) ?? []), b]);
  return new Map(
    all.map((b) => [b, tied(b.part).flatMap((n) => (on.get(n) ?? []).filter((o) => o !== b))]),
  );
}

/** Sorts each layer by where its neighbours stand, there and back a few times. */
function order(layers: Turned[][]): void {
  const near = neighbours(layers);
  const at = new Map<Turned, number>();
  const note = (layer: readonly Turned[]): void =>
    layer.forEach((b, i) => at.set(b, (i + 0.5) / layer.length));
  layers.forEach(note);
  for (let round = 0; round < 6; round++) {
    const down = round % 2 === 0;
    for (let k = 0; k < layers.length; k++) {
      const layer = layers[down ? k : layers.length - 1 - k];
      if (layer === undefined) continue;
      const want = new Map(
        layer.map((b) => {
          const others = (near.get(b) ?? []).filter((o) => !layer.includes(o));
          const mean = others.reduce((s, o) => s + (at.get(o) ?? 0), 0) / others.length;
          return [b, others.length === 0 ? (at.get(b) ?? 0) : mean];
        }),
      );
      layer.sort((a, b) => (want.get(a) ?? 0) - (want.get(b) ?? 0));
      note(layer);
    }
  }
}

/** Room for the lines that run between a layer and the one before. */
function between(layers: readonly (readonly Turned[])[], i: number): number {
  const before = new Set(layers.slice(0, i).flatMap((l) => l.flatMap((b) => tied(b.part))));
  const after = new Set(layers.slice(i).flatMap((l) => l.flatMap((b) => tied(b.part))));
  const passing = [...before].filter((n) => after.has(n)).length;
  return Math.max(BETWEEN, Math.ceil(2 + 0.7 * passing));
}
