/** What was seen on an aircraft, as plain data: the counterpart of what a run says. SI, gauge pressures. */

/**
 * Moments of a swing, in the order a healthy unit has them; words of `Timing`, before them `unlocked` and
 * `opened`: doors that close behind the leg again stand open for it; and `light`: what the unit's light for the
 * end of its way is fed by has been made.
 */
export const TIMED = ['unlocked', 'opened', 'moving', 'locked', 'doors', 'light', 'total'] as const;
export type TimedEvent = (typeof TIMED)[number];

/** What a unit was seen to do, in words that a reading can be compared with. */
export const REMARKS = [
  'did not move',
  'stopped short',
  'moved by jerks',
  'drifts when neutral',
  'doors came open again',
  'slower than the other side',
  'faster than the other side',
] as const;
export type Remark = (typeof REMARKS)[number];

/** When a gauge is read; `after`: when it was left to itself for {@link ObservationConditions.leftFor}. */
export const GAUGE_MOMENTS = ['static', 'moving', 'dead-head', 'peak', 'after'] as const;
export type GaugeMoment = (typeof GAUGE_MOMENTS)[number];

export const SWING_DIRECTIONS = ['up', 'down', 'blow-down'] as const;
export type SwingDirection = (typeof SWING_DIRECTIONS)[number];

/** What is read at a supply: flow of a stand or pump, strokes of a hand pump, the two times of a regulator. */
export const SUPPLY_READINGS = [
  'moving-flow',
  'dead-head-flow',
  'strokes',
  'cut-out',
  'cut-in',
] as const;
export type SupplyReading = (typeof SUPPLY_READINGS)[number];

/** How long it is left where the sheet does not say, s: while somebody waits beside it (common practice, no source). */
export const LEFT_FOR = 60;

/** A hand on a stopwatch, s: about the time from seeing to pressing (common practice, no source). */
export const HAND_STOPWATCH = 0.2;

/** A time from the selector's move and how far it may be off, s. */
export interface ObservedTime {
  readonly at: number;
  readonly error: number;
}

/** What was timed of one unit, or of the whole gear. What is absent was not timed. */
export type ObservedTimes = Readonly<Partial<Record<TimedEvent, ObservedTime>>>;

/** A unit (or the whole gear) came to a moment: an entry of the order of events. */
export interface ObservedEvent {
  readonly unit: string;
  readonly event: TimedEvent;
}

/** One gauge: Pa gauge. `error`: how far a reading may be off. */
export type GaugeReadings = Readonly<Partial<Record<GaugeMoment | 'error', number>>>;

/**
 * One supply: m3/s while the gear moves and at dead-head; strokes until the gear is home (or was given
 * up); s until the regulator cuts out, and from there until it cuts in again.
 */
export type SupplyReadings = Readonly<Partial<Record<SupplyReading, number>>>;

/** How the aircraft stood. What is absent is not known. */
export interface ObservationConditions {
  readonly supplyFlow?: number;
  /** Pa gauge. */
  readonly supplyPressure?: number;
  /** Name in the catalogue of oils. */
  readonly fluid?: string;
  readonly temperature?: number;
  /** Nose up positive, rad. */
  readonly attitude?: number;
  readonly doors?: 'connected' | 'disconnected';
  /** Left to itself after the swing, selector in neutral and supply off, s. */
  readonly leftFor?: number;
}

/** A column of a recording: its heading in the file, and its unit where the heading does not tell. */
export interface ObservedColumn {
  readonly column: string;
  readonly unit?: string;
}

/** A file of samples taken during a swing. */
export interface RecordingEntry {
  readonly file: string;
  readonly time?: ObservedColumn;
  /** Channel of the simulation (`pressure.pressure`, `left-leg.angle`) -> column. */
  readonly columns: Readonly<Record<string, ObservedColumn>>;
  /** Time of the file at which the selector moved, s; looked for when absent. */
  readonly offset?: number;
}

/** One movement of the gear. */
export interface ObservedSwing {
  readonly direction: SwingDirection;
  /** What was otherwise than on the rest of the sheet. */
  readonly conditions: ObservationConditions;
  /** Unit, or `gear` for the whole -> times. */
  readonly times: Readonly<Record<string, ObservedTimes>>;
  /** What came after what, also where it was not timed. */
  readonly order: readonly ObservedEvent[];
  /** What was waited for and did not come. */
  readonly never?: readonly ObservedEvent[];
  /** Node the gauge is on -> readings. */
  readonly gauges: Readonly<Record<string, GaugeReadings>>;
  /** Stand, pump, hand pump or unloader -> readings. */
  readonly supply?: Readonly<Record<string, SupplyReadings>>;
  readonly remarks: Readonly<Record<string, readonly Remark[]>>;
  readonly recordings: readonly RecordingEntry[];
  readonly note: string;
}

/** What a look at one part has shown (see the catalogue of checks). */
export interface ObservedLook {
  /** Name of the check. */
  readonly check: string;
  /** Device, mechanism, unit, `fluid`, or `gear` for what is seen of the whole. */
  readonly on: string;
  /** Whether what it looks for was found. */
  readonly found: boolean;
}

export interface ObservationSheet {
  /** Title of the scenario; empty when the sheet does not say. */
  readonly aircraft: string;
  /** Its file, and the test card, as written; may be empty. */
  readonly scenario: string;
  readonly card: string;
  readonly date: string;
  readonly by: string;
  /** Of every time that has none of its own, s. */
  readonly readingError: number;
  readonly conditions: ObservationConditions;
  readonly swings: readonly ObservedSwing[];
  readonly looks?: readonly ObservedLook[];
  readonly note: string;
}

/** The whole gear among the units: as in the log. */
export const WHOLE_GEAR = 'gear';
