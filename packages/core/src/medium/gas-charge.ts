/** What is in a bottle, from what its gauge shows: contents and charges (medium/gas.ts has the pressure). */
import type { GasDefinition } from '../define/index.js';
import { ANR, ANR_MOLES, vesselPressure } from './gas.js';

/** 70 degF, at which placards of bottles are written, K. */
export const PLACARD_TEMPERATURE = 294.26;

/**
 * Densest liquid in a bottle, mol/m3: carbon dioxide at its triple point, 1178 kg/m3 (Span and
 * Wagner 1996, from memory).
 */
const MOST_LIQUID = 26_800;

/** Gas in a vessel of `volume` (m3) at `pressure` (Pa absolute) and `temperature` (K), m3 at ANR: inverse of {@link vesselPressure}. */
export function vesselContent(
  gas: GasDefinition,
  volume: number,
  pressure: number,
  temperature: number,
): number {
  const out = { pressure: 0, byGas: 0, byTemperature: 0 };
  // Pressure rises with content: a bracket, then bisection and Newton's method inside it.
  let low = 0;
  const thin = (pressure * ANR.temperature * volume) / (ANR.pressure * temperature);
  const liquid = gas.saturation === undefined ? 0 : (MOST_LIQUID * volume) / ANR_MOLES;
  let high = Math.max(5 * thin, liquid);
  let content = thin;
  for (let i = 0; i < 200; i++) {
    vesselPressure(gas, volume, content, temperature, out);
    if (out.pressure > pressure) high = content;
    else low = content;
    const next = content - (out.pressure - pressure) / out.byGas;
    const inside = next > low && next < high;
    const moved = inside ? next - content : 0.5 * (low + high) - content;
    content += moved;
    if (Math.abs(moved) <= 1e-14 * content) break;
  }
  return content;
}

/** As {@link vesselContent} for a charge read on a gauge: at most what fills the vessel with vapour, for liquid does not show there. */
export function vesselCharge(
  gas: GasDefinition,
  volume: number,
  pressure: number,
  temperature: number,
): number {
  const wettable = gas.saturation && temperature < gas.criticalTemperature;
  const most = wettable ? gas.saturation.pressure(temperature) : Infinity;
  return vesselContent(gas, volume, Math.min(pressure, most), temperature);
}

/**
 * Pressure, Pa absolute, that a bottle charged to `pressure` (Pa absolute) at `chargedAt` (K) shows
 * at `temperature` (K): same gas, same volume.
 */
export function chargeAt(
  gas: GasDefinition,
  pressure: number,
  chargedAt: number,
  temperature: number,
): number {
  const out = { pressure: 0, byGas: 0, byTemperature: 0 };
  vesselPressure(gas, 1, vesselCharge(gas, 1, pressure, chargedAt), temperature, out);
  return out.pressure;
}
