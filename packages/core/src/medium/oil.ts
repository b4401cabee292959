/**
 * Hydraulic oils: viscosity, density, bulk modulus and vapour pressure against temperature.
 *
 * Viscosity follows ASTM D341 (Walther), log10 log10(nu + 0.7) = A - B log10 T, nu in mm2/s,
 * T in K, on straight pieces between published points: a polymer-thickened oil is no single
 * line (two warm points would make its cold oil less than half as thick as it is). The constant
 * 0.7 holds above about 2 mm2/s. Beyond the outer knots the nearest piece goes on.
 *
 * Bulk modulus: the handbook of a maker of miniature valves gives a room-temperature figure per fluid and
 * factors for working conditions (0.91 at 500 psi, 0.98 at 2000 psi; 1.10 at 60 F, 0.86 at
 * 160 F); we join them by a straight line in pressure and an exponential in temperature.
 */
import type { FluidDefinition } from '../define/index.js';

/** A kinematic viscosity published at a temperature. */
export interface ViscosityPoint {
  /** K */
  readonly temperature: number;
  /** m2/s */
  readonly viscosity: number;
}

const ZERO_C = 273.15;
const PSI = 6894.757;
const PER_F = 1.8;

function points(...pairs: readonly (readonly [number, number])[]): readonly ViscosityPoint[] {
  return pairs.map(([celsius, cSt]) => ({ temperature: celsius + ZERO_C, viscosity: cSt * 1e-6 }));
}

/** The fluid catalogue, by kind. */
export const fluids: Readonly<Record<string, FluidDefinition>> = {
  'mineral-red': {
    kind: 'mineral-red',
    title: 'Red mineral oil (MIL-PRF-5606 type)',
    summary: 'Polymer-thickened mineral oil; what most older light and medium aircraft use.',
    viscosity: points([-54, 2300], [-40, 490], [40, 14.1], [100, 5.3]),
    density: 870,
    densityAt: 16 + ZERO_C,
    expansion: 0.00046 * PER_F,
    bulkModulus: 260_000 * PSI,
    vapourPressure: 100,
    source:
      'viscosity and density: typical product, from memory, inside the limits of MIL-PRF-5606 (from memory); bulk modulus and expansion: miniature-valve handbook table for MIL-H-5606; vapour pressure: order of magnitude, from memory',
  },
  'synthetic-hydrocarbon': {
    kind: 'synthetic-hydrocarbon',
    title: 'Synthetic hydrocarbon (MIL-PRF-83282 type)',
    summary: 'Fire-resistant, mixes with red mineral oil, much thicker in the cold.',
    viscosity: points([-40, 2100], [40, 14.4], [100, 3.5]),
    density: 850,
    densityAt: 16 + ZERO_C,
    expansion: 0.00046 * PER_F,
    bulkModulus: 300_000 * PSI,
    vapourPressure: 50,
    source:
      'viscosity and density: typical product, from memory, inside the limits of MIL-PRF-83282 (from memory); bulk modulus and expansion: miniature-valve handbook table for MIL-H-83282; vapour pressure: order of magnitude, from memory',
  },
  'synthetic-hydrocarbon-thin': {
    kind: 'synthetic-hydrocarbon-thin',
    title: 'Thin synthetic hydrocarbon (MIL-PRF-87257 type)',
    summary: 'As the synthetic hydrocarbon, made thinner for the cold.',
    viscosity: points([-54, 2350], [-40, 520], [40, 7.0], [100, 2.1]),
    density: 840,
    densityAt: 16 + ZERO_C,
    expansion: 0.00046 * PER_F,
    bulkModulus: 290_000 * PSI,
    vapourPressure: 100,
    source:
      'all from memory: viscosity just inside the limits of MIL-PRF-87257, the rest a little below the 83282 type',
  },
  'phosphate-ester': {
    kind: 'phosphate-ester',
    title: 'Phosphate ester, low density (SAE AS1241 type IV)',
    summary: 'Transport aircraft; ruins seals made for mineral oil and the other way round.',
    viscosity: points([-54, 1180], [38, 11.4], [99, 3.9]),
    density: 1010,
    densityAt: 16 + ZERO_C,
    expansion: 0.00047 * PER_F,
    bulkModulus: 340_000 * PSI,
    vapourPressure: 200,
    source:
      'viscosity and density: typical product, from memory; bulk modulus and expansion: miniature-valve handbook table for a phosphate ester; vapour pressure: order of magnitude, from memory',
  },
  'mineral-industrial': {
    kind: 'mineral-industrial',
    title: 'Industrial mineral oil, grade 32',
    summary: 'Not for aircraft: here as the wrong oil that a workshop might have poured in.',
    viscosity: points([40, 32], [100, 5.4]),
    density: 870,
    densityAt: 15 + ZERO_C,
    expansion: 7e-4,
    bulkModulus: 250_000 * PSI,
    vapourPressure: 50,
    source:
      'viscosity: worked example of ASTM D341 (32 mm2/s at 40 C, 5.4 at 100 C); bulk modulus: usual textbook figure; the rest from memory',
  },
};

/** A line of ASTM D341: log10 log10(nu + 0.7) = a - b log10 T. */
export interface WaltherLine {
  readonly a: number;
  readonly b: number;
}

const walther = (viscosity: number): number => Math.log10(Math.log10(viscosity * 1e6 + 0.7));

/** The D341 line through two points. */
export function waltherLine(one: ViscosityPoint, two: ViscosityPoint): WaltherLine {
  const x1 = Math.log10(one.temperature);
  const x2 = Math.log10(two.temperature);
  const b = (walther(one.viscosity) - walther(two.viscosity)) / (x2 - x1);
  return { a: walther(one.viscosity) + b * x1, b };
}

/** Kinematic viscosity on a D341 line, m2/s, at `temperature` in K. */
export function viscosityOnLine(line: WaltherLine, temperature: number): number {
  return (10 ** (10 ** (line.a - line.b * Math.log10(temperature))) - 0.7) * 1e-6;
}

/** Kinematic viscosity of a fluid, m2/s, at `temperature` in K (about 210 to 480). */
export function viscosity(fluid: FluidDefinition, temperature: number): number {
  const knots = fluid.viscosity;
  let i = 0;
  while (i < knots.length - 2 && temperature > knots[i + 1].temperature) i++;
  return viscosityOnLine(waltherLine(knots[i], knots[i + 1]), temperature);
}

/** Middle of what a gear system works at, Pa (1000 psi); where one bulk modulus must serve a whole run. */
export const WORKING_PRESSURE = 1000 * PSI;

// The straight line and the exponential through the handbook's factors (see head comment).
const PRESSURE_SLOPE = (0.98 - 0.91) / (1500 * PSI);
const PRESSURE_UNITY = 500 * PSI + (1 - 0.91) / PRESSURE_SLOPE;
const WARM_SLOPE = (Math.log(1.1 / 0.86) / 100) * PER_F;
const WARM_UNITY = (60 - 32) / PER_F + ZERO_C + Math.log(1.1) / WARM_SLOPE;

/** Bulk modulus of the oil without air, Pa, at `temperature` in K and `gauge` pressure in Pa. */
export function bulkModulus(
  fluid: FluidDefinition,
  temperature: number,
  gauge = WORKING_PRESSURE,
): number {
  const warm = Math.exp(-WARM_SLOPE * (temperature - WARM_UNITY));
  return fluid.bulkModulus * warm * (1 + PRESSURE_SLOPE * (gauge - PRESSURE_UNITY));
}

/** Density, kg/m3, at `temperature` in K and `gauge` pressure in Pa (the modulus taken as the secant one, dV/V = p/B). */
export function density(fluid: FluidDefinition, temperature: number, gauge = 0): number {
  const warm = fluid.density * Math.exp(-fluid.expansion * (temperature - fluid.densityAt));
  return warm / (1 - gauge / bulkModulus(fluid, temperature, gauge));
}

/** What a run needs of its oil at one temperature. */
export interface OilProperties {
  readonly density: number;
  readonly viscosity: number;
  readonly bulkModulus: number;
  readonly vapourPressure: number;
}

/** Properties of a fluid at `temperature` (K): ambient density, viscosity, working bulk modulus, vapour pressure, all SI. */
export function oilAt(fluid: FluidDefinition, temperature: number): OilProperties {
  return {
    density: density(fluid, temperature),
    viscosity: viscosity(fluid, temperature),
    bulkModulus: bulkModulus(fluid, temperature),
    vapourPressure: fluid.vapourPressure,
  };
}
