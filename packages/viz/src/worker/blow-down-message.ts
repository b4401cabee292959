/** What passes between page and workers about the emergency bottle: plain data, arrays transferred. */
import type {
  Edit,
  BlowDownLeg,
  ChargeTable,
  FaultEntry,
  RampCase,
  ServiceStep,
} from '@wheelwell/core';

export type {
  BlowDownLeg,
  ChargeTable,
  FollowUp,
  RampCase,
  ServiceStep,
  Told,
} from '@wheelwell/core';

/** Under what a blow-down is played: Pa gauge at the bottle's charge temperature, and K. */
export interface Condition {
  readonly charge: number;
  readonly temperature: number;
}

/** Moments on one leg from the pull of the handle on; arrays of equal length, in the order of time. */
export interface CurveSamples {
  readonly unit: string;
  readonly leg: string;
  /** s, rad */
  readonly t: Float32Array;
  readonly angle: Float32Array;
  /** Towards down, N m. */
  readonly available: Float32Array;
  readonly needed: Float32Array;
  /** Gauge pressure of the bottle, Pa. */
  readonly bottle: Float32Array;
  /** 1 while a lock holds the leg. */
  readonly held: Uint8Array;
  /** Where least is in hand; -1 when a lock holds the leg all the time. */
  readonly worst: number;
}

/** How the run on show fared. */
export interface BlowDownRun {
  readonly condition: Condition;
  readonly verdict: 'locked' | 'not locked' | 'failed';
  readonly legs: readonly BlowDownLeg[];
  /** Share of the charge, and gauge pressure at the end, Pa. */
  readonly gasLeft: number;
  readonly endPressure: number;
  readonly curves: readonly CurveSamples[];
  readonly steps: readonly ServiceStep[];
  readonly ramps: readonly RampCase[];
}

/** What the page knows of an aircraft's bottle, and of the run on show where it pulls the handle. */
export interface BlowDownFacts {
  /** Cards that pull a handle. */
  readonly cards: readonly string[];
  /** What the card (or else the aircraft) has: charge, and the temperature of the run. */
  readonly own: Condition;
  /** At which the charge is read, K. */
  readonly chargeTemperature: number;
  readonly table: ChargeTable;
  readonly run?: BlowDownRun;
}

/** A map to be made. */
export interface MapRequest {
  readonly file: string;
  readonly text: string;
  readonly card: string;
  readonly faults: readonly FaultEntry[];
  readonly edits: readonly Edit[];
  /** Rising: Pa gauge, K. */
  readonly charge: readonly number[];
  readonly temperature: readonly number[];
  /** Where the least charge is looked for, K. */
  readonly at: number;
}

/** Page to worker. */
export type MapJob =
  /** Make the map; cells are played behind the ports. */
  | { readonly kind: 'map'; readonly request: MapRequest; readonly ports: readonly MessagePort[] }
  /** Play what comes in by the port, and first look for the least charge if asked. */
  | {
      readonly kind: 'player';
      readonly request: MapRequest;
      readonly port: MessagePort;
      readonly least: boolean;
    };

/** What a cell is. */
export const UNKNOWN = 0;
export const LOCKED = 1;
export const NOT_LOCKED = 2;
export const FAILED = 3;

/** A map as far as it is known; temperature slowest, charge fastest. */
export interface MapPicture {
  readonly charge: readonly number[];
  readonly temperature: readonly number[];
  readonly units: readonly string[];
  readonly verdict: Uint8Array;
  /** 1 where it was simulated, 0 where it was filled in from its neighbours. */
  readonly computed: Uint8Array;
  /** s and N m: for each unit one array of cells; NaN where there is none. */
  readonly time: readonly Float32Array[];
  readonly margin: readonly Float32Array[];
  /** Share of the charge. */
  readonly gasLeft: Float32Array;
}

/** The least charge with which every leg locks, at one temperature. */
export interface Least {
  readonly kind: 'found' | 'always' | 'never';
  /** Pa gauge at the bottle's charge temperature; NaN for 'never'. */
  readonly charge: number;
  readonly temperature: number;
}

/** Worker to page. */
export type MapReply =
  | { readonly kind: 'part'; readonly share: number; readonly map: MapPicture }
  | { readonly kind: 'whole'; readonly map: MapPicture; readonly runs: number }
  | { readonly kind: 'least'; readonly least: Least }
  | { readonly kind: 'broken'; readonly message: string };
