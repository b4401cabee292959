/**
 * Flow through an orifice: q = c dp / (dp^2 + dc^2)^(1/4).
 *
 * Far above dc this is the turbulent orifice Cd A sqrt(2 dp / rho); far below it is laminar,
 * and all of it is smooth through zero. dc is the drop at which the turbulent law reaches the
 * transition Reynolds number: dc = rho/2 (Re nu / (Cd d))^2. Turbulent law and laminar limit:
 * Merritt, Hydraulic Control Systems (from memory); the joining root is a usual smooth form.
 */

/** c = Cd A sqrt(2 / rho), m3/(s sqrt Pa). */
export function orificeConstant(coefficient: number, area: number, density: number): number {
  return coefficient * area * Math.sqrt(2 / density);
}

/** Transition drop dc, Pa. `diameter`: hydraulic, m; `viscosity`: kinematic, m2/s. */
export function transitionDrop(
  coefficient: number,
  diameter: number,
  density: number,
  viscosity: number,
  reynolds: number,
): number {
  const v = (reynolds * viscosity) / (coefficient * diameter);
  return 0.5 * density * v * v;
}

/** Flow, m3/s, of an orifice with constant `c` at drop `dp` (signed, Pa) and transition drop `dc` (> 0). */
export function orificeFlow(c: number, dp: number, dc: number): number {
  return (c * dp) / Math.sqrt(Math.sqrt(dp * dp + dc * dc));
}

/** Slope of {@link orificeFlow} against dp, m3/(s Pa). */
export function orificeSlope(c: number, dp: number, dc: number): number {
  const square = dp * dp + dc * dc;
  return (c * (0.5 * dp * dp + dc * dc)) / (square * Math.sqrt(Math.sqrt(square)));
}
