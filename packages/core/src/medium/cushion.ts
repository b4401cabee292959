import type { GasCushion } from '../define/index.js';

/**
 * Oil against a gas cushion (accumulator): pressure from the oil n that is in it,
 *
 *   p(n) = ambient + (p_gas(n) - ambient) lift(n),   p_gas = precharge (volume / (volume - n))^index
 *
 * `lift` rises smoothly from 0 to 1 over the first {@link POPPET} of the volume: the poppet at the
 * oil port, shut by the bladder when the oil has gone. An empty one gives nothing: below zero the
 * pressure falls towards a vacuum.
 * Source: polytropic change of state (thermodynamics textbooks); the poppet's band is common
 * practice, no source.
 */
export interface CushionPressure {
  /** Pa absolute. */
  pressure: number;
  /** dp/dn, Pa/m3. */
  slope: number;
}

/** Share of the gas volume over which the poppet opens. */
export const POPPET = 0.004;

/** Beyond this share of the gas volume the pressure goes on along its tangent: bladders are not squeezed further. */
const FULL = 0.97;

/** Writes pressure and slope at content `n` (m3) into `out`. */
export function cushionPressure(
  { precharge, volume, index }: GasCushion,
  ambient: number,
  n: number,
  out: CushionPressure,
): void {
  const x = n / volume;
  if (x <= 0) {
    const u = x / POPPET;
    const below = 1 + u * u;
    out.pressure = ambient / below;
    out.slope = (-2 * ambient * u) / (below * below * POPPET * volume);
    return;
  }
  const filled = x < FULL ? x : FULL;
  let gas = precharge * Math.pow(1 - filled, -index);
  const gasSlope = (index * gas) / ((1 - filled) * volume);
  if (x > FULL) gas += gasSlope * (x - FULL) * volume;
  if (x >= POPPET) {
    out.pressure = gas;
    out.slope = gasSlope;
    return;
  }
  const u = x / POPPET;
  const lift = u * u * (3 - 2 * u);
  out.pressure = ambient + (gas - ambient) * lift;
  out.slope = gasSlope * lift + ((gas - ambient) * 6 * u * (1 - u)) / (POPPET * volume);
}
