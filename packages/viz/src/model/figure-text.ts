/** Figures as they stand in fields: in the user's units, exactly enough to be read back. */
import type { ParameterFacts } from '../worker/parameters-message.js';
import type { Display, Picture, System } from '../worker/message.js';
import { written } from './sentence.js';

/** Enough that a figure of a file in the same unit comes back as it was written. */
const FIGURES = 6;
/** Differences of temperatures are read in K only. */
const DIFFERENCE: Display = { factor: 1, shift: 0, unit: 'K' };
const PLAIN: Display = { factor: 1, shift: 0, unit: '' };

export type Figure = number | string | boolean;

/** How a number of these facts is shown. */
export function displayOf(facts: ParameterFacts, picture: Picture, system: System): Display {
  if (facts.quantity === undefined) return PLAIN;
  if (facts.difference === true) return DIFFERENCE;
  return picture.display[system][facts.quantity] ?? PLAIN;
}

/** The number in its unit, without it. */
export function numberIn(value: number, { factor, shift }: Display, figures = FIGURES): string {
  const shown = Number((value * factor + shift).toPrecision(figures));
  // Rounding of a zero that was shifted leaves a speck.
  return String(Math.abs(shown) < 1e-12 * Math.max(1, Math.abs(shift)) ? 0 : shown);
}

/** The same with its unit, in words for a page. */
export function figureText(value: Figure | undefined, display: Display): string {
  if (value === undefined) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  const number = numberIn(value, display).replace('-', '\u2212');
  return display.unit === '' ? number : `${number}\u00a0${written(display.unit)}`;
}

/** What a file would have for what was typed: a bare number gets the unit that stands behind the field. */
export function typed(text: string, { unit }: Display): string {
  const plain = text.trim().replaceAll('\u2212', '-');
  const bare = /^[-+]?[\d\s./½¼¾⅛⅜⅝⅞-]*\d?[\d½¼¾⅛⅜⅝⅞.]$/.test(plain);
  return bare && unit !== '' ? `${plain} ${unit}` : plain;
}

/** A value in SI as a file would have it in the user's unit. */
export function asTyped(value: number, display: Display): string {
  const number = numberIn(value, display);
  return display.unit === '' ? number : `${number} ${display.unit}`;
}

/** Ends of a slider, SI: about what the file says, or all that is allowed where that is short. */
export function reachOf({
  range,
  value,
  usual,
}: ParameterFacts): readonly [number, number] | undefined {
  if (range === undefined) return undefined;
  const [low, high] = range;
  const about = typeof value === 'number' ? value : typeof usual === 'number' ? usual : 0;
  // Nothing to go by: only a short range can be slid over.
  if (about === 0) return high - low <= 1 ? range : undefined;
  const reach = Math.abs(about);
  return [Math.max(low, about - reach), Math.min(high, about + reach)];
}

/** One step by an arrow key, in the shown unit: about a hundredth of the figure, a round one. */
export function stepOf(shown: number): number {
  const size = Math.abs(shown) / 50;
  if (size === 0 || !Number.isFinite(size)) return 1;
  const decade = 10 ** Math.floor(Math.log10(size));
  return decade * (size / decade >= 5 ? 5 : size / decade >= 2 ? 2 : 1);
}
