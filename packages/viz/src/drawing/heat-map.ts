/** A map of cells over two quantities as numbers and paths; the view draws it. */
import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { ScaleLinear } from 'd3-scale';

export type Linear = ScaleLinear<number, number>;

export interface Grid {
  /** Middles of the cells as shown, rising. */
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly toX: Linear;
  readonly toY: Linear;
}

/** Half a step outside the first and last middle. */
function edges(values: readonly number[]): [number, number] {
  const first = values[0] ?? 0;
  const last = values[values.length - 1] ?? 1;
  const half = values.length > 1 ? (last - first) / (values.length - 1) / 2 : 0.5;
  return [first - half, last + half];
}

/** Lays equal cells out in a box; y grows upwards. */
export function grid(
  x: readonly number[],
  y: readonly number[],
  width: number,
  height: number,
): Grid {
  return {
    x,
    y,
    toX: scaleLinear().domain(edges(x)).range([0, width]),
    toY: scaleLinear().domain(edges(y)).range([height, 0]),
  };
}

export interface CellBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function cellBox({ x, y, toX, toY }: Grid, i: number, j: number): CellBox {
  const [left = 0, right = 0] = toX.range();
  const [bottom = 0] = toY.range();
  const width = (right - left) / x.length;
  const height = bottom / y.length;
  return { x: i * width, y: bottom - (j + 1) * height, width, height };
}

/** The cell at a point of the box; held at the edges. */
export function cellUnder(g: Grid, px: number, py: number): [number, number] {
  const { width, height } = cellBox(g, 0, 0);
  const [bottom = 0] = g.toY.range();
  const hold = (v: number, n: number): number => Math.min(Math.max(Math.floor(v), 0), n - 1);
  return [hold(px / width, g.x.length), hold((bottom - py) / height, g.y.length)];
}

/**
 * The line between cells that are inside and cells that are outside, along their edges; cells of
 * which nothing is known (undefined) bound nothing.
 */
export function boundary(g: Grid, inside: (i: number, j: number) => boolean | undefined): string {
  const parts: string[] = [];
  const differ = (a: boolean | undefined, b: boolean | undefined): boolean =>
    a !== undefined && b !== undefined && a !== b;
  for (let j = 0; j < g.y.length; j++)
    for (let i = 0; i < g.x.length; i++) {
      const { x, y, width, height } = cellBox(g, i, j);
      const here = inside(i, j);
      if (i + 1 < g.x.length && differ(here, inside(i + 1, j)))
        parts.push(`M${(x + width).toFixed(1)},${y.toFixed(1)}v${height.toFixed(1)}`);
      if (j + 1 < g.y.length && differ(here, inside(i, j + 1)))
        parts.push(`M${x.toFixed(1)},${y.toFixed(1)}h${width.toFixed(1)}`);
    }
  return parts.join('');
}

/** Least and most of what is known; undefined when nothing is, or nothing differs. */
export function spanOf(values: Iterable<number>): [number, number] | undefined {
  const [low, high] = extent([...values].filter((v) => Number.isFinite(v)));
  if (low === undefined || high === undefined) return undefined;
  return high > low ? [low, high] : [low - 0.5, low + 0.5];
}
