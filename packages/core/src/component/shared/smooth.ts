/**
 * Smooth pieces that the devices share: all continuous with their first derivative.
 */

/** Rises from 0 at x <= 0 to 1 at x >= 1: 3x^2 - 2x^3. */
export function rise(x: number): number {
  return x <= 0 ? 0 : x >= 1 ? 1 : x * x * (3 - 2 * x);
}

/** Slope of {@link rise}. */
export function riseSlope(x: number): number {
  return x <= 0 || x >= 1 ? 0 : 6 * x * (1 - x);
}
