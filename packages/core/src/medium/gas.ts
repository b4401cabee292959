/**
 * Gases of emergency bottles: state of a closed vessel, flow by ISO 6358.
 *
 * Amounts of gas are volumes at ANR, the standard reference atmosphere of ISO 8778 (100 kPa,
 * 20 degC): what a flow meter in litres of free gas shows. In there the gas is ideal.
 */
import { CRITICAL_RATIO, type GasDefinition } from '../define/index.js';
import { compressibility, MOLAR_GAS_CONSTANT, type Compressibility } from './real-gas.js';

/** ANR: Pa absolute and K. */
export const ANR = { pressure: 1e5, temperature: 293.15 } as const;

/**
 * Vapour pressure (Pa) and density of the saturated vapour (mol/m3) of carbon dioxide: ancillary
 * equations of Span and Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509 (from memory).
 */
const carbonDioxide = {
  pressure: (temperature: number): number => {
    const x = 1 - temperature / 304.1282;
    const sum = -7.0602087 * x + 1.9391218 * x ** 1.5 - 1.6463597 * x * x - 3.2995634 * x ** 4;
    return 7.3773e6 * Math.exp((sum * 304.1282) / temperature);
  },
  density: (temperature: number): number => {
    const x = 1 - temperature / 304.1282;
    const sum =
      -1.7074879 * x ** 0.34 -
      0.8227467 * x ** 0.5 -
      4.6008549 * x -
      10.111178 * x ** (7 / 3) -
      29.742252 * x ** (14 / 3);
    return 10624.9 * Math.exp(sum);
  },
};

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
    // 0.0372 is published; with this the equation of state meets the reference one within 0.25 %.
    acentric: 0.034,
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
    saturation: carbonDioxide,
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

/** Below this reduced temperature the compressibility is taken at it: there only thin gas is met. */
const LEAST_REDUCED = 1.15;
/** Mol per m3 at ANR. */
export const ANR_MOLES = ANR.pressure / (MOLAR_GAS_CONSTANT * ANR.temperature);
/** Rise of the vapour pressure with more liquid, as a share: none in nature, a trace for the solver. */
const WET_RISE = 1e-3;

const factor: Compressibility = { z: 1, byDensity: 0, byTemperature: 0 };

/** Writes the pressure of `content` (m3 at ANR) in `volume` (m3) at `temperature` (K) into `out`. */
export function vesselPressure(
  gas: GasDefinition,
  volume: number,
  content: number,
  temperature: number,
  out: VesselPressure,
): void {
  const moles = ANR_MOLES / volume;
  const density = moles * content;
  if (gas.saturation === undefined) {
    dry(gas, density, temperature, out);
  } else {
    // The wet side has no closed slope: central difference in temperature.
    wet(gas, density, temperature * (1 + 1e-5), out);
    const warm = out.pressure;
    wet(gas, density, temperature * (1 - 1e-5), out);
    const slope = (warm - out.pressure) / (2e-5 * temperature);
    wet(gas, density, temperature, out);
    out.byTemperature = slope;
  }
  out.byGas *= moles;
}

/** Pressure of gas alone; `byGas` against density, Pa m3/mol. */
function dry(gas: GasDefinition, density: number, temperature: number, out: VesselPressure): void {
  const least = LEAST_REDUCED * gas.criticalTemperature;
  const cold = gas.saturation === undefined && temperature < least;
  compressibility(gas, density, cold ? least : temperature, factor);
  const rt = MOLAR_GAS_CONSTANT * temperature;
  out.pressure = density * rt * factor.z;
  out.byGas = rt * (factor.z + density * factor.byDensity);
  const bend = cold ? 0 : temperature * factor.byTemperature;
  out.byTemperature = density * MOLAR_GAS_CONSTANT * (factor.z + bend);
}

/** As {@link dry}, below the critical temperature no higher than the vapour pressure (latent heat is not counted). */
function wet(gas: GasDefinition, density: number, temperature: number, out: VesselPressure): void {
  const most = gas.saturation!;
  if (temperature >= gas.criticalTemperature) return dry(gas, density, temperature, out);
  const vapour = most.pressure(temperature);
  const full = most.density(temperature);
  if (density >= full) {
    const share = density / full;
    out.pressure = vapour * (1 + WET_RISE * (share - 1));
    out.byGas = (vapour * WET_RISE) / full;
    return;
  }
  // Joined to the vapour pressure where the vapour is saturated.
  dry(gas, full, temperature, out);
  const miss = vapour / out.pressure - 1;
  dry(gas, density, temperature, out);
  const share = density / full;
  const { pressure } = out;
  out.pressure = pressure * (1 + miss * share * share);
  out.byGas = out.byGas * (1 + miss * share * share) + (2 * pressure * miss * share) / full;
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
 * Bernoulli, which gives C = A sqrt((1 - b) / (rho0 p0)) and
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
  return area * Math.sqrt((1 - b) / (anrDensity(gases['dry-air']) * ANR.pressure));
}
