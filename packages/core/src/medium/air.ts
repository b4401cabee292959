/**
 * Stiffness of oil with free air in it, in a tube that gives.
 *
 * Series compliance: 1/B = fraction/(n p) + (1 - fraction)/B_oil + wall, with the gas
 * fraction taken at the pressure itself (Rabie, Fluid Power Engineering, eq. 2.57). The
 * exponent n is 1 for slow (isothermal) and 1.4 for fast (adiabatic) changes.
 */

/** Volume fraction of free gas at `pressure` (Pa absolute), from the fraction at `ambient` (Pa absolute). */
export function gasFraction(
  fractionAtAmbient: number,
  ambient: number,
  pressure: number,
  exponent = 1.4,
): number {
  const gas = fractionAtAmbient * (ambient / pressure) ** (1 / exponent);
  return gas / (gas + 1 - fractionAtAmbient);
}

/**
 * Effective bulk modulus, Pa. `oil`: modulus without air, Pa; `fraction`: gas volume fraction
 * at `pressure` (Pa absolute); `wall`: relative swelling of the container, 1/Pa.
 */
export function effectiveBulkModulus(
  oil: number,
  fraction: number,
  pressure: number,
  exponent = 1.4,
  wall = 0,
): number {
  return 1 / (fraction / (exponent * pressure) + (1 - fraction) / oil + wall);
}

/** Relative swelling of a thin-walled tube, 1/Pa: diameter / (wall thickness x Young's modulus). */
export function tubeSwelling(diameter: number, thickness: number, youngsModulus: number): number {
  return diameter / (thickness * youngsModulus);
}

/** Speed of a pressure wave, m/s, in oil of effective bulk modulus (Pa) and density (kg/m3). */
export function waveSpeed(modulus: number, density: number): number {
  return Math.sqrt(modulus / density);
}
