/**
 * A sheet of points one module apart on which lines are laid: at right angles, round symbols and words,
 * never along another line, with few bends and crossings. The way of least cost from what is laid of a
 * net to its nearest end that is not joined yet (A* on points and directions).
 */
import type { Extent } from '../symbol/index.js';
import { Heap } from './heap.js';
import type { Flat } from './part.js';

/** Costs in modules of line: a bend, crossing a line, running close beside one, what must not be but may. */
const BEND = 4;
const CROSS = 5;
const CLOSE = 0.8;
const KEPT = 12;
const FORBIDDEN = 200;

export const ACROSS = 0;
export const UPRIGHT = 1;
export type Axis = typeof ACROSS | typeof UPRIGHT;

const STEPS: readonly (readonly [number, number, Axis])[] = [
  [1, 0, ACROSS],
  [-1, 0, ACROSS],
  [0, 1, UPRIGHT],
  [0, -1, UPRIGHT],
];

export class Grid {
  readonly #left: number;
  readonly #top: number;
  readonly #width: number;
  readonly #height: number;
  readonly #blocked: Uint8Array;
  /** Net (from 1) that keeps a point free for its end. */
  readonly #kept: Int16Array;
  /** Net that runs through a point, by axis. */
  readonly #used: readonly [Int16Array, Int16Array];
  readonly #cost: Float64Array;
  readonly #former: Int32Array;
  /** The least that is still to go from a point to an end. */
  #toGo: (point: number) => number = () => 0;

  constructor([left, top, right, bottom]: Extent) {
    this.#left = Math.floor(left);
    this.#top = Math.floor(top);
    this.#width = Math.ceil(right) - this.#left + 1;
    this.#height = Math.ceil(bottom) - this.#top + 1;
    const size = this.#width * this.#height;
    this.#blocked = new Uint8Array(size);
    this.#kept = new Int16Array(size);
    this.#used = [new Int16Array(size), new Int16Array(size)];
    this.#cost = new Float64Array(2 * size);
    this.#former = new Int32Array(2 * size);
  }

  pointAt([x, y]: Flat): number {
    return (y - this.#top) * this.#width + (x - this.#left);
  }

  placeOf(point: number): Flat {
    return [(point % this.#width) + this.#left, Math.floor(point / this.#width) + this.#top];
  }

  block([l, t, r, b]: Extent, margin = 0): void {
    for (let y = Math.ceil(t - margin); y <= Math.floor(b + margin); y++)
      for (let x = Math.ceil(l - margin); x <= Math.floor(r + margin); x++)
        if (this.#inside(x, y)) this.#blocked[this.pointAt([x, y])] = 1;
  }

  /** Whether nothing lies in a box: neither symbol nor word nor line. */
  clear([l, t, r, b]: Extent): boolean {
    for (let y = Math.floor(t); y <= Math.ceil(b); y++)
      for (let x = Math.floor(l); x <= Math.ceil(r); x++) {
        if (!this.#inside(x, y)) return false;
        const p = this.pointAt([x, y]);
        if (this.#blocked[p] || this.#used[0][p] || this.#used[1][p]) return false;
      }
    return true;
  }

  keep(net: number, places: readonly Flat[]): void {
    for (const p of places) this.#kept[this.pointAt(p)] = net;
  }

  #inside(x: number, y: number): boolean {
    return (
      x >= this.#left &&
      y >= this.#top &&
      x < this.#left + this.#width &&
      y < this.#top + this.#height
    );
  }

  use(net: number, path: readonly number[]): void {
    for (let i = 1; i < path.length; i++) {
      const [a = 0, b = 0] = [path[i - 1], path[i]];
      const used = this.#used[Math.abs(a - b) === 1 ? ACROSS : UPRIGHT];
      used[a] = net;
      used[b] = net;
    }
  }

  release(net: number): void {
    for (const used of this.#used) used.forEach((n, i) => n === net && (used[i] = 0));
  }

  #foreign(net: number, point: number, axis: Axis): boolean {
    const n = this.#used[axis][point];
    return n !== undefined && n !== 0 && n !== net;
  }

  /**
   * The cheapest path from any of the points (and the axis to leave along, where it matters) to the
   * nearest of the ends, which are wanted to be met along their axis. Points of the path, first to last.
   */
  path(
    net: number,
    from: readonly (readonly [number, Axis | undefined])[],
    to: ReadonlyMap<number, Axis>,
  ): number[] {
    const cost = this.#cost.fill(Infinity);
    const former = this.#former;
    const heap = new Heap();
    const goals = [...to.keys()].map((point) => this.placeOf(point));
    this.#toGo = (point) => {
      const [x, y] = this.placeOf(point);
      let least = Infinity;
      for (const [gx, gy] of goals) least = Math.min(least, Math.abs(gx - x) + Math.abs(gy - y));
      return least;
    };
    for (const [point, axis] of from)
      for (const a of [ACROSS, UPRIGHT] as const) {
        const first = axis === undefined || axis === a ? 0 : BEND;
        const state = 2 * point + a;
        // Where another line crosses, a branch would look like a joint with it.
        if (axis === undefined && this.#foreign(net, point, a)) continue;
        if (first < (cost[state] ?? 0)) {
          cost[state] = first;
          former[state] = -1;
          heap.push(first + this.#toGo(point), state);
        }
      }
    for (let state = heap.pop(); state >= 0; state = heap.pop()) {
      const point = state >> 1;
      const axis = (state & 1) as Axis;
      const wanted = to.get(point);
      if (wanted === axis) return this.#trace(state);
      const here = cost[state] ?? 0;
      // A cheaper way here has been followed since.
      if (heap.price > here + this.#toGo(point) + 1e-9) continue;
      if (wanted !== undefined) this.#improve(heap, state, 2 * point + wanted, here + BEND);
      const [x, y] = this.placeOf(point);
      for (const [dx, dy, along] of STEPS) {
        if (!this.#inside(x + dx, y + dy)) continue;
        let price = here + 1;
        if (along !== axis) {
          price += BEND;
          if (this.#foreign(net, point, axis) || this.#foreign(net, point, along))
            price += FORBIDDEN;
        }
        const next = point + dx + dy * this.#width;
        price += this.#price(net, next, along);
        this.#improve(heap, state, 2 * next + along, price);
      }
    }
    return [];
  }

  #improve(heap: Heap, from: number, state: number, price: number): void {
    if (price >= (this.#cost[state] ?? 0)) return;
    this.#cost[state] = price;
    this.#former[state] = from;
    heap.push(price + this.#toGo(state >> 1), state);
  }

  #price(net: number, point: number, along: Axis): number {
    let price = 0;
    const kept = this.#kept[point];
    if (this.#blocked[point]) price += FORBIDDEN;
    if (kept !== 0 && kept !== net) price += KEPT;
    const across: Axis = along === ACROSS ? UPRIGHT : ACROSS;
    if (this.#foreign(net, point, along)) price += FORBIDDEN;
    else if (this.#foreign(net, point, across)) price += CROSS;
    const side = along === ACROSS ? this.#width : 1;
    if (this.#foreign(net, point - side, along)) price += CLOSE;
    if (this.#foreign(net, point + side, along)) price += CLOSE;
    return price;
  }

  #trace(last: number): number[] {
    const points: number[] = [];
    for (let state = last; state >= 0; state = this.#former[state] ?? -1)
      if (points[0] !== state >> 1) points.unshift(state >> 1);
    return points;
  }
}
