/** One part of the circuit before it has its place: turned, with its tanks and its name beside it. */
import type { Drawing, Extent } from '../symbol/index.js';
import { LEADING, widthOf, wrap } from './label.js';

export interface PortToPlace {
  readonly name: string;
  readonly node: string;
  /** On the symbol, modules, x right, y up. */
  readonly at: readonly [number, number];
  /** Goes to the reservoir by a tank drawn beside it. */
  readonly tank: boolean;
}

export interface PartToPlace {
  readonly name: string;
  readonly label: string;
  readonly drawing: Drawing;
  readonly size: readonly [number, number];
  readonly ports: readonly PortToPlace[];
  /** Quarter turns it may make without looking odd. */
  readonly turns: readonly number[];
  /** source: where flow begins; end: what is moved by it. */
  readonly standing: 'source' | 'end' | 'between';
  readonly unit: string;
  readonly place?: readonly [number, number];
}

export type Flat = readonly [number, number];

/** A port where it lies from the part's middle: place, way out, first point clear of the part. */
export interface Port {
  readonly name: string;
  readonly node: string;
  readonly at: Flat;
  readonly out: Flat;
  readonly exit: Flat;
}

export interface Label {
  readonly lines: readonly string[];
  readonly at: Flat;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly box: Extent;
}

export interface Turned {
  readonly part: PartToPlace;
  /** Quarter turns, clockwise. */
  readonly turn: number;
  readonly ports: readonly Port[];
  /** Where tanks stand, and the leads to them. */
  readonly tanks: readonly { readonly at: Flat; readonly lead: string; readonly node: string }[];
  /** Symbol and tanks; label; all together. */
  readonly box: Extent;
  readonly label: Label;
  readonly whole: Extent;
}

const turned = ([x, y]: Flat, k: number): Flat =>
  k === 0 ? [x, y] : k === 1 ? [-y, x] : k === 2 ? [-x, -y] : [y, -x];

const around = (a: Extent, b: Extent): Extent => [
  Math.min(a[0], b[0]),
  Math.min(a[1], b[1]),
  Math.max(a[2], b[2]),
  Math.max(a[3], b[3]),
];

function turnedBox([l, t, r, b]: Extent, k: number): Extent {
  const [x1, y1] = turned([l, t], k);
  const [x2, y2] = turned([r, b], k);
  return [Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)];
}

/** Which edge of the declared size a port is on, as the way out. */
function wayOut([x, y]: Flat, [, h]: readonly [number, number]): Flat {
  if (Math.abs(y) >= h / 2 - 0.01) return [0, -Math.sign(y)];
  return [Math.sign(x), 0];
}

/** Lines keep this far from symbols and words, modules: half of the widest and a little. */
export const CLEAR = 0.7;

/** First whole point along the way out that lies clear of the box. */
function exitOf(at: Flat, out: Flat, box: Extent): Flat {
  let [x, y] = at;
  do [x, y] = [x + out[0], y + out[1]];
  while (x >= box[0] - CLEAR && x <= box[2] + CLEAR && y >= box[1] - CLEAR && y <= box[3] + CLEAR);
  return [x, y];
}

/** A tank beside a port: straight below, or out and down. */
function tankAt(at: Flat, out: Flat): { at: Flat; lead: string } {
  const [x, y] = at;
  if (out[1] > 0) return { at: [x, y + 1.5], lead: `M${x},${y}V${y + 0.6}` };
  const aside: Flat = out[1] < 0 ? [x + 3, y - 1] : [x + out[0] * 1.6, y];
  const up = out[1] < 0 ? `V${y - 1}` : '';
  return { at: [aside[0], aside[1] + 2], lead: `M${x},${y}${up}H${aside[0]}V${aside[1] + 1.1}` };
}

/** How well a turn suits: what feeds it towards the source, what it feeds away from it, tanks below. */
export function turnPart(part: PartToPlace, feeds: (node: string) => boolean, from: Flat): Turned {
  let best: Turned | undefined;
  let most = -Infinity;
  for (const turn of part.turns) {
    const score = part.ports.reduce((sum, p) => {
      const [dx, dy] = turned(wayOut(p.at, part.size), turn);
      if (p.tank) return sum + 3 * dy;
      const towards = dx * from[0] + dy * from[1];
      return sum + (feeds(p.node) ? towards : -towards);
    }, 0);
    if (score > most + 1e-9) [best, most] = [make(part, turn), score];
  }
  return best ?? make(part, 0);
}

function make(part: PartToPlace, turn: number): Turned {
  const { drawing, size } = part;
  const short = drawing.short ?? 1;
  let box = turnedBox(drawing.box, turn);
  const placed = part.ports.map((p) => ({
    ...p,
    at: turned([p.at[0] * short, -p.at[1]], turn),
    out: turned(wayOut(p.at, size), turn),
  }));
  const tanks = placed
    .filter((p) => p.tank)
    .map(({ at, out, node }) => ({ ...tankAt(at, out), node }));
  for (const { at } of tanks)
    box = around(box, [at[0] - 1.2, at[1] - 1.2, at[0] + 1.2, at[1] + 0.6]);
  const ports = placed
    .filter((p) => !p.tank)
    .map(({ name, node, at, out }): Port => ({ name, node, at, out, exit: exitOf(at, out, box) }));
  const label = labelFor(part.label, box, ports);
  return { part, turn, ports, tanks, box, label, whole: around(box, label.box) };
}

/** Beside the symbol where no line leaves, so that as little room as possible is taken. */
function labelFor(text: string, box: Extent, ports: readonly Port[]): Label {
  const [l, t, r, b] = box;
  const free = (x: number, y: number): boolean =>
    !ports.some((p) => p.out[0] === x && p.out[1] === y);
  const options: Label[] = [];
  for (const most of [10, 14, 20]) {
    const lines = wrap(text, most);
    const w = Math.max(...lines.map((line) => widthOf(line)));
    const h = lines.length * LEADING;
    const put = (x: number, y: number, anchor: Label['anchor']): void => {
      const left = anchor === 'start' ? x : anchor === 'end' ? x - w : x - w / 2;
      options.push({ lines, at: [x, y], anchor, box: [left, y, left + w, y + h] });
    };
    const middle = (t + b) / 2 - h / 2;
    if (free(1, 0)) put(r + 0.6, middle, 'start');
    if (free(-1, 0)) put(l - 0.6, middle, 'end');
    for (const [side, y] of [
      [-1, t - 0.4 - h],
      [1, b + 0.4],
    ] as const) {
      const there = ports.filter((p) => p.out[1] === side).map((p) => p.at[0]);
      // Over the symbol's middle, not over that of all the room its moving piece needs.
      if (there.length === 0) put(0, y, 'middle');
      else {
        put(Math.max(...there) + 0.9, y, 'start');
        put(Math.min(...there) - 0.9, y, 'end');
      }
    }
  }
  const cost = (o: Label): number => {
    const [x1, y1, x2, y2] = around(box, o.box);
    const far = Math.hypot((o.box[0] + o.box[2]) / 2, (o.box[1] + o.box[3]) / 2);
    return (x2 - x1 + 3) * (y2 - y1 + 3) + 6 * far + o.lines.length;
  };
  return options.reduce((a, c) => (cost(c) < cost(a) - 1e-9 ? c : a));
}
