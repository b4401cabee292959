import type { Parameters, ParameterValue, Shape } from './parameter.js';

/**
 * A scenario after reading: every quantity in SI, every name resolved to text that exists.
 * Plain data, so it can be copied, patched and sent to a worker.
 */
export interface Scenario {
  /** Format version. */
  readonly wheelwell: 1;
  /** File name it came from, or `<text>`. */
  readonly file: string;
  readonly title: string;
  readonly note: string;
  readonly fluid: FluidChoice;
  readonly ambient: number;
  /** Equivalent airspeed, m/s; 0 in a hangar. */
  readonly airspeed: number;
  /** Angle of sideslip, rad; positive: the wind comes from the right. */
  readonly sideslip: number;
  /** Devices by name, in declared order (which is also the order of simultaneous transitions). */
  readonly components: Readonly<Record<string, ComponentEntry>>;
  /** Legs and doors by name, in declared order. */
  readonly mechanisms: Readonly<Record<string, MechanismEntry>>;
  /** Extra volume at named nodes, m3. */
  readonly nodes: Readonly<Record<string, NodeEntry>>;
  /** Gear units: which mechanisms and devices belong together, by side. */
  readonly units: Readonly<Record<string, UnitEntry>>;
  readonly limits: Limits;
  readonly rules: readonly RuleEntry[];
  readonly cards: Readonly<Record<string, Card>>;
}

export interface FluidChoice {
  /** Name in the fluid catalogue (medium/oil). */
  readonly kind: string;
  /** Oil temperature, K. */
  readonly temperature: number;
  /** Free (entrained) air, volume fraction at ambient pressure. */
  readonly freeAir: number;
  /** Viscosity as a share of what the oil's data say; 1 for the right oil. */
  readonly thickness: number;
  /** How much warmer the oil is than when it was shut in, K: what is trapped has grown (or, below 0, shrunk). */
  readonly warmedBy: number;
}

export interface ComponentEntry {
  readonly is: string;
  readonly note: string;
  readonly parameters: Parameters;
  /** Port name -> node name. */
  readonly ports: Readonly<Record<string, string>>;
  /** Link name -> what it hangs on. */
  readonly links: Readonly<Record<string, LinkEntry>>;
  /** Input name -> the signal of another device that sets it. */
  readonly signals: Readonly<Record<string, SignalEntry>>;
  /** Position in the circuit drawing, in modules of ISO 1219-1, x right, y up, when the author fixes it. */
  readonly place?: readonly [number, number];
}

/** A wire from another device's signal. */
export interface SignalEntry {
  readonly device: string;
  readonly signal: string;
}

export interface LinkEntry {
  /** Mechanism name. */
  readonly to: string;
  /** Travel (m) against the mechanism's angle (rad); absent for plain links. */
  readonly travel?: Shape;
}

export interface MechanismEntry {
  readonly is: string;
  readonly note: string;
  readonly parameters: Parameters;
  /** Set where a linkage or a taut chain from another mechanism moves it: it has no motion of its own. */
  readonly driven?: DrivenEntry;
}

/** A mechanism that follows another. */
export interface DrivenEntry {
  /** The mechanism that moves it (which may itself be driven). */
  readonly by: string;
  /** Its angle (rad) against that mechanism's angle (rad), within its own travel. */
  readonly angle: Shape;
}

export interface NodeEntry {
  readonly volume: number;
  /** Trapped air at ambient pressure, m3 (a pocket that stays where it is). */
  readonly air: number;
  readonly note: string;
}

/** A gear unit: one leg with its doors and locks. */
export interface UnitEntry {
  readonly side: 'left' | 'right' | 'centre' | 'nose' | 'tail';
  readonly leg: string;
  readonly doors: readonly string[];
  readonly uplock?: string;
  readonly downlock?: string;
  /** Sequence valves that serve the unit. */
  readonly sequence: readonly string[];
  readonly actuators: readonly string[];
  /** The well it goes into, for clearances; absent: not judged. */
  readonly bay?: BayEntry;
}

/** A wheel well as a box, metres from the aircraft datum; open below. */
export interface BayEntry {
  /** Underside of its roof. */
  readonly roof: number;
  /** Inboard and outboard wall (right positive). */
  readonly walls: readonly [number, number];
  /** Front and rear bulkhead (aft positive); none when absent. */
  readonly ends?: readonly [number, number];
}

/** Acceptance limits of the test; absent means the rule that needs it does not judge. SI. */
export interface Limits {
  readonly timeUp?: number;
  readonly timeDown?: number;
  readonly spread?: number;
  readonly arrivalSpeed?: number;
  readonly peakPressure?: number;
  readonly lineVelocity?: number;
  readonly residualPressure?: number;
  readonly clearance?: number;
  readonly [name: string]: number | undefined;
}

/** A test card: what the operator does, and the conditions. */
export interface Card {
  readonly title: string;
  readonly note: string;
  /** Oil temperature for this card, K; the fluid's own when absent. */
  readonly temperature?: number;
  /** Equivalent airspeed for this card, m/s; the scenario's own when absent. */
  readonly airspeed?: number;
  /** Angle of sideslip for this card, rad; the scenario's own when absent. */
  readonly sideslip?: number;
  /** How long the run lasts, s. */
  readonly duration: number;
  /** Parameter changes: `components.pump.speed` -> SI value. */
  readonly set: Readonly<Record<string, ParameterValue>>;
  /** Faults to apply. */
  readonly faults: readonly FaultEntry[];
  readonly steps: readonly CardStep[];
  /**
   * Gas at nodes at the start, m3 at ambient pressure (what a blow-down left, or a burst line let in);
   * 1 m3 or more where no oil is left at all.
   */
  readonly gas: Readonly<Record<string, number>>;
  /** Rule names that this card is expected to raise (golden tests; the page says so too). */
  readonly expect: readonly string[];
  /** Which angle each mechanism starts at, rad; their own initial when absent. */
  readonly start: Readonly<Record<string, number>>;
}

export interface FaultEntry {
  /** Fault name in the catalogue. */
  readonly fault: string;
  /** Device or mechanism it befalls, or `fluid`. */
  readonly on: string;
  /** 0..1 */
  readonly severity: number;
}

/** One action of the operator: at a time, or a delay after an event. */
export interface CardStep {
  /** Time, s (when `after` is absent), else delay after the event, s. */
  readonly at: number;
  readonly after?: EventPattern;
  readonly device: string;
  readonly input: string;
  /** Index of the choice, or number in SI. */
  readonly value: number;
  /** As written, for the log: 'up', '4 gal/min'. */
  readonly text: string;
}

/** Matches log entries: a device (or unit) entering a mode (or phase). */
export interface EventPattern {
  readonly device: string;
  readonly to: string;
}

/** A user's rule, same kinds as the built-in ones. */
export interface RuleEntry {
  readonly name: string;
  readonly kind: 'order' | 'within' | 'together' | 'never' | 'holds' | 'limit';
  readonly text: string;
  /** Kind-specific: events, conditions, channels. */
  readonly first?: EventPattern;
  readonly second?: EventPattern;
  readonly condition?: Condition;
  readonly during?: Condition;
  readonly from?: EventPattern;
  readonly channel?: string;
  readonly low?: number;
  readonly high?: number;
  /** Time or spread limit, s. */
  readonly limit?: number;
  readonly severity: 'caution' | 'fail';
}

/** A state of affairs: a device in a mode, or a channel above / below a value. */
export type Condition =
  | { readonly device: string; readonly in: string; readonly not?: boolean }
  | { readonly channel: string; readonly above?: number; readonly below?: number };
