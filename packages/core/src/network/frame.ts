import type { DeviceDefinition, Frame, Guard, GuardFrame } from '../define/index.js';
import type { Workspace } from './workspace.js';

/**
 * Where a partial derivative of a device goes. `node` dependences land in pressure partials
 * (turned into state partials once per Jacobian); `state` and `link` ones go straight into the
 * Jacobian's values, a link's times its ratio.
 */
export const enum Via {
  node,
  state,
  link,
}

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

/** The frame of one device instance over a shared workspace. Nothing is allocated after construction. */
export class InstanceFrame implements Frame, GuardFrame {
  mode = 0;
  /** Time the mode was entered, s. */
  entered = 0;
  /** Guards of the current mode. */
  guards: readonly Guard[] = [];
  private readonly nodes: Int32Array;
  private readonly attachments: Int32Array;
  private readonly flowSlots: Int32Array;
  private readonly flowFrom: Int32Array;
  private readonly flowTo: Int32Array;
  private readonly forceAttachment: Int32Array;
  /** Flow of each path at the last evaluation, m3/s. */
  readonly flows: Float64Array;

  constructor(
    readonly name: string,
    readonly definition: DeviceDefinition,
    readonly k: Float64Array,
    private readonly w: Workspace,
    readonly wiring: FrameWiring,
  ) {
    this.nodes = wiring.nodes;
    this.attachments = wiring.attachments;
    this.flowSlots = wiring.flowSlots;
    this.flowFrom = wiring.flowFrom;
    this.flowTo = wiring.flowTo;
    this.forceAttachment = wiring.forceAttachment;
    this.flows = new Float64Array(wiring.flowFrom.length);
  }

  sinceEntry(): number {
    return this.w.t - this.entered;
  }
  pressure(port: number): number {
    return this.w.pressure[this.nodes[port]];
  }
  content(port: number): number {
    return this.w.content[this.nodes[port]];
  }
  state(state: number): number {
    return this.w.y[this.wiring.states[state]];
  }
  input(input: number): number {
    return this.w.inputs[this.wiring.inputs[input]];
  }
  travel(link: number): number {
    const a = this.attachments[link];
    return a < 0 ? 0 : this.w.travel[a];
  }
  travelRate(link: number): number {
    const a = this.attachments[link];
    return a < 0 ? 0 : this.w.ratio[a] * this.w.speed[this.w.attachmentCoordinate[a]];
  }

  flow(path: number, q: number, dqFrom: number, dqTo: number): void {
    const w = this.w;
    w.gain[this.flowFrom[path]] -= q;
    w.gain[this.flowTo[path]] += q;
    this.flows[path] = q;
    if (w.wantJacobian) {
      const slots = this.flowSlots;
      const partial = w.partial;
      const s = 4 * path;
      partial[slots[s]] -= dqFrom;
      partial[slots[s + 1]] -= dqTo;
      partial[slots[s + 2]] += dqFrom;
      partial[slots[s + 3]] += dqTo;
    }
  }

  flowAlso(path: number, extra: number, dq: number): void {
    const w = this.w;
    if (!w.wantJacobian) return;
    const slots = this.wiring.flowAlso[path][extra];
    const values = slots.via === Via.node ? w.partial : w.jacobianValues;
    const d = slots.via === Via.link ? dq * w.ratio[slots.attachment] : dq;
    values[slots.first] -= d;
    values[slots.second] += d;
  }

  force(force: number, value: number): void {
    const a = this.forceAttachment[force];
    if (a < 0) return;
    const w = this.w;
    const c = w.attachmentCoordinate[a];
    w.drive[c] += value * w.ratio[a];
    if (w.wantJacobian) w.driveByAngle[c] += value * w.curvature[a];
  }

  forceAlso(force: number, extra: number, d: number): void {
    const a = this.forceAttachment[force];
    if (a < 0 || !this.w.wantJacobian) return;
    this.addToMoment(this.wiring.forceAlso[force][extra], d * this.w.ratio[a], a);
  }

  damping(force: number, coefficient: number): void {
    const a = this.forceAttachment[force];
    if (a < 0) return;
    const w = this.w;
    const c = w.attachmentCoordinate[a];
    const r = w.ratio[a];
    w.drive[c] -= coefficient * r * r * w.speed[c];
    w.viscous[c] += coefficient * r * r;
    if (w.wantJacobian) {
      w.driveBySpeed[c] -= coefficient * r * r;
      w.driveByAngle[c] -= 2 * coefficient * r * w.curvature[a] * w.speed[c];
    }
  }

  friction(force: number, value: number): void {
    const a = this.forceAttachment[force];
    if (a < 0) return;
    const w = this.w;
    const c = w.attachmentCoordinate[a];
    const r = w.ratio[a];
    w.capacity[c] += value * (r < 0 ? -r : r);
    if (w.wantJacobian) {
      const bend = r < 0 ? -w.curvature[a] : w.curvature[a];
      w.driveByAngle[c] -= w.direction[c] * value * bend;
    }
  }

  frictionAlso(force: number, extra: number, d: number): void {
    const a = this.forceAttachment[force];
    const w = this.w;
    if (a < 0 || !w.wantJacobian) return;
    const c = w.attachmentCoordinate[a];
    const r = w.ratio[a];
    this.addToMoment(
      this.wiring.forceAlso[force][extra],
      -w.direction[c] * d * (r < 0 ? -r : r),
      a,
    );
  }

  private addToMoment(slots: AlsoSlots, value: number, attachment: number): void {
    const w = this.w;
    if (slots.via === Via.node) {
      w.partial[slots.first] += value;
    } else {
      const c = w.attachmentCoordinate[attachment];
      const d = slots.via === Via.link ? value * w.ratio[slots.attachment] : value;
      w.jacobianValues[slots.first] += d * w.inverseInertia[c];
    }
  }

  rate(state: number, value: number): void {
    this.w.rate[this.wiring.states[state]] = value;
  }

  rateAlso(state: number, extra: number, d: number): void {
    const w = this.w;
    if (!w.wantJacobian) return;
    const slots = this.wiring.rateAlso[state][extra];
    if (slots.via === Via.node) w.partial[slots.first] += d;
    else {
      w.jacobianValues[slots.first] +=
        slots.via === Via.link ? d * w.ratio[slots.attachment] : d;
    }
  }
}
