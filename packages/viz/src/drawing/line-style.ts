/**
 * How lines are told apart: eight colours and six dashes, so that a line differs from the next in
 * both, and forty-eight have no twin. Colours keep 3:1 on the sheet, light or dark, and differ in
 * lightness where hues are near for colour-blind eyes.
 */
export interface LineStyle {
  readonly light: string;
  readonly dark: string;
  /** Lengths of dashes and gaps, px; empty for a solid line. */
  readonly dash: readonly number[];
}

const COLOURS: readonly (readonly [light: string, dark: string])[] = [
  ['#0d586d', '#7ccbdb'],
  ['#b8470a', '#ffb37a'],
  ['#5b3f9e', '#c3b1f5'],
  ['#3d6b1f', '#a5d67f'],
  ['#a3195b', '#ff9cc7'],
  ['#86680b', '#e8cf5a'],
  ['#2456b8', '#8fb7ff'],
  ['#4b5860', '#c3ccd0'],
];
const DASHES: readonly (readonly number[])[] = [
  [],
  [8, 4],
  [2.5, 3],
  [10, 3, 2, 3],
  [14, 4],
  [6, 3, 2, 3, 2, 3],
];

/** The style of the n-th line: every colour comes with another dash each time round. */
export function lineStyle(n: number): LineStyle {
  const [light, dark] = COLOURS[n % COLOURS.length] ?? ['#000', '#fff'];
  const turn = Math.floor(n / COLOURS.length);
  return { light, dark, dash: DASHES[(n + turn) % DASHES.length] ?? [] };
}
