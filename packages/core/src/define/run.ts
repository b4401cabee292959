import type { Placement, Role } from './device.js';
import type { Outcome } from './outcome.js';
import type { Quantity } from './parameter.js';
import type { Scenario, Card } from './scenario.js';

/** One entry of the event log. */
export interface LogEntry {
  /** Position in the log. */
  readonly index: number;
  /** Time, s. */
  readonly t: number;
  /** Device, mechanism or unit. */
  readonly device: string;
  readonly from: string;
  readonly to: string;
  /** The cause in words: a clause. */
  readonly cause: string;
  /** Index of the log entry that brought this one about; -1 when none is known. */
  readonly by: number;
  /** What kind of thing changed: a device's mode, a mechanism's motion, a unit's phase, an operator's action, or a note of the machine (chatter). */
  readonly kind: 'mode' | 'motion' | 'phase' | 'operator' | 'note';
  /** Speed of arrival for motion entries that end at a stop, rad/s; 0 otherwise. */
  readonly speed: number;
}

/** A named quantity of a run. */
export interface ChannelInfo {
  /** Name, e.g. `left-leg.angle`, `up-line.pressure`, `relief.flow`. */
  readonly name: string;
  readonly title: string;
  readonly quantity: Quantity;
  /** Device, mechanism or node it belongs to. */
  readonly of: string;
}

/** Samples of one channel; `t` strictly rising, s. */
export interface Series {
  readonly t: Float64Array;
  readonly v: Float64Array;
}

/**
 * What a monitor may read: a log and channels. A simulated run and an imported recording
 * both implement it.
 */
export interface Evidence {
  readonly scenario: Scenario;
  readonly card: Card;
  readonly duration: number;
  readonly outcome: Outcome;
  readonly log: readonly LogEntry[];
  readonly channels: readonly ChannelInfo[];
  /**
   * A channel at its native resolution (solver step ends, midpoints and both sides of every
   * event for a run: independent of the tick). Undefined when there is no such channel.
   */
  series(channel: string): Series | undefined;
  /** What a device or mechanism is for; undefined for a name the scenario does not have. */
  role(name: string): Role | undefined;
  /**
   * Where a mechanism's parts are at an angle, rad; undefined when its geometry is not known
   * (no such mechanism, or an imported recording without a scenario's geometry).
   */
  outline(mechanism: string, angle: number): Placement | undefined;
}

/** An aircraft before anything is known of how it goes. */
export type Gear = Pick<Evidence, 'scenario' | 'role'>;

/** Severity of a flag: information (margin shown, all well), caution, fail. */
export type Severity = 'note' | 'caution' | 'fail';

/**
 * A judgement of one rule on one subject. `margin` is signed: positive is good, in
 * `marginQuantity`'s SI unit. Flags with positive margin are kept (severity 'note'), so that
 * 'nearly wrong' shows too.
 */
export interface Flag {
  readonly rule: string;
  readonly title: string;
  readonly severity: Severity;
  /** Span concerned, s. */
  readonly from: number;
  readonly to: number;
  readonly devices: readonly string[];
  readonly margin: number;
  readonly marginQuantity: Quantity;
  /** What happened, in words a student understands. */
  readonly explanation: string;
  /** What to look at next; defers to the aircraft's approved data. */
  readonly suggestion: string;
}

/** Work done by the solver, for benchmarks and for the curious. */
export interface Statistics {
  readonly states: number;
  readonly steps: number;
  readonly rejected: number;
  readonly evaluations: number;
  readonly jacobians: number;
  readonly transitions: number;
  readonly restarts: number;
}

/** Time up or down of a unit or of the whole gear; NaN when not reached. */
export interface Timing {
  readonly unit: string;
  readonly side: string;
  readonly direction: 'up' | 'down';
  /** Selector moved, s. */
  readonly start: number;
  /** Leg starts to move, s. */
  readonly moving: number;
  /** Leg locked, s. */
  readonly locked: number;
  /** Last door at its end, s; equals `locked` for a unit without doors. */
  readonly doors: number;
  /** From the selector to the last of lock and doors, s. */
  readonly total: number;
}

/** A finished run. */
export interface Run extends Evidence {
  readonly cardName: string;
  /** Length of a tick, s, and number of ticks. */
  readonly tick: number;
  readonly ticks: number;
  readonly tolerance: 'draft' | 'normal' | 'fine';
  readonly statistics: Statistics;
  readonly timings: readonly Timing[];
  readonly flags: readonly Flag[];
  /**
   * Gives its memory to the runs that come after it: for who makes many and keeps few. What was asked for before
   * stays; asking for anything else throws.
   */
  release(): void;
  /**
   * Some channels at the ends of steps only, quicker than {@link series} where few are wanted. A
   * channel that there is not is left out.
   */
  look(names: readonly string[]): ReadonlyMap<string, Series>;
  /** A channel at the ticks (0, tick, 2 tick, ... up to where the run got). */
  sampled(channel: string): Series | undefined;
}
