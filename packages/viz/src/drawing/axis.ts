/** A time axis as numbers and words; the view draws it. */
import { scaleLinear } from 'd3-scale';
import type { ScaleLinear } from 'd3-scale';

export type TimeScale = ScaleLinear<number, number>;

export function timeScale(span: readonly [number, number], width: number): TimeScale {
  return scaleLinear().domain(span).range([0, width]);
}

export interface Tick {
  readonly x: number;
  readonly label: string;
}

/** About one tick in ninety pixels. */
export function timeTicks(scale: TimeScale): Tick[] {
  const [, width = 0] = scale.range();
  const count = Math.max(2, Math.floor(width / 90));
  const words = scale.tickFormat(count);
  return scale.ticks(count).map((t) => ({ x: scale(t), label: words(t) }));
}

/** Places labels from left to right so that none covers another: returns which row each goes to, -1 when there is no room. */
export function rows(items: readonly { readonly x: number; readonly width: number }[], most: number): number[] {
  const ends = new Array<number>(most).fill(-Infinity);
  return items.map(({ x, width }) => {
    const row = ends.findIndex((end) => end <= x);
    if (row >= 0) ends[row] = x + width;
    return row;
  });
}
