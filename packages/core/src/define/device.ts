import type { Frame, GuardFrame } from './frame.js';
import type { ParameterDefinitions, Parameters, Quantity, Shape } from './parameter.js';
import type { DrawingSymbol } from './symbol.js';

/** Facts about the run that a device may use when it prepares its constants. */
export interface Surroundings {
  /** Reference density of the oil at its temperature, kg/m3. */
  readonly density: number;
  /** Kinematic viscosity at its temperature, m2/s. */
  readonly viscosity: number;
  /** Bulk modulus of the oil without air, Pa. */
  readonly bulkModulus: number;
  /** Ambient pressure, Pa absolute. */
  readonly ambient: number;
  /** Oil temperature, K. */
  readonly temperature: number;
}

/**
 * Gas behind a piston or bladder: holding n of oil it presses with precharge (volume / (volume - n))^index.
 * Source: polytropic change of state (thermodynamics textbooks).
 */
export interface GasCushion {
  /** Pressure of the gas with no oil in, Pa absolute. */
  readonly precharge: number;
  /** Gas volume with no oil in, m3. */
  readonly volume: number;
  /** Polytropic index: 1 slow (isothermal) to 1.4 fast (adiabatic). */
  readonly index: number;
  /** Oil in it at the start, m3; none when absent. */
  readonly content?: number;
}

/** A closed vessel of gas (bottle): charged once, then soaked to the run's temperature. */
export interface GasVessel {
  /** Name in the catalogue of gases. */
  readonly gas: string;
  /** Inside volume, m3. */
  readonly volume: number;
  /** Charge, Pa absolute, as read at `temperature`, K. */
  readonly pressure: number;
  readonly temperature: number;
  /**
   * Time constant of heat exchange between gas and wall, s: very short is isothermal, very long
   * adiabatic. The wall stays at the run's temperature.
   */
  readonly exchange: number;
}

export interface PortDefinition {
  readonly title: string;
  /** Fixed oil volume the device adds to the node at this port, m3; a function of the parameters where it varies. */
  readonly volume: number | ((p: Parameters) => number);
  /** Wall compliance added to the node, m3/Pa (hoses); none when absent. */
  readonly compliance?: (p: Parameters, s: Surroundings) => number;
  /** Trapped air added to the node, m3 at ambient pressure; it stays where it is. */
  readonly pocket?: (p: Parameters) => number;
  /**
   * The node at this port is an oil space against a gas cushion: its pressure follows from the oil
   * in it alone. Only for optional ports that are left unconnected, so that the node is private.
   */
  readonly cushion?: (p: Parameters, s: Surroundings) => GasCushion;
  /**
   * The node at this port is the inside of a gas vessel, with its own temperature. Only for
   * optional ports that are left unconnected, so that the node is private.
   */
  readonly vessel?: (p: Parameters, s: Surroundings) => GasVessel;
  /** A gas port: a node all of whose ports are gas ports starts filled with gas at ambient pressure. */
  readonly dry?: boolean;
  /** May stay unconnected (then it is blanked off). */
  readonly optional?: boolean;
}

/** A mechanical connection to a coordinate (leg, door). */
export interface LinkDefinition {
  readonly title: string;
  /**
   * Travel against the coordinate's angle, from the scenario (geometry or table). `plain`
   * links read the angle itself.
   */
  readonly shape: 'travel' | 'plain';
  readonly optional?: boolean;
}

/** A chamber whose volume moves with a link: the network adds area x travel to the node's volume. */
export interface ChamberDefinition {
  readonly port: string;
  readonly link: string;
  /** Signed effective area, m2: positive when the volume grows with travel. */
  readonly area: (p: Parameters) => number;
}

export interface StateDefinition {
  readonly title: string;
  readonly unit: string;
  /** Size of a change that matters, for error control, SI. */
  readonly scale: number;
  readonly initial: number;
  /** Ports, states, links or rates of links (`rod.rate`) that its rate depends on. */
  readonly also?: readonly string[];
}

export interface InputDefinition {
  readonly title: string;
  /** Words the card may use; their index is the value seen by equations. A number input has `quantity` instead. */
  readonly choices?: readonly string[];
  readonly quantity?: Quantity;
  /** The initial value: index of the choice, or the number in SI; a function where a parameter gives it. */
  readonly initial: number | ((p: Parameters) => number);
}

/**
 * Law of a passage: an orifice, beside it a check valve, beside both a laminar leak,
 *
 *   q = open orifice(dp) + lift (1 or 1 - open) orifice'(dp) + leak dp
 *
 * `orifice` is medium/orifice's; `lift` rises smoothly (C1) from 0 to 1 between the check's crack
 * and full drops. The network evaluates all passages in one loop.
 */
export interface PassageLaw {
  /** Orifice constant, m3/(s sqrt Pa), and transition drop, Pa, of the full opening. */
  readonly constant: number;
  readonly transition: number;
  /** Share of it that is open, 0..1; `equations` may set it anew through `opening`. */
  readonly open: number;
  /** Laminar leak, m3/(s Pa). */
  readonly leak: number;
  readonly check?: {
    readonly constant: number;
    readonly transition: number;
    /** Drops at which it begins to open and is fully open, Pa. */
    readonly crack: number;
    readonly full: number;
    /** 1 opens for flow from `from` to `to`, -1 the other way. */
    readonly sense: 1 | -1;
    /** The check adds what the opening leaves (1 - open), as in a cushion. */
    readonly fills?: boolean;
  };
}

/**
 * Where gas is (behind the oil, or alone), it takes the same way as the oil would, by ISO 6358:
 * an opening of flow area Cd A passes, in volume at ANR (the standard reference atmosphere, ISO
 * 8778: 100 kPa, 20 degC), `C p1 sqrt(T0 / T1)` when choked and less below, C following from Cd A
 * and the critical pressure ratio. So a passage for gas is declared like any other. The network
 * does this (network/gas); a device only names the ratio if it is known. The usual one is that of an
 * ideal nozzle (gamma 1.4), with which both the choked flow and small drops come out right.
 */
export const CRITICAL_RATIO = 0.528;

/**
 * A way oil can take through the device. `also` names states, links (their travel), rates of links
 * (`rod.rate`) or further ports the flow depends on.
 */
export interface FlowDefinition {
  readonly from: string;
  readonly to: string;
  readonly also?: readonly string[];
  /** Its law; without one, `equations` gives the flow. */
  readonly law?: (p: Parameters, s: Surroundings) => PassageLaw;
  /** Adds energy (pump, supply) rather than dissipating it. */
  readonly source?: boolean;
  /** Has inertia: the flow is a state, and may run up a pressure for a while. */
  readonly inertial?: boolean;
  /** Critical pressure ratio of gas through it (ISO 6358), 0.1 to 0.6; `CRITICAL_RATIO` when absent. */
  readonly criticalRatio?: (p: Parameters) => number;
  /** What a mechanic calls it, for traces; without it the path's name is used. */
  readonly title?: string;
}

/** A force on a link; `also` names ports, states, links (its own too) or rates of links (`leg.rate`) it depends on. */
export interface ForceDefinition {
  readonly link: string;
  readonly also?: readonly string[];
}

/**
 * What a device says to others by wire: a number (0 or 1, or the index of a choice) that depends on
 * its mode, its constants and its inputs alone, so that it changes at transitions only.
 */
export interface SignalDefinition {
  readonly title: string;
  readonly value: (d: GuardFrame) => number;
}

/**
 * A guard: fires when `when` becomes greater than zero. Level semantics on a half-open
 * interval: a guard that is already above zero when its mode is entered fires at once.
 */
export interface Guard {
  readonly to: string;
  readonly when: (d: GuardFrame) => number;
  /** The cause written into the log: a clause, e.g. 'pressure at the release port above the release pressure'. */
  readonly cause: string;
  /** Ports, links or inputs read by the guard; the log traces the cause through them. */
  readonly reads?: readonly string[];
}

/** A guard on the clock: fires `after` seconds in the mode, hit exactly. */
export interface Timer {
  readonly to: string;
  readonly after: (d: GuardFrame) => number;
  readonly cause: string;
}

export interface ModeDefinition {
  readonly title: string;
  readonly guards?: readonly Guard[];
  readonly timers?: readonly Timer[];
  /** New values of own states on entry (after the transition), index by index; return without writing to keep them. */
  readonly enter?: (d: GuardFrame, states: Float64Array) => void;
  /**
   * For locks: the bounds this mode puts on the named link, in the link's own measure (rad, or m
   * for a link with travel); -Infinity / Infinity when free on that side.
   */
  readonly bounds?: {
    readonly link: string;
    readonly low?: (d: GuardFrame) => number;
    readonly high?: (d: GuardFrame) => number;
  };
  /**
   * Longest step from here while in this mode, s: for own motions that change the network within less than
   * the solver might stride over. Asked at the start of every step.
   */
  readonly longestStep?: (d: GuardFrame) => number;
  /** Counts as 'working' for the order chart's bars (a valve shifting, a lock released ...). */
  readonly active?: boolean;
}

/** What a device is for; monitors and phases find devices by role, never by kind. */
export type Role =
  | 'supply'
  | 'hand-supply'
  | 'reservoir'
  | 'relief'
  | 'selector'
  | 'sequence-valve'
  | 'line'
  | 'actuator'
  | 'accumulator'
  | 'switch'
  | 'control'
  | 'coupling'
  | 'gas-supply'
  | 'blow-down'
  | 'shuttle'
  | 'dump'
  | 'uplock'
  | 'downlock'
  | 'leg'
  | 'door'
  | 'other';

/** Extra reading of a device, computed from a frame when traces are sampled (never in the loop). */
export interface ReadingDefinition {
  readonly title: string;
  readonly quantity: Quantity;
  readonly value: (d: GuardFrame) => number;
}

/**
 * A device of the hydraulic, mechanical or electrical system, as data plus pure functions.
 * One file each; see component/orifice.ts for the plainest.
 */
export interface DeviceDefinition {
  /** Name in scenarios, kebab-case, equal to the file's name. */
  readonly kind: string;
  readonly title: string;
  /** What it is and when to use another, a sentence or two. */
  readonly summary: string;
  /** Source of the equations. */
  readonly source: string;
  readonly role: Role;
  readonly parameters: ParameterDefinitions;
  readonly ports: Readonly<Record<string, PortDefinition>>;
  readonly links?: Readonly<Record<string, LinkDefinition>>;
  readonly chambers?: readonly ChamberDefinition[];
  readonly states?: Readonly<Record<string, StateDefinition>>;
  readonly inputs?: Readonly<Record<string, InputDefinition>>;
  readonly flows?: Readonly<Record<string, FlowDefinition>>;
  readonly forces?: Readonly<Record<string, ForceDefinition>>;
  readonly readings?: Readonly<Record<string, ReadingDefinition>>;
  /** What it tells others; the first is meant where only the device is named. */
  readonly signals?: Readonly<Record<string, SignalDefinition>>;
  /**
   * What the scenario's figures decide: modes, inputs and signals (a controller's table), paths and
   * forces that a sound device does not have (a pinhole).
   */
  readonly tailor?: (
    p: Parameters,
  ) => Partial<Pick<DeviceDefinition, 'modes' | 'inputs' | 'signals' | 'flows' | 'forces'>>;
  /** Energy its forces on links have stored (springs), J, for the energy account. */
  readonly energy?: (d: GuardFrame) => number;
  /** Power its forces between links turn to heat beyond `damping` and `friction`, W. */
  readonly dissipation?: (d: GuardFrame) => number;
  /** First mode is the initial one. Absent: one mode, `working`. */
  readonly modes?: Readonly<Record<string, ModeDefinition>>;
  /**
   * For reservoirs: these ports are one node, held at a constant pressure (Pa absolute) whatever
   * flows; `content` is the oil in it at the start, m3.
   */
  readonly vented?: {
    readonly ports: readonly string[];
    readonly pressure: (p: Parameters, s: Surroundings) => number;
    readonly content: (p: Parameters) => number;
  };
  /** Initial mode where a parameter decides it. */
  readonly initialMode?: (p: Parameters) => string;
  /** Checks between parameters: sentences about what is wrong, by parameter name. */
  readonly check?: (
    p: Parameters,
  ) => readonly { readonly parameter: string; readonly message: string }[];
  /** Constants for the loop from parameters and surroundings. Called once per run. */
  readonly prepare: (p: Parameters, s: Surroundings) => Float64Array;
  /** Flows, forces and rates with their partial derivatives. Allocates nothing. Absent: nothing flows. */
  readonly equations?: (d: Frame) => void;
  readonly symbol: DrawingSymbol;
}

/** Sampled coordinate data of a mechanism: what the network needs to move it. */
export interface CoordinateData {
  /** Ends of travel, rad. */
  readonly low: number;
  readonly high: number;
  /** Moment of inertia against angle, kg m2 (constant when the shape is flat). */
  readonly inertia: Shape;
  /** Static moment against angle without friction, N m, positive towards `high`. */
  readonly moment: Shape;
  /**
   * Moment per unit dynamic pressure, m3, positive towards `high`, under an angle of sideslip, rad
   * (positive: the wind comes from the right); absent: no airload.
   */
  readonly airload?: (sideslip: number) => Shape;
  /** Viscous damping, N m s/rad; against angle where it varies. */
  readonly damping: number | Shape;
  /** Coulomb friction moment, N m, against angle where it varies, and its static over kinetic ratio (>= 1). */
  readonly friction: number | Shape;
  readonly staticRatio: number;
  /** Coefficient of restitution at the end stops, 0..1. */
  readonly restitution: number;
  /** Starting angle, rad. */
  readonly initial: number;
}

/**
 * A mechanism with one coordinate (leg, door). Motion, sticking, end stops and locks are the
 * machine's business; the file gives the data.
 */
export interface MechanismDefinition {
  readonly kind: string;
  readonly title: string;
  readonly summary: string;
  readonly source: string;
  readonly role: 'leg' | 'door' | 'other';
  readonly parameters: ParameterDefinitions;
  /** Words for the two ends of travel, low end first, e.g. ['down', 'up'] or ['closed', 'open']. */
  readonly ends: readonly [string, string];
  readonly check?: (
    p: Parameters,
  ) => readonly { readonly parameter: string; readonly message: string }[];
  readonly coordinate: (p: Parameters) => CoordinateData;
  /** Where the parts are at an angle, for drawings and clearances. */
  readonly outline: (p: Parameters) => Outline;
  readonly symbol: DrawingSymbol;
}

/**
 * Where the parts of a mechanism are, as sampled or closed-form functions of its angle.
 * Axes: x aft, y right, z up, metres, from the aircraft datum of the scenario.
 */
export interface Outline {
  readonly shape: 'leg' | 'door';
  /** Leg: pivot, axle and wheel; door: hinge line and free edge. Polylines and one optional tyre. */
  readonly at: (angle: number) => Placement;
}

export interface Point3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface Placement {
  /** Polyline of the part, pivot or hinge first. */
  readonly line: readonly Point3[];
  /** Second edge of a panel (doors), same length as `line`; absent for legs. */
  readonly edge?: readonly Point3[];
  /** The tyre: centre, unit axle direction, outside radius and width, m. */
  readonly tyre?: {
    readonly centre: Point3;
    readonly axle: Point3;
    readonly radius: number;
    readonly width: number;
  };
}
