import type { DeviceDefinition, Frame, Guard } from '../define/index.js';
import type { Exchange } from './exchange.js';
import type { Workspace } from './workspace.js';
import type { FrameOffsets, FrameWiring } from './slots.js';

/**
 * The frame of one device instance: a window on the workspace and the exchange. Every method is a
 * load or a store, short enough that the engine inlines it whatever the size of the equations; a
 * call that is not inlined would put its fractions on the heap.
 */
export class InstanceFrame implements Frame {
  mode = 0;
  /** Time the mode was entered, s. */
  entered = 0;
  /** Guards of the current mode. */
  guards: readonly Guard[] = [];
  private readonly w: Workspace;
  /** The network's pressures and travels, and this device's places in them. */
  private readonly p: Float64Array;
  private readonly nodes: Int32Array;
  private readonly s: Float64Array;
  private readonly links: Int32Array;
  private readonly u: Float64Array;
  private readonly states: Int32Array;
  private readonly inputAt: number;
  /** What the device writes, in the exchange's arrays. */
  private readonly o: Float64Array;
  private readonly oSlope: Float64Array;
  private readonly q: Float64Array;
  private readonly qFrom: Float64Array;
  private readonly qTo: Float64Array;
  private readonly qAlso: Float64Array;
  private readonly f: Float64Array;
  private readonly fAlso: Float64Array;
  private readonly c: Float64Array;
  private readonly r: Float64Array;
  private readonly rAlso: Float64Array;
  private readonly v: Float64Array;
  private readonly vAlso: Float64Array;
  private readonly flowAt: number;
  private readonly forceAt: number;
  private readonly stateAt: number;
  private readonly flowAlsoAt: Int32Array;
  private readonly forceAlsoAt: Int32Array;
  private readonly rateAlsoAt: Int32Array;

  constructor(
    readonly name: string,
    readonly definition: DeviceDefinition,
    readonly k: Float64Array,
    x: Exchange,
    readonly wiring: FrameWiring,
    at: FrameOffsets,
  ) {
    this.w = x.w;
    this.p = x.w.pressure;
    this.nodes = wiring.nodes;
    this.s = x.w.travel;
    this.links = wiring.attachments.map((a) => (a < 0 ? x.w.idleAttachment : a));
    this.u = x.w.inputs;
    this.states = wiring.states;
    this.inputAt = at.input;
    this.o = x.opening;
    this.oSlope = x.openingSlope;
    this.q = x.flow;
    this.qFrom = x.byFrom;
    this.qTo = x.byTo;
    this.qAlso = x.flowAlso;
    this.f = x.force;
    this.fAlso = x.forceAlso;
    this.c = x.damping;
    this.r = x.friction;
    this.rAlso = x.frictionAlso;
    this.v = x.rate;
    this.vAlso = x.rateAlso;
    this.flowAt = at.flow;
    this.forceAt = at.force;
    this.stateAt = at.state;
    this.flowAlsoAt = at.flowAlso;
    this.forceAlsoAt = at.forceAlso;
    this.rateAlsoAt = at.rateAlso;
  }

  get partials(): boolean {
    return this.w.wantJacobian;
  }
  sinceEntry(): number {
    return this.w.t - this.entered;
  }
  joined(path: number): boolean {
    return this.wiring.flowFrom[path] === this.wiring.flowTo[path];
  }
  pressure(port: number): number {
    return this.p[this.nodes[port]];
  }
  content(port: number): number {
    return this.w.content[this.nodes[port]];
  }
  gas(port: number): number {
    return this.w.gas[this.nodes[port]];
  }
  gasTemperature(port: number): number {
    return this.w.gasTemperature[this.nodes[port]];
  }
  state(state: number): number {
    return this.w.y[this.states[state]];
  }
  input(input: number): number {
    return this.u[this.inputAt + input];
  }
  travel(link: number): number {
    return this.s[this.links[link]];
  }
  travelRate(link: number): number {
    const { w } = this;
    const a = this.links[link];
    return w.ratio[a] * w.speed[w.attachmentCoordinate[a]];
  }
  /** Flow of a path at the last evaluation, m3/s. */
  flowOf(path: number): number {
    return this.q[this.flowAt + path];
  }
  flow(path: number, q: number, dqFrom: number, dqTo: number): void {
    const i = this.flowAt + path;
    this.q[i] = q;
    this.qFrom[i] = dqFrom;
    this.qTo[i] = dqTo;
  }
  opening(path: number, open: number): void {
    this.o[this.flowAt + path] = open;
  }
  openingSlope(path: number, slope: number): void {
    this.oSlope[this.flowAt + path] = slope;
  }
  flowAlso(path: number, extra: number, dq: number): void {
    this.qAlso[this.flowAlsoAt[path] + extra] = dq;
  }
  force(force: number, value: number): void {
    this.f[this.forceAt + force] = value;
  }
  forceAlso(force: number, extra: number, d: number): void {
    this.fAlso[this.forceAlsoAt[force] + extra] = d;
  }
  damping(force: number, coefficient: number): void {
    this.c[this.forceAt + force] = coefficient;
  }
  friction(force: number, value: number): void {
    this.r[this.forceAt + force] = value;
  }
  frictionAlso(force: number, extra: number, d: number): void {
    this.rAlso[this.forceAlsoAt[force] + extra] = d;
  }
  rate(state: number, value: number): void {
    this.v[this.stateAt + state] = value;
  }
  rateAlso(state: number, extra: number, d: number): void {
    this.vAlso[this.rateAlsoAt[state] + extra] = d;
  }
}
