/** What the bay draws beside legs and doors: plain data. Angles in rad, lengths in m. */

/** A hook or plunger that holds a part and is no unit's own lock: a door's hook. */
export interface CatchFacts {
  readonly device: string;
  readonly on: string;
  /** Where it holds, within the part's travel. */
  readonly at: number;
}

/** The plunger of a sequence valve. */
export interface PlungerFacts {
  readonly device: string;
  /** The leg or door that pushes it. */
  readonly on: string;
  /** Where the plunger is touched; beyond it, towards the high or the low end, it is pushed. */
  readonly touch: number;
  readonly high: boolean;
  /** Distance of the striker from the pivot or hinge. */
  readonly arm: number;
}

/** A folding brace: bars between a point of the structure and one on the leg. */
export interface BraceFacts {
  readonly device: string;
  readonly on: string;
  readonly upper: number;
  readonly lower: number;
  /** Leg pivot to the lower end, along the leg. */
  readonly onLeg: number;
  /** Upper end, aircraft axes. */
  readonly end: readonly [number, number, number];
}

/** One part moves another: a chain (by its device), or a linkage. */
export interface DriveFacts {
  /** Empty for a linkage, which is no device of its own. */
  readonly device: string;
  readonly from: string;
  readonly to: string;
}

/** A ramp that guides a tyre which comes up too far out. */
export interface RampFacts {
  readonly on: string;
  /** Points x, y, z of its face. */
  readonly face: Float32Array;
  /** From here up the tyre is pressed on it; absent while the shortening link is whole. */
  readonly bears?: number;
}

/** How near two parts come to each other. */
export interface ClearanceFacts {
  readonly unit: string;
  /** A part, and another or words for a side of the well. */
  readonly between: readonly [string, string];
  /** Seen along the aircraft: points are (y, z); or from the side: (x, z). */
  readonly plane: 'transverse' | 'lengthwise';
  readonly asked: number;
  /** Doors that meet by design: near each other whenever they are closed. */
  readonly meets: boolean;
  /** Nearest of all. */
  readonly least: { readonly t: number; readonly gap: GapFacts };
  /** For each look at the run: distance, point on the one, point on the other; NaN where they are far apart. */
  readonly gaps: Float32Array;
}

export interface GapFacts {
  readonly distance: number;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** Numbers to a look in `ClearanceFacts.gaps`. */
export const GAP_SIZE = 5;

/** How near parts come to each other along a run; worked out with its flags, after the picture. */
export interface Approaches {
  readonly clearances: readonly ClearanceFacts[];
  /** When clearances were looked at, s. */
  readonly looks: Float64Array;
}

export interface BayFacts {
  readonly catches: readonly CatchFacts[];
  readonly plungers: readonly PlungerFacts[];
  readonly braces: readonly BraceFacts[];
  readonly drives: readonly DriveFacts[];
  readonly ramps: readonly RampFacts[];
}
