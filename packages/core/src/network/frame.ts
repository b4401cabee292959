import type { DeviceDefinition, Frame, Guard, GuardFrame } from '../define/index.js';
import type { Exchange } from './exchange.js';
import type { FrameOffsets, FrameWiring } from './slots.js';

/**
 * The frame of one device instance: a window on the exchange (see exchange.ts). Every method is
 * a load or a store, small enough to be inlined into the device's equations.
 */
export class InstanceFrame implements Frame, GuardFrame {
  mode = 0;
  /** Time the mode was entered, s. */
  entered = 0;
  /** Guards of the current mode. */
  guards: readonly Guard[] = [];
  private readonly portAt: number;
  private readonly stateAt: number;
  private readonly inputAt: number;
  private readonly linkAt: number;
  private readonly flowAt: number;
  private readonly forceAt: number;
  private readonly flowAlsoAt: Int32Array;
  private readonly forceAlsoAt: Int32Array;
  private readonly rateAlsoAt: Int32Array;

  constructor(
    readonly name: string,
    readonly definition: DeviceDefinition,
    readonly k: Float64Array,
    private readonly x: Exchange,
    readonly wiring: FrameWiring,
    at: FrameOffsets,
  ) {
    this.portAt = at.port;
    this.stateAt = at.state;
    this.inputAt = at.input;
    this.linkAt = at.link;
    this.flowAt = at.flow;
    this.forceAt = at.force;
    this.flowAlsoAt = at.flowAlso;
    this.forceAlsoAt = at.forceAlso;
    this.rateAlsoAt = at.rateAlso;
  }

  get partials(): boolean {
    return this.x.w.wantJacobian;
  }
  sinceEntry(): number {
    return this.x.w.t - this.entered;
  }
  joined(path: number): boolean {
    return this.wiring.flowFrom[path] === this.wiring.flowTo[path];
  }
  pressure(port: number): number {
    const x = this.x;
    return x.pressure[x.nodes[this.portAt + port]];
  }
  content(port: number): number {
    return this.x.w.content[this.wiring.nodes[port]];
  }
  state(state: number): number {
    const x = this.x;
    return x.w.y[x.states[this.stateAt + state]];
  }
  input(input: number): number {
    return this.x.w.inputs[this.inputAt + input];
  }
  travel(link: number): number {
    const x = this.x;
    return x.travel[x.attachments[this.linkAt + link]];
  }
  travelRate(link: number): number {
    const { w, attachments } = this.x;
    const a = attachments[this.linkAt + link];
    return w.ratio[a] * w.speed[w.attachmentCoordinate[a]];
  }
  /** Flow of a path at the last evaluation, m3/s. */
  flowOf(path: number): number {
    return this.x.flow[this.flowAt + path];
  }
  flow(path: number, q: number, dqFrom: number, dqTo: number): void {
    const i = this.flowAt + path;
    const x = this.x;
    x.flow[i] = q;
    x.byFrom[i] = dqFrom;
    x.byTo[i] = dqTo;
  }
  flowAlso(path: number, extra: number, dq: number): void {
    this.x.flowAlso[this.flowAlsoAt[path] + extra] = dq;
  }
  force(force: number, value: number): void {
    this.x.force[this.forceAt + force] = value;
  }
  forceAlso(force: number, extra: number, d: number): void {
    this.x.forceAlso[this.forceAlsoAt[force] + extra] = d;
  }
  damping(force: number, coefficient: number): void {
    this.x.damping[this.forceAt + force] = coefficient;
  }
  friction(force: number, value: number): void {
    this.x.friction[this.forceAt + force] = value;
  }
  frictionAlso(force: number, extra: number, d: number): void {
    this.x.frictionAlso[this.forceAlsoAt[force] + extra] = d;
  }
  rate(state: number, value: number): void {
    this.x.rate[this.stateAt + state] = value;
  }
  rateAlso(state: number, extra: number, d: number): void {
    this.x.rateAlso[this.rateAlsoAt[state] + extra] = d;
  }
}
