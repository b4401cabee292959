/**
 * The whole circuit: units side by side above, left to right as they stand on the aircraft, what serves
 * all of them below from left to right, lines between. A pure function of the parts: it knows neither card nor
 * fault, and so one aircraft has one picture.
 */
import type { Extent } from '../symbol/index.js';
import { Grid } from './grid.js';
import { LETTER, widthOf } from './label.js';
import { block } from './layer.js';
import type { Put } from './layer.js';
import { CLEAR, turnPart } from './part.js';
import type { Flat, PartToPlace } from './part.js';
import { lay } from './wire.js';
import type { Net, Piece, Wires } from './wire.js';

export interface UnitToPlace {
  readonly name: string;
  readonly side: string;
}

export interface Heading {
  readonly text: string;
  readonly at: Flat;
}

/** Room for two lines of figures above a line. */
export interface Spot {
  readonly node: string;
  readonly at: Flat;
}

export interface Layout extends Wires {
  readonly parts: readonly Put[];
  readonly headings: readonly Heading[];
  readonly spots: readonly Spot[];
  readonly extent: Extent;
}

/** Most that a layer of a unit may measure across: the one is taken that gives the largest drawing. */
const UNIT_WIDTHS = [36, 48, 60, 80];
/** Width by height of the sheet that is to be filled. */
const SHAPE = 1.6;
/** The same for what serves all. */
const SUPPLY_HEIGHT = 30;
/** Free room: between blocks, and round the whole. */
const APART = 5;
const MARGIN = 4;
/** Letters of headings are this much larger. */
export const HEADING = 1.25;
/** Bold letters are this much wider. */
const BOLD = 1.15;

const RANK: Readonly<Record<string, number>> = { left: 0, right: 2 };

export function layOut(parts: readonly PartToPlace[], units: readonly UnitToPlace[]): Layout {
  const owner = owners(parts, units);
  // Under its unit's heading a part need not say the unit's name again.
  const named = parts.map((p) => {
    const unit = owner.get(p.name);
    if (unit === undefined || !p.label.startsWith(`${unit} `)) return p;
    return { ...p, label: p.label.slice(unit.length + 1) };
  });
  const parted = named.map((p) => ({ ...p, label: capital(p.label) }));
  const sorted = [...units].sort((a, b) => (RANK[a.side] ?? 1) - (RANK[b.side] ?? 1));
  const tries = UNIT_WIDTHS.map((most) => arrange(parted, sorted, owner, most));
  const best = tries.reduce((a, c) => (sizeIn(c.puts) < sizeIn(a.puts) - 1e-9 ? c : a));
  return drawn(best.puts, best.headings);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How small it would have to be drawn to go onto a sheet of the usual shape. */
function sizeIn(puts: readonly Put[]): number {
  const [l, t, r, b] = extentOf(puts);
  return Math.max((r - l + 2 * MARGIN) / SHAPE, b - t + 2 * MARGIN);
}

interface Arranged {
  readonly puts: Put[];
  readonly headings: Heading[];
}

function arrange(
  parts: readonly PartToPlace[],
  units: readonly UnitToPlace[],
  owner: ReadonlyMap<string, string>,
  most: number,
): Arranged {
  const free = parts.filter((p) => p.place === undefined);
  const placed: Put[] = [];
  const headings: Heading[] = [];
  let x = 0;
  for (const { name } of units) {
    const own = free.filter((p) => owner.get(p.name) === name);
    if (own.length === 0) continue;
    const puts = block(own, { from: shared(own, free), towards: 'rise', most });
    const [l, t, r, b] = extentOf(puts);
    placed.push(...shift(puts, Math.round(x - l), Math.round(-b)));
    headings.push({ text: capital(name), at: [x, t - b - 2.5] });
    x += Math.ceil(r - l) + APART;
  }
  const supply = free.filter((p) => !owner.has(p.name));
  const puts = block(supply, { from: [], towards: 'right', most: SUPPLY_HEIGHT });
  if (puts.length > 0) {
    const [l, t, r] = extentOf(puts);
    const lines = shared(supply, free).length;
    const channel = placed.length === 0 ? 0 : Math.ceil(4 + 1.6 * lines);
    const aside = Math.max(0, (x - APART - (r - l)) / 2);
    placed.push(...shift(puts, Math.round(aside - l), Math.round(channel - t)));
  }
  for (const p of parts) {
    if (p.place === undefined) continue;
    const body = turnPart({ ...p, turns: [0] }, () => true, [0, 1]);
    placed.push({ body, x: Math.round(p.place[0]), y: -Math.round(p.place[1]) });
  }
  return { puts: placed, headings };
}

/** Lines, joints and room for figures between parts that have their places. */
function drawn(puts: readonly Put[], headings: readonly Heading[]): Layout {
  const [l, t, r, b] = extentOf(puts);
  const extent: Extent = [l - MARGIN, t - MARGIN - 2, r + MARGIN, b + MARGIN];
  const grid = new Grid(extent);
  for (const { body, x, y } of puts) {
    grid.block(moved(body.box, x, y), CLEAR);
    grid.block(moved(body.label.box, x, y), CLEAR);
  }
  for (const { text, at } of headings)
    grid.block(
      [at[0], at[1] - 1, at[0] + widthOf(text, LETTER * HEADING) * BOLD, at[1] + 1],
      CLEAR,
    );
  const wires = lay(nets(puts), grid);
  return { parts: puts, headings, ...wires, spots: spots(wires.pieces, grid), extent };
}

function nets(puts: readonly Put[]): Net[] {
  const ends = puts.flatMap(({ body, x, y }) =>
    body.ports.map((p) => ({
      node: p.node,
      end: {
        part: body.part.name,
        port: p.name,
        at: [p.at[0] + x, p.at[1] + y] as Flat,
        out: p.out,
        exit: [p.exit[0] + x, p.exit[1] + y] as Flat,
      },
    })),
  );
  return [...new Set(ends.map((e) => e.node))]
    .map((node) => ({ node, ends: ends.filter((e) => e.node === node).map((e) => e.end) }))
    .filter((net) => net.ends.length > 1);
}

/** For each node the longest level stretch with room above for its figures. */
function spots(pieces: readonly Piece[], grid: Grid): Spot[] {
  const out: Spot[] = [];
  for (const node of new Set(pieces.map((p) => p.node))) {
    const level = pieces
      .filter((p) => p.node === node)
      .flatMap((p) => p.points.slice(1).map((b, i): [Flat, Flat] => [p.points[i] ?? b, b]))
      .map(([a, b]) => ({ a, length: Math.hypot(b[0] - a[0], b[1] - a[1]), b }))
      .sort((p, q) => q.length - p.length);
    const at = level.map(({ a, b }) => roomAlong(a, b, grid)).find((p) => p !== undefined);
    if (at === undefined) continue;
    grid.block(spotBox(at));
    out.push({ node, at });
  }
  return out;
}

/** Figures take this much room, from the middle of their foot. */
const SPOT: Flat = [9.4, 3.8];
export const spotBox = ([x, y]: Flat): Extent => [x - SPOT[0] / 2, y - SPOT[1], x + SPOT[0] / 2, y];

function roomAlong(a: Flat, b: Flat, grid: Grid): Flat | undefined {
  const steps = Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1]));
  const level = a[1] === b[1];
  for (let i = 0; i <= steps; i++) {
    // From the middle outwards.
    const k = Math.floor(steps / 2) + (i % 2 === 0 ? i / 2 : -(i + 1) / 2);
    if (k < 0 || k > steps) continue;
    const [x, y] = [a[0] + Math.sign(b[0] - a[0]) * k, a[1] + Math.sign(b[1] - a[1]) * k];
    const places: Flat[] = level
      ? [
          [x, y - 1],
          [x, y + 1 + SPOT[1]],
        ]
      : [
          [x + 1 + SPOT[0] / 2, y + SPOT[1] / 2],
          [x - 1 - SPOT[0] / 2, y + SPOT[1] / 2],
        ];
    const found = places.find((p) => grid.clear(spotBox(p)));
    if (found !== undefined) return found;
  }
  return undefined;
}

const moved = ([l, t, r, b]: Extent, x: number, y: number): Extent => [l + x, t + y, r + x, b + y];

const shift = (puts: readonly Put[], dx: number, dy: number): Put[] =>
  puts.map((p) => ({ ...p, x: p.x + dx, y: p.y + dy }));

function extentOf(puts: readonly Put[]): Extent {
  const boxes = puts.map((p) => moved(p.body.whole, p.x, p.y));
  if (boxes.length === 0) return [0, 0, 0, 0];
  return [
    Math.min(...boxes.map((b) => b[0])),
    Math.min(...boxes.map((b) => b[1])),
    Math.max(...boxes.map((b) => b[2])),
    Math.max(...boxes.map((b) => b[3])),
  ];
}

/** Nodes by which a block joins the rest. */
function shared(own: readonly PartToPlace[], all: readonly PartToPlace[]): string[] {
  const nodesOf = (list: readonly PartToPlace[]): Set<string> =>
    new Set(list.flatMap((p) => p.ports.filter((q) => !q.tank).map((q) => q.node)));
  const outside = nodesOf(all.filter((p) => !own.includes(p)));
  return [...nodesOf(own)].filter((n) => outside.has(n));
}

/**
 * Which unit each part is drawn in: its own, or that of all else that hangs on one of its nodes. What
 * is left serves several.
 */
function owners(parts: readonly PartToPlace[], units: readonly UnitToPlace[]): Map<string, string> {
  const owner = new Map(parts.filter((p) => p.unit !== '').map((p) => [p.name, p.unit]));
  if (units.length < 2) return owner;
  for (let changed = true; changed;) {
    changed = false;
    for (const p of parts) {
      if (owner.has(p.name) || p.standing === 'source' || p.ports.some((q) => q.tank)) continue;
      const found = new Set(
        p.ports.flatMap(({ node }) => {
          const others = parts.filter((o) => o !== p && o.ports.some((q) => q.node === node));
          const theirs = new Set(others.map((o) => owner.get(o.name)));
          const [only] = theirs;
          return theirs.size === 1 && only !== undefined ? [only] : [];
        }),
      );
      const [only] = found;
      if (found.size !== 1 || only === undefined) continue;
      owner.set(p.name, only);
      changed = true;
    }
  }
  return owner;
}
