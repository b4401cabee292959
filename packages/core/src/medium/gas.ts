/**
 * Gases of emergency bottles: state of a closed vessel, flow by ISO 6358.
 *
 * Amounts of gas are volumes at ANR, the standard reference atmosphere of ISO 8778 (100 kPa,
 * 20 degC): what a flow meter in litres of free gas shows. In there the gas is ideal.
 */
import { CRITICAL_RATIO, type GasDefinition } from '../define/index.js';

/** Molar gas constant, J/(mol K) (exact since the 2019 definition of the kelvin). */
export const MOLAR_GAS_CONSTANT = 8.314462618;

/** ANR: Pa absolute and K. */
export const ANR = { pressure: 1e5, temperature: 293.15 } as const;

/** The gas catalogue, by kind. */
export const gases: Readonly<Record<string, GasDefinition>> = {
  nitrogen: {
    kind: 'nitrogen',
    title: 'Nitrogen',
    summary: 'What bottles are charged with: dry and inert.',
    molarMass: 0.0280134,
    gamma: 1.4,
    criticalTemperature: 126.192,
    criticalPressure: 3.3958e6,
    acentric: 0.0372,
    source: 'Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361, from memory',
  },
  'dry-air': {
    kind: 'dry-air',
    title: 'Dry air',
    summary: 'Where nitrogen is not at hand and the manual allows it; it must be dry.',
    molarMass: 0.0289647,
    gamma: 1.4,
    criticalTemperature: 132.53,
    criticalPressure: 3.786e6,
    acentric: 0.0335,
    source: 'Lemmon et al., J. Phys. Chem. Ref. Data 29 (2000) 331, from memory',
  },
  'carbon-dioxide': {
    kind: 'carbon-dioxide',
    title: 'Carbon dioxide',
    summary: 'Older one-shot bottles; liquid below 31 degC above its vapour pressure.',
    molarMass: 0.0440098,
    gamma: 1.29,
    criticalTemperature: 304.128,
    criticalPressure: 7.3773e6,
    acentric: 0.2239,
    source: 'Span and Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509, from memory',
  },
};

/** Density at ANR, kg/m3. */
export function anrDensity(gas: GasDefinition): number {
  return (ANR.pressure * gas.molarMass) / (MOLAR_GAS_CONSTANT * ANR.temperature);
}

/** Pressure of a vessel and its slopes against the gas in it (m3 at ANR) and its temperature (K). */
export interface VesselPressure {
  /** Pa absolute. */
  pressure: number;
  /** Pa/m3 */
  byGas: number;
  /** Pa/K */
  byTemperature: number;
}

/** Writes the pressure of `content` (m3 at ANR) in `volume` (m3) at `temperature` (K) into `out`. */
export function vesselPressure(
  _gas: GasDefinition,
  volume: number,
  content: number,
  temperature: number,
  out: VesselPressure,
): void {
  out.byGas = (ANR.pressure * temperature) / (ANR.temperature * volume);
  out.pressure = out.byGas * content;
  out.byTemperature = out.pressure / temperature;
}

/** Gas in a vessel of `volume` (m3) at `pressure` (Pa absolute) and `temperature` (K), m3 at ANR. */
export function vesselContent(
  _gas: GasDefinition,
  volume: number,
  pressure: number,
  temperature: number,
): number {
  return (pressure / ANR.pressure) * (ANR.temperature / temperature) * volume;
}

/**
 * How much more gas than oil a passage lets through, and its slopes: gas (m3/s at ANR) = factor x
 * oil (m3/s) at the same pressures.
 */
export interface GasFactor {
  factor: number;
  /** Slopes against upstream and downstream pressure, 1/Pa, and against upstream temperature, 1/K. */
  byUp: number;
  byDown: number;
  byTemperature: number;
}

/**
 * Writes the factor into `out`. `up` > `down` > 0: pressures, Pa absolute; `temperature`: of the
 * gas upstream, K; `root`: sqrt(oil density / gas density at ANR); `b`: critical pressure ratio.
 *
 * ISO 6358: q = C p1 sqrt(T0/T1) sqrt(1 - ((r - b)/(1 - b))^2), r = p2/p1, choked below b. An oil
 * orifice of flow area A passes A sqrt(2 dp / rho). For small drops both must agree with
 * Bernoulli, which gives C = A sqrt((1 - b) / (2 rho0 p0)) and
 *   factor = root sqrt(p1 T0 / (p0 T1)) Y,   Y = sqrt((1 + r - 2b) / (2 (1 - b))), r > b
 *                                            Y = sqrt((1 - b) / (2 (1 - r))),      r <= b
 * with equal value and slope at b.
 */
export function gasFactor(
  up: number,
  down: number,
  temperature: number,
  root: number,
  b: number,
  out: GasFactor,
): void {
  const r = down / up;
  const choked = r <= b;
  const square = choked ? (0.5 * (1 - b)) / (1 - r) : (1 + r - 2 * b) / (2 * (1 - b));
  // d ln(square) / dr
  const bend = choked ? 1 / (1 - r) : 1 / (1 + r - 2 * b);
  const f = root * Math.sqrt((up * ANR.temperature * square) / (ANR.pressure * temperature));
  out.factor = f;
  out.byUp = (0.5 * f * (1 - bend * r)) / up;
  out.byDown = (0.5 * f * bend) / up;
  out.byTemperature = (-0.5 * f) / temperature;
}

/** Sonic conductance (ISO 6358), m3/(s Pa), of flow area `area` (Cd A, m2) for air. */
export function sonicConductance(area: number, b = CRITICAL_RATIO): number {
  return area * Math.sqrt((1 - b) / (2 * anrDensity(gases['dry-air']) * ANR.pressure));
}
