/**
 * What symbols are made of: strokes and fills in modules of ISO 1219-1 (2.5 mm on paper), origin in the
 * symbol's middle, x right, y down as on the screen. Paths are short strings so that symbols stay data.
 */

/** line: outline; body: the same, filled with paper; solid: filled; thin: fine line; dash: control line. */
export type Look = 'line' | 'body' | 'solid' | 'thin' | 'dash' | 'fluid';

export interface Shape {
  readonly d: string;
  readonly look: Look;
  /** How far it shifts when the moving piece goes from 0 to 1, modules. */
  readonly by?: readonly [number, number];
  /** Seen only while the moving piece is nearer 0, or nearer 1. */
  readonly when?: 0 | 1;
}

/** left, top, right, bottom */
export type Extent = readonly [number, number, number, number];

export interface Drawing {
  /** All it may cover, wherever its moving piece stands. */
  readonly box: Extent;
  readonly shapes: readonly Shape[];
  /** Tubes are drawn shorter than they are declared, so that a line looks like one. */
  readonly short?: number;
}

type By = readonly [number, number];

const shape =
  (look: Look) =>
  (d: string, by?: By): Shape =>
    by === undefined ? { d, look } : { d, look, by };

export const line = shape('line');
export const body = shape('body');
export const solid = shape('solid');
export const thin = shape('thin');
export const dash = shape('dash');
export const fluid = shape('fluid');

export const rect = (x: number, y: number, w: number, h: number): string =>
  `M${x},${y}h${w}v${h}h${-w}Z`;

export const circle = (x: number, y: number, r: number): string =>
  `M${x - r},${y}a${r},${r} 0 1 0 ${2 * r},0a${r},${r} 0 1 0 ${-2 * r},0Z`;

/** A line through points. */
export const way = (...points: readonly (readonly [number, number])[]): string =>
  `M${points.map(([x, y]) => `${x},${y}`).join('L')}`;

/** A triangle whose tip is at x, y and points along (dx, dy), a unit vector along an axis. */
export function tip(x: number, y: number, dx: number, dy: number, size = 0.8): string {
  const [bx, by] = [x - dx * size, y - dy * size];
  const half = size * 0.45;
  return `M${x},${y}L${bx - dy * half},${by + dx * half}L${bx + dy * half},${by - dx * half}Z`;
}

/** A spring along x from x1 to x2, or along y where `upright`. */
export function spring(x1: number, x2: number, at: number, upright = false): string {
  const n = 5;
  const points = Array.from({ length: n + 1 }, (_, i): readonly [number, number] => {
    const along = x1 + ((x2 - x1) * i) / n;
    const aside = at + (i % 2 === 0 ? -0.6 : 0.6);
    return upright ? [aside, along] : [along, aside];
  });
  return way(...points);
}

/** A closed port: a short bar across its lead, which comes from `from` (y of the envelope's edge). */
export const stop = (x: number, from: number): string => {
  const end = from - Math.sign(from) * 0.9;
  return `M${x},${from}V${end}M${x - 0.5},${end}h1`;
};
