import {
  VIA_LINK,
  VIA_NODE,
  type AlsoSlots,
  type FrameOffsets,
  type FrameWiring,
} from './slots.js';
import { Passages } from './passages.js';
import type { PassageLaw } from '../define/index.js';
import type { Workspace } from './workspace.js';

/** Slots of further dependences, flat. */
class AlsoList {
  readonly via: Uint8Array;
  readonly attachment: Int32Array;
  readonly first: Int32Array;
  readonly second: Int32Array;

  constructor(slots: readonly AlsoSlots[]) {
    this.via = Uint8Array.from(slots, (s) => s.via);
    this.attachment = Int32Array.from(slots, (s) => s.attachment);
    this.first = Int32Array.from(slots, (s) => s.first);
    this.second = Int32Array.from(slots, (s) => s.second);
  }
}

/**
 * Where devices and network meet: whose pressures, states and travels every device instance
 * reads, and its flows, forces, rates and partial derivatives, one instance after the other,
 * scattered to the nodes, coordinates and the Jacobian after the equations have run. Flat loops
 * over flat arrays: what a device costs is its own equations.
 */
export class Exchange {
  /** Openings of passages and their slopes against the first further dependence. */
  readonly opening: Float64Array;
  readonly openingSlope: Float64Array;
  readonly flow: Float64Array;
  readonly byFrom: Float64Array;
  readonly byTo: Float64Array;
  readonly flowAlso: Float64Array;
  readonly force: Float64Array;
  readonly damping: Float64Array;
  readonly friction: Float64Array;
  readonly forceAlso: Float64Array;
  readonly frictionAlso: Float64Array;
  readonly rate: Float64Array;
  readonly rateAlso: Float64Array;
  /** The flow paths with a law. */
  readonly passages: Passages;
  /** Offsets of every instance, in order. */
  readonly offsets: readonly FrameOffsets[];

  /** State number of every own state. */
  private readonly states: Int32Array;
  /** Flows between two different nodes, and their nodes and slots. */
  private readonly live: Int32Array;
  private readonly liveFrom: Int32Array;
  private readonly liveTo: Int32Array;
  private readonly flowSlots: Int32Array;
  private readonly forceAttachment: Int32Array;
  private readonly forceAlsoAt: Int32Array;
  private readonly flowAlsoList: AlsoList;
  private readonly forceAlsoList: AlsoList;
  private readonly rateAlsoList: AlsoList;

  constructor(
    readonly w: Workspace,
    wirings: readonly FrameWiring[],
    laws: readonly (PassageLaw | undefined)[],
  ) {
    const flat = (pick: (f: FrameWiring) => Int32Array): Int32Array =>
      Int32Array.from(wirings.flatMap((f) => [...pick(f)]));
    const zeros = (n: number): Float64Array => new Float64Array(n);
    this.states = flat((f) => f.states);
    const from = flat((f) => f.flowFrom);
    const to = flat((f) => f.flowTo);
    const slots = flat((f) => f.flowSlots);
    this.live = Int32Array.from(from.keys()).filter((i) => from[i] !== to[i]);
    this.liveFrom = this.live.map((i) => from[i]);
    this.liveTo = this.live.map((i) => to[i]);
    this.flowSlots = Int32Array.from(
      [...this.live].flatMap((i) => [...slots.subarray(4 * i, 4 * i + 4)]),
    );
    this.forceAttachment = flat((f) => f.forceAttachment);
    const flowAlso = wirings.flatMap((f) => f.flowAlso);
    const forceAlso = wirings.flatMap((f) => f.forceAlso);
    const rateAlso = wirings.flatMap((f) => f.rateAlso);
    this.flowAlsoList = new AlsoList(flowAlso.flat());
    this.forceAlsoList = new AlsoList(forceAlso.flat());
    this.rateAlsoList = new AlsoList(rateAlso.flat());
    this.forceAlsoAt = starts(forceAlso);
    this.flow = zeros(from.length);
    this.opening = zeros(from.length);
    this.openingSlope = zeros(from.length);
    this.byFrom = zeros(from.length);
    this.byTo = zeros(from.length);
    this.force = zeros(this.forceAttachment.length);
    this.damping = zeros(this.forceAttachment.length);
    this.friction = zeros(this.forceAttachment.length);
    this.rate = zeros(this.states.length);
    this.flowAlso = zeros(this.flowAlsoList.via.length);
    this.forceAlso = zeros(this.forceAlsoList.via.length);
    this.frictionAlso = zeros(this.forceAlsoList.via.length);
    this.rateAlso = zeros(this.rateAlsoList.via.length);

    const flowStarts = starts(flowAlso);
    this.passages = new Passages(this, laws, from, to, flowStarts);
    const rateStarts = starts(rateAlso);
    const at = { state: 0, input: 0, flow: 0, force: 0 };
    this.offsets = wirings.map((f) => {
      const offsets: FrameOffsets = {
        ...at,
        flowAlso: flowStarts.slice(at.flow, at.flow + f.flowFrom.length + 1),
        forceAlso: this.forceAlsoAt.slice(at.force, at.force + f.forceAttachment.length + 1),
        rateAlso: rateStarts.slice(at.state, at.state + f.states.length + 1),
      };
      at.state += f.states.length;
      at.input += f.inputs.length;
      at.flow += f.flowFrom.length;
      at.force += f.forceAttachment.length;
      return offsets;
    });
  }

  /** Puts flows, forces and rates where they belong. */
  scatter(): void {
    const { w, flow, live, liveFrom, liveTo, rate, states, forceAttachment } = this;
    const { gain, drive, viscous, capacity, speed, ratio, attachmentCoordinate } = w;
    for (let i = 0; i < live.length; i++) {
      const q = flow[live[i]];
      gain[liveFrom[i]] -= q;
      gain[liveTo[i]] += q;
    }
    const rates = w.rate;
    for (let i = 0; i < states.length; i++) rates[states[i]] = rate[i];
    for (let i = 0; i < forceAttachment.length; i++) {
      const a = forceAttachment[i];
      if (a < 0) continue;
      const c = attachmentCoordinate[a];
      const r = ratio[a];
      const resist = this.damping[i] * r * r;
      drive[c] += this.force[i] * r - resist * speed[c];
      viscous[c] += resist;
      capacity[c] += this.friction[i] * (r < 0 ? -r : r);
    }
  }

  /** Puts the partial derivatives where they belong. */
  scatterPartials(): void {
    const { w, live, byFrom, byTo, flowSlots } = this;
    const partial = w.partial;
    for (let i = 0, f = 0; i < live.length; i++, f += 4) {
      const from = byFrom[live[i]];
      const to = byTo[live[i]];
      partial[flowSlots[f]] -= from;
      partial[flowSlots[f + 1]] -= to;
      partial[flowSlots[f + 2]] += from;
      partial[flowSlots[f + 3]] += to;
    }
    const flows = this.flowAlsoList;
    for (let i = 0; i < flows.via.length; i++) {
      const values = flows.via[i] === VIA_NODE ? partial : w.jacobianValues;
      let d = this.flowAlso[i];
      if (flows.via[i] === VIA_LINK) d *= w.ratio[flows.attachment[i]];
      values[flows.first[i]] -= d;
      values[flows.second[i]] += d;
    }
    for (let i = 0; i < this.forceAttachment.length; i++) this.scatterForce(i);
    const rates = this.rateAlsoList;
    for (let i = 0; i < rates.via.length; i++) {
      const values = rates.via[i] === VIA_NODE ? partial : w.jacobianValues;
      let d = this.rateAlso[i];
      if (rates.via[i] === VIA_LINK) d *= w.ratio[rates.attachment[i]];
      values[rates.first[i]] += d;
    }
  }

  private scatterForce(i: number): void {
    const { w } = this;
    const a = this.forceAttachment[i];
    if (a < 0) return;
    const c = w.attachmentCoordinate[a];
    const sign = w.direction[c];
    // A held coordinate's own rows are zero.
    if (sign === 0) return;
    const r = w.ratio[a];
    const size = r < 0 ? -r : r;
    const bend = w.curvature[a];
    const resist = this.damping[i] * r;
    w.driveByAngle[c] +=
      this.force[i] * bend -
      sign * this.friction[i] * (r < 0 ? -bend : bend) -
      2 * resist * bend * w.speed[c];
    w.driveBySpeed[c] -= resist * r;
    const slots = this.forceAlsoList;
    for (let k = this.forceAlsoAt[i]; k < this.forceAlsoAt[i + 1]; k++) {
      const d = this.forceAlso[k] * r - sign * this.frictionAlso[k] * size;
      if (slots.via[k] === VIA_NODE) w.partial[slots.first[k]] += d;
      else {
        const along = slots.via[k] === VIA_LINK ? d * w.ratio[slots.attachment[k]] : d;
        w.jacobianValues[slots.first[k]] += along * w.inverseInertia[c];
      }
    }
  }
}

function starts(lists: readonly (readonly AlsoSlots[])[]): Int32Array {
  const at = new Int32Array(lists.length + 1);
  lists.forEach((l, i) => (at[i + 1] = at[i] + l.length));
  return at;
}
