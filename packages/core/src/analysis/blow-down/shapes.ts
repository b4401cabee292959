import type { ParameterValue, Quantity, Timing } from '../../define/index.js';

/** Which charges and temperatures to look at, and a third parameter if wanted. */
export interface BlowDownRanges {
  /** Charges as the gauge shows them at the bottle's own charge temperature, Pa gauge, rising. */
  readonly charge: readonly number[];
  /** Temperatures of oil, gas and walls, K, rising. */
  readonly temperature: readonly number[];
  /** Another parameter, named as in a card's `set`: a map for each value. */
  readonly third?: { readonly path: string; readonly values: readonly number[] };
}

/** The conditions of one run. */
export interface BlowDownCondition {
  /** Pa gauge, at the bottle's charge temperature. */
  readonly charge: number;
  /** K */
  readonly temperature: number;
  readonly third?: { readonly path: string; readonly value: ParameterValue };
}

/** How one leg fared. */
export interface BlowDownLeg {
  readonly unit: string;
  readonly locked: boolean;
  /** From the pull of the handle to the lock, s; NaN when it never locked. */
  readonly time: number;
  /** Least of moment available less moment needed while it had to move, N m; NaN when no lock let it. */
  readonly margin: number;
  /** Where that was: angle of the leg, rad, and the two moments, N m, towards down. */
  readonly at: number;
  readonly available: number;
  readonly needed: number;
}

export interface BlowDownCell extends BlowDownCondition {
  readonly verdict: 'locked' | 'not locked' | 'failed';
  readonly legs: readonly BlowDownLeg[];
  /** Gas left in the bottle, share of its charge, and its gauge pressure at the end, Pa. */
  readonly gasLeft: number;
  readonly endPressure: number;
  /** False where it was filled in from its neighbours. */
  readonly computed: boolean;
  /** Why the run failed, where it did. */
  readonly why?: string;
}

export interface BlowDownMap {
  readonly card: string;
  readonly ranges: BlowDownRanges;
  /** Third parameter slowest, then temperature, charge fastest; undefined where it was cancelled before. */
  readonly cells: readonly (BlowDownCell | undefined)[];
  /** How many were run. */
  readonly runs: number;
  /** False when it was cancelled. */
  readonly whole: boolean;
}

/** Moments on a leg over its travel in one run. */
export interface MomentCurve {
  readonly unit: string;
  readonly leg: string;
  /** In the order of time, from the handle on. */
  readonly points: readonly MomentPoint[];
}

export interface MomentPoint {
  /** s, rad */
  readonly t: number;
  readonly angle: number;
  /** Moment of the actuators' extend sides towards down, N m. */
  readonly available: number;
  /** What holds it back: weight and springs against it, friction, pressure left on the up side, N m. */
  readonly needed: number;
  /** Gauge pressure of the bottle, Pa. */
  readonly bottle: number;
  /** True while a lock holds the leg, and while it stands at its down stop. */
  readonly held: boolean;
}

/** What the gauge of a bottle must show for the same mass of gas. */
export interface ChargeTable {
  readonly bottle: string;
  readonly gas: string;
  /** m3 */
  readonly volume: number;
  /** Charge (Pa gauge) at a temperature (K) that the table stands for. */
  readonly charge: number;
  readonly chargeTemperature: number;
  readonly rows: readonly { readonly temperature: number; readonly pressure: number }[];
}

/** The least charge with which every leg still locks. */
export interface MinimumCharge {
  readonly card: string;
  /** Pa gauge at the bottle's charge temperature; NaN when no charge within its range does. */
  readonly charge: number;
  /** 'found'; 'always': even the least charge does; 'never': even the most does not. */
  readonly kind: 'found' | 'always' | 'never';
  readonly runs: number;
  /** The cell at that charge. */
  readonly cell: BlowDownCell;
}

/** A step of putting the system back into service. */
export interface ServiceStep {
  readonly step: string;
  /** Why, with what the run says. */
  readonly reason: Told;
}

/** Running text with figures in it (SI), to be shown in the reader's units. */
export type Told = readonly (string | { readonly value: number; readonly quantity: Quantity })[];

/** Whether the ramp in a leg's bay lets the tyre go when the shortening link is broken. */
export interface RampCase {
  readonly unit: string;
  /** Share of the strut's force along the travel that friction leaves; above zero the leg frees itself. */
  readonly margin: number;
  /** Moment towards down that this is at the top of the travel, N m; below zero: to be pulled out with. */
  readonly moment: number;
  /** True when the link is broken in this run. */
  readonly broken: boolean;
}

/** A normal swing before and after a blow-down whose gas nobody has bled. */
export interface FollowUp {
  readonly card: string;
  readonly sound: readonly Timing[];
  readonly gassed: readonly Timing[];
}

/** Plays conditions somewhere else, e.g. in workers; the order of answers does not matter. */
export interface BlowDownPool {
  play(
    conditions: readonly BlowDownCondition[],
    onCell: (index: number, cell: BlowDownCell) => void,
    signal?: { readonly aborted: boolean },
  ): Promise<void>;
}

export interface BlowDownOptions {
  /** Card with the blow-down; the first one that works a blow-down valve when absent. */
  readonly card?: string;
  readonly pool?: BlowDownPool;
  /** Share done, 0..1, and the cells known so far. */
  readonly onProgress?: (share: number, cells: readonly (BlowDownCell | undefined)[]) => void;
  readonly signal?: { readonly aborted: boolean };
}
