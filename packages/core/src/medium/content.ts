/**
 * The pressure of an oil node from what is in it.
 *
 * The state of a node is its oil **content** n: the volume its oil would take at ambient
 * pressure, m3. Flows are counted in the same reference volume, so oil is conserved to rounding
 * by any Runge-Kutta or Rosenbrock method (linear invariants), through cavitation and back.
 *
 * The node's volume V (dead volume plus area x stroke, plus wall compliance) holds the
 * compressed oil, the air dispersed in it and any trapped pocket. With q = p - p_vapour, d the
 * value of q at ambient pressure, beta the bulk modulus, alpha the free air by volume at
 * ambient, A a trapped pocket's volume at ambient and C the wall compliance:
 *
 *     V + C (q - d) = n (1 - (q - d) / beta) + d (n alpha + A) / q
 *
 * The first term is the linear secant compressibility, the last Boyle's law: bubbles of about a
 * millimetre exchange heat with the oil in some hundredths of a second, faster than a gear
 * chamber changes, so the air is isothermal (Rabie, Fluid Power Engineering, eq. 2.57 with
 * n = 1). The equation is quadratic in q and has exactly one positive root: absolute pressure
 * stays above the vapour pressure, a void is simply a large gas volume, and the map is smooth.
 */
export interface ContentLaw {
  /** Bulk modulus of the oil without air, Pa. */
  readonly bulkModulus: number;
  /** Ambient pressure, Pa absolute. */
  readonly ambient: number;
  /** Vapour pressure, Pa absolute. */
  readonly vapour: number;
  /** Free air, volume per volume of oil at ambient pressure. */
  readonly freeAir: number;
}

/** A node's own constants. */
export interface NodeLaw {
  /** Wall compliance, m3/Pa. */
  readonly compliance: number;
  /** Trapped air at ambient pressure, m3. */
  readonly pocket: number;
}

/** Content that gives `pressure` (Pa absolute, above the vapour pressure) in volume `volume`, m3. */
export function contentAt(
  law: ContentLaw,
  node: NodeLaw,
  volume: number,
  pressure: number,
): number {
  const d = law.ambient - law.vapour;
  const q = pressure - law.vapour;
  const room = volume + node.compliance * (q - d) - (d * node.pocket) / q;
  return room / (1 - (q - d) / law.bulkModulus + (d * law.freeAir) / q);
}

/** Pressure, Pa absolute, of content `n` in volume `volume`, m3. */
export function pressureAt(law: ContentLaw, node: NodeLaw, volume: number, n: number): number {
  const d = law.ambient - law.vapour;
  const a = node.compliance + n / law.bulkModulus;
  const b = volume - node.compliance * d - n * (1 + d / law.bulkModulus);
  const c = d * (n * law.freeAir + node.pocket);
  const root = Math.sqrt(b * b + 4 * a * c);
  return law.vapour + (b > 0 ? (2 * c) / (b + root) : (root - b) / (2 * a));
}

/** Enthalpy carried by a unit of reference volume at pressure p, J/m3 (zero at ambient): the integral of the specific volume over pressure. */
export function enthalpyAt(law: ContentLaw, pressure: number): number {
  const d = law.ambient - law.vapour;
  const q = pressure - law.vapour;
  return (
    (q - d) * (1 + d / law.bulkModulus) -
    (q * q - d * d) / (2 * law.bulkModulus) +
    d * law.freeAir * Math.log(q / d)
  );
}

/** Energy stored in a node, J: oil, air, walls; its differential is enthalpy dn - p dV. */
export function nodeEnergy(
  law: ContentLaw,
  node: NodeLaw,
  volume: number,
  n: number,
  pressure: number,
): number {
  const d = law.ambient - law.vapour;
  const q = pressure - law.vapour;
  // n h(p) - p V plus the integral of the node's own (trapped, wall) terms.
  const own = d * node.pocket * Math.log(q / d) - node.compliance * (0.5 * q * q - d * q);
  return n * enthalpyAt(law, pressure) - pressure * volume + own;
}
