/**
 * Pressure loss of straight round lines.
 *
 * Laminar: Hagen-Poiseuille, f = 64/Re, below Re 2300. Turbulent: Colebrook-White above
 * Re 4000. Between, the two friction factors are blended smoothly (no theory holds there; a
 * smooth rise keeps the solver and the drop-against-flow curve honest). Swamee-Jain, the
 * explicit approximation, is kept to start the iteration and to compare with.
 */

/** End of laminar and start of fully turbulent flow, Reynolds number. */
export const LAMINAR_END = 2300;
export const TURBULENT_START = 4000;

const LN10 = Math.LN10;

/** A line and the oil in it, SI. */
export interface LineLoss {
  readonly bore: number;
  readonly length: number;
  /** Height of the roughness, m. */
  readonly roughness: number;
  /** Sum of the loss coefficients of bends and fittings. */
  readonly fittings: number;
  readonly density: number;
  /** Kinematic, m2/s. */
  readonly viscosity: number;
}

/** Swamee-Jain's explicit friction factor; `relative` = roughness / bore. */
export function swameeJain(reynolds: number, relative: number): number {
  return 0.25 / Math.log10(relative / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/** A friction factor with its slope against the Reynolds number; `inverseRoot` starts the next iteration. */
export interface FrictionPoint {
  /** 1/sqrt(f) of the turbulent law at the last evaluation; 0 before the first. */
  inverseRoot: number;
  factor: number;
  slope: number;
}

/** Evaluates friction (Darcy) at a Reynolds number > 0 into `point`; starts Colebrook-White from where it was. */
export function evaluateFriction(point: FrictionPoint, reynolds: number, relative: number): void {
  const laminar = 64 / reynolds;
  if (reynolds <= LAMINAR_END) {
    point.factor = laminar;
    point.slope = -laminar / reynolds;
    return;
  }
  let x = point.inverseRoot > 0 ? point.inverseRoot : 1 / Math.sqrt(swameeJain(reynolds, relative));
  let pull = 0;
  for (let i = 0; i < 20; i++) {
    const inner = relative / 3.7 + (2.51 * x) / reynolds;
    pull = (2 * 2.51) / (LN10 * reynolds * inner);
    const step = (x + (2 / LN10) * Math.log(inner)) / (1 + pull);
    x -= step;
    // Newton doubles the digits: what is left after this step is below rounding.
    if (Math.abs(step) < 1e-7 * x) break;
  }
  point.inverseRoot = x;
  const turbulent = 1 / (x * x);
  const turbulentSlope = (-2 * turbulent * pull) / (reynolds * (1 + pull));
  if (reynolds >= TURBULENT_START) {
    point.factor = turbulent;
    point.slope = turbulentSlope;
    return;
  }
  const width = TURBULENT_START - LAMINAR_END;
  const z = (reynolds - LAMINAR_END) / width;
  const share = z * z * (3 - 2 * z);
  point.factor = (1 - share) * laminar + share * turbulent;
  point.slope =
    ((share - 1) * laminar) / reynolds +
    share * turbulentSlope +
    ((6 * z * (1 - z)) / width) * (turbulent - laminar);
}

function frictionAt(reynolds: number, relative: number): FrictionPoint {
  const point = { inverseRoot: 0, factor: 0, slope: 0 };
  evaluateFriction(point, reynolds, relative);
  return point;
}

/** Colebrook-White friction factor (Darcy), Re > 2300; `relative` = roughness / bore. */
export function colebrook(reynolds: number, relative: number): number {
  return 1 / frictionAt(reynolds, relative).inverseRoot ** 2;
}

/** Friction factor (Darcy) in all regimes. */
export function frictionFactor(reynolds: number, relative: number): number {
  return frictionAt(reynolds, relative).factor;
}

/** Reynolds number of a flow (m3/s) in a line. */
export function reynoldsOf(flow: number, line: LineLoss): number {
  return (4 * flow) / (Math.PI * line.bore * line.viscosity);
}

/** Flow, m3/s, of a Reynolds number in a line. */
export function flowOf(reynolds: number, line: LineLoss): number {
  return (reynolds * Math.PI * line.bore * line.viscosity) / 4;
}

/** Loss, Pa, at a Reynolds number > 0. */
function dropAt(reynolds: number, line: LineLoss): number {
  const v = (reynolds * line.viscosity) / line.bore;
  const f = frictionFactor(reynolds, line.roughness / line.bore);
  return 0.5 * line.density * v * v * ((f * line.length) / line.bore + line.fittings);
}

/** Pressure loss, Pa, of a flow (m3/s, signed). */
export function lineDrop(flow: number, line: LineLoss): number {
  return flow === 0 ? 0 : Math.sign(flow) * dropAt(reynoldsOf(Math.abs(flow), line), line);
}

/** Slope of the loss against the flow, Pa s/m3, at a flow > 0. */
export function lineDropSlope(flow: number, line: LineLoss): number {
  const re = reynoldsOf(flow, line);
  const relative = line.roughness / line.bore;
  const ratio = line.length / line.bore;
  const perFlow = 4 / (Math.PI * line.bore * line.viscosity);
  const scale = (0.5 * line.density * line.viscosity * line.viscosity) / (line.bore * line.bore);
  const { factor, slope } = frictionAt(re, relative);
  const whole = factor * ratio + line.fittings;
  return scale * (slope * ratio * re * re + 2 * re * whole) * perFlow;
}

/** Laminar conductance (Hagen-Poiseuille), m3/(s Pa): pi d^4 / (128 mu L). */
export function laminarConductance(line: LineLoss): number {
  return (Math.PI * line.bore ** 4) / (128 * line.viscosity * line.density * line.length);
}

/**
 * Turbulent flow at a given friction drop (Pa, > 0) without iteration: Re sqrt(f) depends on
 * the drop alone, so Colebrook-White gives the flow at once. Fittings not counted; valid where
 * the result's Reynolds number is above 4000.
 */
export function turbulentFlow(drop: number, line: LineLoss): number {
  const v = Math.sqrt((2 * line.bore * drop) / (line.density * line.length));
  const inner = line.roughness / (3.7 * line.bore) + (2.51 * line.viscosity) / (line.bore * v);
  return -2 * v * Math.log10(inner) * 0.25 * Math.PI * line.bore * line.bore;
}

/** Flow, m3/s (signed), at a pressure drop, Pa, in all regimes and with fittings. */
export function lineFlow(drop: number, line: LineLoss): number {
  if (drop === 0) return 0;
  const size = Math.abs(drop);
  const laminar = laminarConductance(line) * size;
  const simple = line.fittings === 0;
  if (simple && reynoldsOf(laminar, line) <= LAMINAR_END) return Math.sign(drop) * laminar;
  const turbulent = turbulentFlow(size, line);
  if (simple && reynoldsOf(turbulent, line) >= TURBULENT_START) return Math.sign(drop) * turbulent;
  // The loss rises monotonically with flow: Newton, kept inside a shrinking bracket.
  let low = 0;
  let high = laminar;
  let q = Math.min(Math.max(turbulent, 1e-6 * laminar), laminar);
  for (let i = 0; i < 60; i++) {
    const miss = lineDrop(q, line) - size;
    if (miss > 0) high = q;
    else low = q;
    if (Math.abs(miss) <= 1e-13 * size) break;
    const next = q - miss / lineDropSlope(q, line);
    q = next > low && next < high ? next : 0.5 * (low + high);
  }
  return Math.sign(drop) * q;
}
