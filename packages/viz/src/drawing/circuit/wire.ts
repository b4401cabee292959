/** Lines of the circuit: laid on the grid net by net, then told as pieces between ends and joints. */
import { ACROSS, UPRIGHT } from './grid.js';
import type { Axis, Grid } from './grid.js';
import type { Flat } from './part.js';

/** An end of a net at a part's port. */
export interface End {
  readonly part: string;
  readonly port: string;
  readonly at: Flat;
  readonly out: Flat;
  readonly exit: Flat;
}

export interface Net {
  readonly node: string;
  readonly ends: readonly End[];
}

/** A stretch of line without branches, from one end or joint to the next. */
export interface Piece {
  readonly node: string;
  readonly points: readonly Flat[];
  /** Ends on its far side: what they send into the node flows through it against its direction. */
  readonly beyond: readonly End[];
}

export interface Wires {
  readonly pieces: readonly Piece[];
  readonly joints: readonly { readonly node: string; readonly at: Flat }[];
}

const ROUNDS = 2;

const axisOf = (out: Flat): Axis => (out[0] !== 0 ? ACROSS : UPRIGHT);

const span = ({ ends }: Net): number => {
  const xs = ends.map((e) => e.exit[0]);
  const ys = ends.map((e) => e.exit[1]);
  return Math.max(...xs) - Math.min(...xs) + Math.max(...ys) - Math.min(...ys);
};

/** Short nets first, as they have the least choice; then each once more with all others in place. */
export function lay(nets: readonly Net[], grid: Grid): Wires {
  const order = nets
    .map((net, i) => ({ net, id: i + 1, paths: [] as number[][] }))
    .sort((a, b) => span(a.net) - span(b.net) || a.id - b.id);
  for (const { net, id } of order)
    for (const { exit, out } of net.ends)
      grid.keep(id, [exit, [exit[0] + out[0], exit[1] + out[1]]]);
  for (let round = 0; round < ROUNDS; round++)
    for (const each of order) {
      grid.release(each.id);
      each.paths = joined(each.net, each.id, grid);
    }
  const told = order.map(({ net, paths }) => tell(net, paths, grid));
  return {
    pieces: told.flatMap((w) => w.pieces),
    joints: told.flatMap((w) => w.joints),
  };
}

/** Paths that join all ends of a net to one tree. */
function joined({ ends }: Net, id: number, grid: Grid): number[][] {
  const left = new Map(ends.map((e): [number, Axis] => [grid.pointAt(e.exit), axisOf(e.out)]));
  const [first] = ends;
  if (first === undefined) return [];
  const start = grid.pointAt(first.exit);
  const paths: number[][] = [];
  let from: (readonly [number, Axis | undefined])[] = [[start, axisOf(first.out)]];
  left.delete(start);
  while (left.size > 0) {
    const path = grid.path(id, from, left);
    const last = path[path.length - 1];
    if (last === undefined) break;
    grid.use(id, path);
    left.delete(last);
    paths.push(path);
    from = [...from, ...path.map((p): [number, undefined] => [p, undefined])];
  }
  return paths;
}

/** The tree as pieces, rooted at the net's first end. */
function tell(net: Net, paths: readonly (readonly number[])[], grid: Grid): Wires {
  const links = new Map<number, Set<number>>();
  const link = (a: number, b: number): void => {
    links.set(a, (links.get(a) ?? new Set()).add(b));
    links.set(b, (links.get(b) ?? new Set()).add(a));
  };
  for (const path of paths)
    path.forEach((p, i) => {
      const former = path[i - 1];
      if (former !== undefined) link(former, p);
    });
  const endAt = new Map<number, End[]>();
  for (const e of net.ends) {
    const p = grid.pointAt(e.exit);
    endAt.set(p, [...(endAt.get(p) ?? []), e]);
  }
  const pieces: Piece[] = [];
  const stubs = (p: number): readonly End[] => endAt.get(p) ?? [];
  /** Lines that meet at a point, those to ports among them. */
  const degree = (p: number): number => (links.get(p)?.size ?? 0) + stubs(p).length;
  const walk = (at: number, former: number): readonly End[] => {
    const found: End[] = [...stubs(at)];
    for (const next of links.get(at) ?? []) {
      if (next === former) continue;
      const points = [at];
      let [a, b] = [at, next];
      points.push(b);
      while (degree(b) === 2 && stubs(b).length === 0) {
        const on = [...(links.get(b) ?? [])].find((p) => p !== a);
        if (on === undefined) break;
        [a, b] = [b, on];
        points.push(b);
      }
      const beyond = walk(b, a);
      pieces.push({ node: net.node, points: corners(points.map((p) => grid.placeOf(p))), beyond });
      found.push(...beyond);
    }
    return found;
  };
  const [first] = net.ends;
  if (first === undefined) return { pieces: [], joints: [] };
  walk(grid.pointAt(first.exit), -1);
  const root = grid.pointAt(first.exit);
  for (const e of net.ends) {
    const p = grid.pointAt(e.exit);
    // To the port of the first end flow goes against the walk.
    const others = p === root && e === first ? net.ends.filter((o) => o !== first) : [e];
    const points = p === root && e === first ? [e.at, e.exit] : [e.exit, e.at];
    pieces.push({ node: net.node, points, beyond: others });
  }
  const spots = new Set([...links.keys(), root]);
  const joints = [...spots]
    .filter((p) => degree(p) > 2)
    .map((p) => ({ node: net.node, at: grid.placeOf(p) }));
  return { pieces: merged(pieces), joints };
}

/** A piece that only leads on to a port is told as one with the line before it. */
function merged(pieces: readonly Piece[]): Piece[] {
  const key = ([x, y]: Flat): string => `${x},${y}`;
  const count = new Map<string, number>();
  for (const { points } of pieces)
    for (const p of [points[0], points[points.length - 1]])
      if (p !== undefined) count.set(key(p), (count.get(key(p)) ?? 0) + 1);
  const list = [...pieces];
  for (let i = 0; i < list.length; i++) {
    const a = list[i];
    const last = a?.points[a.points.length - 1];
    if (a === undefined || last === undefined || count.get(key(last)) !== 2) continue;
    const j = list.findIndex(
      (b, k) => k !== i && b.points[0] !== undefined && key(b.points[0]) === key(last),
    );
    const b = list[j];
    if (b === undefined) continue;
    list[i] = { ...a, points: corners([...a.points, ...b.points.slice(1)]) };
    list.splice(j, 1);
    i = -1;
  }
  return list;
}

/** Only where a line bends. */
function corners(points: readonly Flat[]): Flat[] {
  return points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    if (a === undefined || b === undefined) return true;
    return (p[0] - a[0]) * (b[1] - p[1]) !== (p[1] - a[1]) * (b[0] - p[0]);
  });
}
