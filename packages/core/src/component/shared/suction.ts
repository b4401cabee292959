/**
 * How a supply fails as its suction side runs dry: full flow while the inlet is fed, falling
 * smoothly to none as the inlet's pressure nears a vacuum or its oil is used up.
 * The limits are common practice, no source.
 */
import type { Frame } from '../../define/index.js';
import { rise, riseSlope } from './smooth.js';

/** Absolute inlet pressure above which the supply fills fully, Pa. */
const FED = 30_000;
/** Oil left at the inlet below which it draws air, m3; every supply's inlet holds more than this when full. */
const DRY = 2e-6;

/** Volume of oil in a supply's own inlet passage, m3. */
export const INLET_VOLUME = 6e-6;

/** Share of full flow that the inlet can feed, 0..1. */
export function fed(d: Frame, inlet: number): number {
  return rise(d.pressure(inlet) / FED) * rise(d.content(inlet) / DRY);
}

/** Slope of {@link fed} against the inlet's pressure, 1/Pa. */
export function fedSlope(d: Frame, inlet: number): number {
  return (riseSlope(d.pressure(inlet) / FED) / FED) * rise(d.content(inlet) / DRY);
}
