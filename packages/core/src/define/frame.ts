/**
 * What a guard or a transition may read of the network: one frame per device instance. All
 * values are SI. Indices are the positions of names in the device's own declaration (`ports`,
 * `links`, `states`, `inputs`), so that nothing is looked up by name in the loop.
 */
export interface GuardFrame {
  /** Constants made by `prepare`; the device decides what they mean. */
  readonly k: Float64Array;
  /** Index of the current mode in the device's `modes`. */
  readonly mode: number;
  /** Time since the current mode was entered, s. */
  sinceEntry(): number;
  /** Absolute pressure at a port, Pa. */
  pressure(port: number): number;
  /** Oil content (reference volume) of the node at a port, m3. */
  content(port: number): number;
  /** Gas at the node of a port, m3 at ANR (100 kPa, 20 degC); free air of the oil not counted. */
  gas(port: number): number;
  /** Temperature of that gas, K: a vessel's own, else the oil's. */
  gasTemperature(port: number): number;
  /** Value of one of the device's own states. */
  state(state: number): number;
  /** Value of an operator input (index of the choice, or the number). */
  input(input: number): number;
  /** Travel of a link, m: the link's shape at the coordinate it hangs on (or the angle itself, rad, without a shape). */
  travel(link: number): number;
  /** Rate of that travel, m/s (rad/s without a shape). */
  travelRate(link: number): number;
}

/**
 * What a device's equations see: what guards may read, and what they write, by position among
 * the device's `flows`, `forces` and `states`. The network implements it; device files only
 * call it.
 */
export interface Frame extends GuardFrame {
  /** False when only flows, forces and rates are wanted; partial derivatives may then be anything. */
  readonly partials: boolean;
  /** True when both ends of a flow path hang on the same node: nothing can flow there. */
  joined(path: number): boolean;
  /** Share of a passage (a path with a law) that is open, 0..1, and its slope against `also[0]`. */
  opening(path: number, open: number): void;
  openingSlope(path: number, slope: number): void;
  /**
   * Oil through a declared flow path, m3/s of reference volume, positive from its `from` to
   * its `to` port, with the partial derivatives against the two pressures.
   */
  flow(path: number, q: number, dqFrom: number, dqTo: number): void;
  /** Partial derivative of that flow against a further dependence (`also[extra]`). */
  flowAlso(path: number, extra: number, dq: number): void;
  /** Force along a link, N (moment, N m, without a shape), positive with rising travel. */
  force(force: number, value: number): void;
  /** Partial derivative of that force against `also[extra]`. */
  forceAlso(force: number, extra: number, d: number): void;
  /** Damping along a link: resists travelRate by `coefficient` N s/m. */
  damping(force: number, coefficient: number): void;
  /** Coulomb friction capacity along a link, N, with its partial derivatives against `also[extra]` through {@link frictionAlso}. */
  friction(force: number, value: number): void;
  frictionAlso(force: number, extra: number, d: number): void;
  /** Time derivative of an own state, with partial derivatives through {@link rateAlso}. */
  rate(state: number, value: number): void;
  rateAlso(state: number, extra: number, d: number): void;
}
