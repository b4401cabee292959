/** A dimension line: the line with a stroke across each end, and where its figure stands. */
import { pathOf } from './projection.js';
import type { Flat } from './projection.js';

export interface Dimension {
  readonly path: string;
  readonly label: Flat;
  /** Which side of its place the figure is written on. */
  readonly anchor: 'start' | 'middle' | 'end';
}

/** Half of a stroke across an end, and from the line to its figure, px. */
const STROKE = 5;
const AWAY = 9;

/** `mm` to a pixel; `side` 1 writes on the right of the way from a to b, -1 on its left, `share` of the way along. */
export function dimension(a: Flat, b: Flat, mm: number, side: 1 | -1 = 1, share = 0.5): Dimension {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  // Too short to have a direction: drawn as a level one.
  const [du, dv] = long < 1e-6 ? [1, 0] : [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  const [nu, nv] = [-dv * STROKE * mm, du * STROKE * mm];
  const across = ([u, v]: Flat): string =>
    pathOf([
      [u - nu, v - nv],
      [u + nu, v + nv],
    ]);
  const away = side * (AWAY / STROKE);
  const at: Flat = [
    a[0] + share * (b[0] - a[0]) + away * nu,
    a[1] + share * (b[1] - a[1]) + away * nv,
  ];
  // Above or below a level line its figure is centred, beside an upright one it starts there.
  const level = Math.abs(nu) < 0.6 * Math.abs(nv);
  const down = !level ? 3.5 : away * nv > 0 ? 7 : 0;
  return {
    path: pathOf([a, b]) + across(a) + across(b),
    label: [at[0], at[1] + down * mm],
    anchor: level ? 'middle' : away * nu < 0 ? 'end' : 'start',
  };
}

/** The same line moved square to itself, `px` to the side. */
export function besides(a: Flat, b: Flat, px: number, mm: number): [Flat, Flat] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [nu, nv] = [(-(b[1] - a[1]) / long) * px * mm, ((b[0] - a[0]) / long) * px * mm];
  return [
    [a[0] + nu, a[1] + nv],
    [b[0] + nu, b[1] + nv],
  ];
}
