/**
 * Colours for a quantity, dark to light: equally spaced points on two straight lines in CIELAB (CIE 15),
 * each step of equal lightness and colour difference, so that equal differences look equal, in grey and to
 * the colour-blind too. Between them red, green and blue are mixed, which over so small a step is the same.
 */
import { range } from 'd3-array';
import { scaleLinear } from 'd3-scale';

export const HEAT_STOPS: readonly string[] = [
  ...['#10325a', '#1c4163', '#27516c', '#306274', '#39737d', '#428486', '#4a968f'],
  ...['#6ba498', '#88b3a0', '#a4c2a9', '#c0d0b1', '#dbdfba', '#f7eec3'],
];

/** A colour for a share, 0 (worst) to 1 (best). */
export const heat: (share: number) => string = scaleLinear<string>()
  .domain(range(HEAT_STOPS.length).map((i) => i / (HEAT_STOPS.length - 1)))
  .range(HEAT_STOPS)
  .clamp(true);
