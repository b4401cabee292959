/**
 * A spring that begins smoothly: nothing up to x = 0, a parabola up to x = w, then straight on.
 * Force and energy per unit stiffness; the force is C1, so that the solver sees no kink when
 * parts touch. At x >> w it is the plain spring, moved by w / 2.
 */

/** Force. */
export function push(x: number, w: number): number {
  return x <= 0 ? 0 : x < w ? (x * x) / (2 * w) : x - 0.5 * w;
}

/** Slope of {@link push}: 0 to 1. */
export function pushSlope(x: number, w: number): number {
  return x <= 0 ? 0 : x < w ? x / w : 1;
}

/** Energy stored: the integral of {@link push}. */
export function pushEnergy(x: number, w: number): number {
  return x <= 0 ? 0 : x < w ? (x * x * x) / (6 * w) : 0.5 * x * (x - w) + (w * w) / 6;
}
