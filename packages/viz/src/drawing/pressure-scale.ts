/**
 * Colour and width of a line for its pressure: the scale of equal steps in lightness that heat maps use, dark
 * at none to light at most; and wider with pressure, so that colour is not the only sign.
 */
import { scaleLinear } from 'd3-scale';
import { heat } from './heat.js';

/** Width of a line without and with most pressure, modules; that of the dark rim on either side. */
const LEAST = 0.3;
const MOST = 0.8;
export const RIM = 0.14;

/** This much below the pressure outside a line counts as sucked empty, Pa: more than a tank's head makes. */
const SUCTION = 10_000;

export interface PressureScale {
  /** Pressure above that outside, Pa, at the light end. */
  readonly top: number;
  /** Round figures along it, in the user's unit, and their places, 0..1. */
  readonly ticks: readonly { readonly text: string; readonly share: number }[];
  readonly share: (gauge: number) => number;
}

/** `factor` turns Pa into the user's unit. */
export function pressureScale(most: number, factor: number): PressureScale {
  const round = scaleLinear()
    .domain([0, Math.max(most, 1e5) * factor])
    .nice(4);
  const end = round.domain()[1] ?? 1;
  const words = round.tickFormat(3);
  const top = end / factor;
  return {
    top,
    ticks: round.ticks(3).map((v) => ({ text: words(v), share: v / end })),
    share: (gauge) => Math.min(Math.max(gauge / top, 0), 1),
  };
}

export const colourAt = (share: number): string => heat(share);
export const widthAt = (share: number): number => LEAST + (MOST - LEAST) * share;
export const isSucked = (gauge: number): boolean => gauge < -SUCTION;
