/** Two panels over one axis: pressure above, moments below; as scales and paths. */
import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { Linear } from './heat-map.js';

/** Share of the height that the pressure takes, and what is left free between, px. */
const UPPER = 0.3;
const BETWEEN = 14;

export interface Panels {
  readonly x: Linear;
  readonly pressure: Linear;
  readonly moment: Linear;
}

/** `backwards` turns the axis round: a leg comes down from its high end, at the left. */
export function panels(
  x: readonly [number, number],
  pressures: ArrayLike<number>,
  moments: readonly ArrayLike<number>[],
  width: number,
  height: number,
  backwards: boolean,
): Panels {
  const top = (all: readonly ArrayLike<number>[]): [number, number] => {
    const [low = 0, high = 1] = extent(all.flatMap((a) => Array.from(a)).filter(Number.isFinite));
    return [Math.min(0, low), Math.max(high, 1e-9)];
  };
  const split = (height - BETWEEN) * UPPER;
  return {
    x: scaleLinear()
      .domain(backwards ? [x[1], x[0]] : x)
      .range([0, width]),
    pressure: scaleLinear()
      .domain(top([pressures]))
      .nice(3)
      .range([split, 0]),
    moment: scaleLinear()
      .domain(top(moments))
      .nice(4)
      .range([height, split + BETWEEN]),
  };
}

/** A line through samples, broken where there is none; `of` says whether a sample belongs to it. */
export function trace(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  toX: Linear,
  toY: Linear,
  of: (i: number) => boolean = () => true,
): string {
  let path = '';
  let pen = 'M';
  for (let i = 0; i < y.length; i++) {
    const [a, b] = [x[i] ?? NaN, y[i] ?? NaN];
    const there = of(i) && Number.isFinite(a) && Number.isFinite(b);
    if (there) path += `${pen}${toX(a).toFixed(1)},${toY(b).toFixed(1)}`;
    pen = there ? 'L' : 'M';
  }
  return path;
}
