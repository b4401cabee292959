/**
 * Where a partial derivative of a device goes. `node` dependences land in pressure partials
 * (turned into state partials once per Jacobian); `state` and `link` ones go straight into the
 * Jacobian's values, a link's times its ratio.
 */
export type Via = 0 | 1 | 2;
export const VIA_NODE = 0;
export const VIA_STATE = 1;
export const VIA_LINK = 2;

/** Slots of one declared dependence: of the `from` row and of the `to` row (rows: `to` unused). */
export interface AlsoSlots {
  readonly via: Via;
  /** Attachment whose ratio multiplies (links), else 0. */
  readonly attachment: number;
  readonly first: number;
  readonly second: number;
}

/** Indices of one device instance, made by the compiler. */
export interface FrameWiring {
  readonly nodes: Int32Array;
  /** Attachment per link, -1 when the link hangs on nothing. */
  readonly attachments: Int32Array;
  readonly states: Int32Array;
  readonly inputs: Int32Array;
  /** Four pressure-partial slots per flow: from/from, from/to, to/from, to/to. */
  readonly flowSlots: Int32Array;
  readonly flowFrom: Int32Array;
  readonly flowTo: Int32Array;
  readonly flowAlso: readonly (readonly AlsoSlots[])[];
  /** Attachment per force, -1 when its link hangs on nothing. */
  readonly forceAttachment: Int32Array;
  readonly forceAlso: readonly (readonly AlsoSlots[])[];
  readonly rateAlso: readonly (readonly AlsoSlots[])[];
}

/** Where a device instance's own numbers begin in the exchange's arrays. */
export interface FrameOffsets {
  readonly state: number;
  readonly input: number;
  readonly flow: number;
  readonly force: number;
  readonly flowAlso: Int32Array;
  readonly forceAlso: Int32Array;
  readonly rateAlso: Int32Array;
}

/** Direct places become slots; pressure entries stay as they are. */
export function settle(a: AlsoSlots, slot: readonly number[]): AlsoSlots {
  if (a.via === VIA_NODE) return a;
  return { ...a, first: slot[a.first], second: slot[a.second] };
}
