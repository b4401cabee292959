/**
 * Pressure of a real gas from density and temperature: the equation of Benedict, Webb and Rubin in
 * the corresponding-states form of Lee and Kesler, AIChE J. 21 (1975) 510 (constants from memory).
 *
 * Z of the simple fluid, with v = p_c V / (R T_c), t = T / T_c:
 *   Z0 = 1 + B/v + C/v^2 + D/v^5 + c4/(t^3 v^2) (beta + gamma/v^2) exp(-gamma/v^2)
 *   B = b1 - b2/t - b3/t^2 - b4/t^3,  C = c1 - c2/t + c3/t^3,  D = d1 + d2/t
 * taken at the gas's own density. The correction by the acentric factor is left out: for nitrogen
 * and air (0.04) it is below what the form is good for; for carbon dioxide (0.22) the second set
 * of constants is mixed in by their paper's rule, at equal density.
 */
import type { GasDefinition } from '../define/index.js';

/** Molar gas constant, J/(mol K) (exact since the 2019 definition of the kelvin). */
export const MOLAR_GAS_CONSTANT = 8.314462618;

interface Constants {
  readonly b: readonly [number, number, number, number];
  readonly c: readonly [number, number, number, number];
  readonly d: readonly [number, number];
  readonly beta: number;
  readonly gamma: number;
}

const SIMPLE: Constants = {
  b: [0.1181193, 0.265728, 0.15479, 0.030323],
  c: [0.0236744, 0.0186984, 0, 0.042724],
  d: [0.155488e-4, 0.623689e-4],
  beta: 0.65392,
  gamma: 0.060167,
};
const REFERENCE: Constants = {
  b: [0.2026579, 0.331511, 0.027655, 0.203488],
  c: [0.0313385, 0.0503618, 0.016901, 0.041577],
  d: [0.48736e-4, 0.0740336e-4],
  beta: 1.226,
  gamma: 0.03754,
};
/** Acentric factor of their reference fluid (octane). */
const REFERENCE_ACENTRIC = 0.3978;

/** Z and its slopes against reduced density r = 1/v and reduced temperature. */
interface Factor {
  z: number;
  byDensity: number;
  byTemperature: number;
}

function factor({ b, c, d, beta, gamma }: Constants, r: number, t: number, out: Factor): void {
  const i = 1 / t;
  const bb = b[0] - i * (b[1] + i * (b[2] + i * b[3]));
  const cc = c[0] - c[1] * i + c[2] * i * i * i;
  const dd = d[0] + d[1] * i;
  const bSlope = i * i * (b[1] + i * (2 * b[2] + 3 * i * b[3]));
  const cSlope = i * i * (c[1] - 3 * c[2] * i * i);
  const dSlope = -d[1] * i * i;
  const r2 = r * r;
  const r4 = r2 * r2;
  const damp = Math.exp(-gamma * r2);
  const core = c[3] * i * i * i * damp;
  const last = core * r2 * (beta + gamma * r2);
  out.z = 1 + bb * r + cc * r2 + dd * r4 * r + last;
  out.byDensity =
    bb +
    2 * cc * r +
    5 * dd * r4 +
    core * 2 * r * (beta + 2 * gamma * r2 - gamma * r2 * (beta + gamma * r2));
  out.byTemperature = bSlope * r + cSlope * r2 + dSlope * r4 * r - 3 * last * i;
}

const simple: Factor = { z: 1, byDensity: 0, byTemperature: 0 };
const reference: Factor = { z: 1, byDensity: 0, byTemperature: 0 };

/** Compressibility factor and its slopes against density (1/(mol/m3)) and temperature (1/K). */
export interface Compressibility {
  z: number;
  byDensity: number;
  byTemperature: number;
}

/** Writes Z of a gas at `density` (mol/m3) and `temperature` (K) into `out`. */
export function compressibility(
  gas: GasDefinition,
  density: number,
  temperature: number,
  out: Compressibility,
): void {
  const perDensity = (MOLAR_GAS_CONSTANT * gas.criticalTemperature) / gas.criticalPressure;
  const r = density * perDensity;
  const t = temperature / gas.criticalTemperature;
  factor(SIMPLE, r, t, simple);
  factor(REFERENCE, r, t, reference);
  const share = gas.acentric / REFERENCE_ACENTRIC;
  out.z = simple.z + share * (reference.z - simple.z);
  out.byDensity =
    perDensity * (simple.byDensity + share * (reference.byDensity - simple.byDensity));
  out.byTemperature =
    (simple.byTemperature + share * (reference.byTemperature - simple.byTemperature)) /
    gas.criticalTemperature;
}
