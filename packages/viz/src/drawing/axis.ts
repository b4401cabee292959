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
