/**
 * What passes between the page and the worker: plain data only, so that it can be copied
 * and its arrays transferred.
 */
import type {
  BayEntry,
  ChannelInfo,
  Edit,
  FaultEntry,
  Flag,
  Issue,
  LogEntry,
  ObservationConditions,
  Outcome,
  Quantity,
  Role,
  Statistics,
  Timing,
} from '@wheelwell/core';
import type { Approaches, BayFacts } from './bay-message.js';
import type { BlowDownFacts, Condition, FollowUp } from './blow-down-message.js';
import type { CircuitFacts } from './circuit-message.js';
import type { SparingPicture } from './sparing.js';

export type {
  BayEntry,
  ChannelInfo,
  Edit,
  FaultEntry,
  Flag,
  Issue,
  LogEntry,
  Outcome,
  Quantity,
  Severity,
  Statistics,
  Timing,
} from '@wheelwell/core';

/** The user's units. */
export type System = 'us' | 'metric';

/** How to show a quantity: `value * factor + shift`, then the unit. */
export interface Display {
  readonly factor: number;
  readonly shift: number;
  readonly unit: string;
}

/** A request: read the text, then simulate one of its cards. */
export interface RunRequest {
  readonly id: number;
  readonly file: string;
  readonly text: string;
  /** Card name; the first card when absent or unknown. */
  readonly card?: string;
  /** The faults to simulate; the card's own when absent. */
  readonly faults?: readonly FaultEntry[];
  /** Another charge and temperature than the card's. */
  readonly condition?: Condition;
  /** How the aircraft stood when a sheet was taken, in place of what the card says. */
  readonly stood?: ObservationConditions;
  /** Changes in force on top of the text; none when absent. */
  readonly edits?: readonly Edit[];
  /** No quick run first: what it shows for a moment could tell what is to come. */
  readonly exact?: boolean;
}

/** Asks for channels of a run that was made before. */
export interface SeriesRequest {
  readonly kind: 'series';
  readonly run: number;
  readonly names: readonly string[];
  /** The solver's own points, both sides of every event; else the ends of steps, which is quicker. */
  readonly fine: boolean;
}

/** Asks what a swing would be like after a blow-down that was made before. */
export interface AfterRequest {
  readonly kind: 'after';
  readonly run: number;
}

/** Asks for the exact run, and for its judgement, of which a quick one came first. */
export interface RefineRequest {
  readonly kind: 'refine';
  readonly run: number;
}

/** A channel over time: s (never falling; twice the same at a jump), SI. */
export interface Trace {
  readonly run: number;
  readonly fine: boolean;
  readonly t: Float32Array;
  readonly v: Float32Array;
}

export type Reply =
  /**
   * Of a quick run at first, without its judgement; then of the exact one, which `refines` that.
   * `interim`: a later request of the same test is under way.
   */
  | {
      readonly id: number;
      readonly kind: 'picture';
      readonly picture: Picture;
      readonly refines?: number;
      readonly interim?: boolean;
    }
  | {
      readonly id: number;
      readonly kind: 'issues';
      readonly file: string;
      readonly issues: readonly Issue[];
    }
  | { readonly id: number; readonly kind: 'failure'; readonly message: string }
  /** How a swing after the blow-down goes; none where the aircraft has no card for one. `id` is the run's. */
  | { readonly id: number; readonly kind: 'after'; readonly after: FollowUp | undefined }
  /** What there is of the channels asked for; `id` is the run's. */
  | {
      readonly id: number;
      readonly kind: 'series';
      readonly traces: readonly (readonly [name: string, trace: Trace])[];
    }
  /** Still at it; `share` of the card is done, 0..1. */
  | { readonly id: number; readonly kind: 'progress'; readonly share: number };

/** A reply on its way. */
export type Posted =
  | Exclude<Reply, { kind: 'picture' }>
  | (Omit<Extract<Reply, { kind: 'picture' }>, 'picture'> & { readonly picture: SparingPicture });

/** A device or mechanism as the page needs it. */
export interface DeviceFacts {
  readonly name: string;
  /** Title of its kind in the catalogue. */
  readonly title: string;
  readonly role: Role;
  readonly note: string;
  /** Modes that count as working, for bars. */
  readonly active: readonly string[];
  /** Mode at the start of the run; empty for a device with one mode. */
  readonly first: string;
  /** The operator tells the gear up or down by it. */
  readonly lever: boolean;
  /** Kinds of fault that can befall it. */
  readonly faults: readonly string[];
}

export interface UnitFacts {
  readonly name: string;
  readonly side: string;
  readonly leg: string;
  readonly doors: readonly string[];
  readonly uplock: string;
  readonly downlock: string;
  /** Sequence valves, actuators, and whatever else hangs on the unit's parts alone. */
  readonly others: readonly string[];
  /** The switches that its lights for the two ends are fed by. */
  readonly lights: Readonly<Record<'up' | 'down', readonly string[]>>;
  /** The well it goes into. */
  readonly bay?: BayEntry;
}

export interface FaultFacts {
  readonly kind: string;
  readonly title: string;
  /** What it is looked for under. */
  readonly group: string;
  /** No stopwatch or gauge shows it; an inspection does. */
  readonly silent?: boolean;
  readonly meaning: string;
  readonly shows: string;
  readonly confirm: string;
  readonly remedy: string;
  readonly caution: string;
  readonly worst: string;
}

export interface CardFacts {
  readonly name: string;
  readonly title: string;
  readonly note: string;
  readonly expect: readonly string[];
  readonly faults: readonly FaultEntry[];
}

/** Where a mechanism's parts are, sampled evenly from `low` to `high`; metres, x aft, y right, z up. */
export interface OutlineSamples {
  readonly mechanism: string;
  readonly shape: 'leg' | 'door';
  /** Words for the ends of travel, low first. */
  readonly ends: readonly [string, string];
  readonly low: number;
  readonly high: number;
  readonly samples: number;
  /** Points in `line` (and `edge`). */
  readonly points: number;
  /** samples x points x (x, y, z). */
  readonly line: Float32Array;
  /** The same for a panel's second edge; empty when there is none. */
  readonly edge: Float32Array;
  /** samples x (centre x, y, z, axle x, y, z, radius, width); empty when there is none. */
  readonly tyre: Float32Array;
}

/** An angle over time. */
export interface AngleSamples {
  readonly mechanism: string;
  /** rad at 0, tick, 2 tick ... */
  readonly v: Float32Array;
}

/** All that the page shows of one run. */
export interface Picture {
  /** Which run this is; channels are asked for by it. */
  readonly run: number;
  /** What can be asked for. */
  readonly channels: readonly ChannelInfo[];
  /** Pressure of the surrounding air, Pa: what gauges count from. */
  readonly ambient: number;
  readonly file: string;
  readonly title: string;
  readonly note: string;
  readonly card: string;
  readonly cards: readonly CardFacts[];
  /** The faults simulated. */
  readonly faults: readonly FaultEntry[];
  readonly catalogue: readonly FaultFacts[];
  /** Kinds of fault that can befall the oil. */
  readonly fluidFaults: readonly string[];
  readonly devices: readonly DeviceFacts[];
  readonly units: readonly UnitFacts[];
  readonly limits: Readonly<Record<string, number>>;
  /** Length of the card, s; `outcome.time` tells how far the run got. */
  readonly duration: number;
  readonly tick: number;
  readonly ticks: number;
  readonly outcome: Outcome;
  readonly log: readonly LogEntry[];
  readonly flags: readonly Flag[];
  /** False for a quick run: flags and clearances come with the exact one. */
  readonly judged: boolean;
  /** The changes in force on top of the file. */
  readonly edits: readonly Edit[];
  /** What they come to, by path: SI, or the word. */
  readonly figures: Readonly<Record<string, number | string | boolean>>;
  /** Where it was made under the conditions of a sheet instead of the card's. */
  readonly stood?: ObservationConditions;
  readonly timings: readonly Timing[];
  readonly statistics: Statistics;
  readonly angles: readonly AngleSamples[];
  readonly outlines: readonly OutlineSamples[];
  readonly circuit: CircuitFacts;
  readonly bay: BayFacts;
  readonly approaches: Approaches;
  readonly display: Readonly<Record<System, Readonly<Partial<Record<Quantity, Display>>>>>;
  /** Where the aircraft has an emergency bottle and a card that pulls its handle. */
  readonly blowDown?: BlowDownFacts;
  /** Time the simulation took, ms. */
  readonly elapsed: number;
}
