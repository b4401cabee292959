/** A frame for one device without a network: values are set by hand, what it declares is kept. */
import type {
  DeviceDefinition,
  Frame,
  Parameters,
  PassageLaw,
  Surroundings,
} from '../../packages/core/src/define/index.js';
import { rise, riseSlope } from '../../packages/core/src/component/shared/smooth.js';
import { orificeFlow, orificeSlope } from '../../packages/core/src/medium/index.js';

/** One of the quantities a device may depend on. */
export interface Knob {
  readonly kind: 'port' | 'state' | 'link' | 'rate';
  readonly index: number;
}

export class FakeFrame implements Frame {
  readonly k: Float64Array;
  mode = 0;
  readonly pressures: Float64Array;
  readonly contents: Float64Array;
  /** Gas at each port, m3 at ANR, and its temperature, K. */
  readonly gases: Float64Array;
  readonly gasTemperatures: Float64Array;
  readonly states: Float64Array;
  readonly inputs: Float64Array;
  readonly travels: Float64Array;
  readonly rates: Float64Array;

  readonly openings: number[];
  readonly openingSlopes: number[];
  private readonly laws: (PassageLaw | undefined)[];
  readonly flows: { q: number; from: number; to: number; also: number[] }[];
  readonly forces: {
    value: number;
    also: number[];
    damping: number;
    friction: number;
    frictionAlso: number[];
  }[];
  readonly stateRates: { value: number; also: number[] }[];

  constructor(device: DeviceDefinition, parameters: Parameters, surroundings: Surroundings) {
    const size = (record: object | undefined): number => Object.keys(record ?? {}).length;
    this.k = device.prepare(parameters, surroundings);
    this.pressures = new Float64Array(size(device.ports)).fill(surroundings.ambient);
    this.contents = new Float64Array(size(device.ports)).fill(1e-3);
    this.gases = new Float64Array(size(device.ports));
    this.gasTemperatures = new Float64Array(size(device.ports)).fill(293.15);
    this.states = Float64Array.from(Object.values(device.states ?? {}), (s) => s.initial);
    this.inputs = Float64Array.from(Object.values(device.inputs ?? {}), (input) =>
      typeof input.initial === 'function' ? input.initial(parameters) : input.initial,
    );
    this.travels = new Float64Array(size(device.links));
    this.rates = new Float64Array(size(device.links));
    const zeros = (also: readonly string[] | undefined): number[] => (also ?? []).map(() => 0);
    this.laws = Object.values(device.flows ?? {}).map((f) => f.law?.(parameters, surroundings));
    this.openings = this.laws.map((l) => l?.open ?? 0);
    this.openingSlopes = this.laws.map(() => 0);
    this.flows = Object.values(device.flows ?? {}).map((flow) => ({
      q: NaN,
      from: NaN,
      to: NaN,
      also: zeros(flow.also),
    }));
    this.forces = Object.values(device.forces ?? {}).map((force) => ({
      value: NaN,
      also: zeros(force.also),
      damping: 0,
      friction: 0,
      frictionAlso: zeros(force.also),
    }));
    this.stateRates = Object.values(device.states ?? {}).map((state) => ({
      value: NaN,
      also: zeros(state.also),
    }));
  }

  readonly partials = true;
  joined = (): boolean => false;
  sinceEntry = (): number => 0;
  pressure = (port: number): number => this.pressures[port];
  content = (port: number): number => this.contents[port];
  gas = (port: number): number => this.gases[port];
  gasTemperature = (port: number): number => this.gasTemperatures[port];
  state = (state: number): number => this.states[state];
  input = (input: number): number => this.inputs[input];
  travel = (link: number): number => this.travels[link];
  travelRate = (link: number): number => this.rates[link];

  flow(path: number, q: number, dqFrom: number, dqTo: number): void {
    const flow = this.flows[path];
    flow.q = q;
    flow.from = dqFrom;
    flow.to = dqTo;
  }
  opening(path: number, open: number): void {
    this.openings[path] = open;
  }
  openingSlope(path: number, slope: number): void {
    this.openingSlopes[path] = slope;
  }
  flowAlso(path: number, extra: number, dq: number): void {
    this.flows[path].also[extra] = dq;
  }
  force(force: number, value: number): void {
    this.forces[force].value = value;
  }
  forceAlso(force: number, extra: number, d: number): void {
    this.forces[force].also[extra] = d;
  }
  damping(force: number, coefficient: number): void {
    this.forces[force].damping = coefficient;
  }
  friction(force: number, value: number): void {
    this.forces[force].friction = value;
  }
  frictionAlso(force: number, extra: number, d: number): void {
    this.forces[force].frictionAlso[extra] = d;
  }
  rate(state: number, value: number): void {
    this.stateRates[state].value = value;
  }
  rateAlso(state: number, extra: number, d: number): void {
    this.stateRates[state].also[extra] = d;
  }

  /** Runs the equations, and the laws of the passages as PassageLaw states them. */
  run(device: DeviceDefinition): void {
    device.equations?.(this);
    const ports = Object.keys(device.ports);
    Object.values(device.flows ?? {}).forEach((f, path) => {
      const law = this.laws[path];
      if (law === undefined) return;
      const dp = this.pressures[ports.indexOf(f.from)] - this.pressures[ports.indexOf(f.to)];
      const { q, slope, byOpening } = passage(law, dp, this.openings[path]);
      this.flow(path, q, slope, -slope);
      if (f.also !== undefined) this.flowAlso(path, 0, this.openingSlopes[path] * byOpening);
    });
  }

  /** Value of a knob. */
  get({ kind, index }: Knob): number {
    return this.store(kind)[index];
  }
  /** Sets a knob. */
  set({ kind, index }: Knob, value: number): void {
    this.store(kind)[index] = value;
  }
  private store(kind: Knob['kind']): Float64Array {
    switch (kind) {
      case 'port':
        return this.pressures;
      case 'state':
        return this.states;
      case 'link':
        return this.travels;
      case 'rate':
        return this.rates;
    }
  }
}

/** A passage as PassageLaw states it: flow, its slope against the drop, and against the opening. */
export function passage(
  law: PassageLaw,
  dp: number,
  open: number,
): { q: number; slope: number; byOpening: number } {
  const main = orificeFlow(law.constant, dp, law.transition);
  let q = open * main + law.leak * dp;
  let slope = open * orificeSlope(law.constant, dp, law.transition) + law.leak;
  let byOpening = main;
  if (law.check !== undefined) {
    const { constant, transition, crack, full, sense, fills } = law.check;
    const x = (sense * dp - crack) / (full - crack);
    const free = orificeFlow(constant, dp, transition);
    const share = fills === true ? 1 - open : 1;
    q += share * rise(x) * free;
    slope += share * rise(x) * orificeSlope(constant, dp, transition);
    slope += (share * riseSlope(x) * sense * free) / (full - crack);
    if (fills === true) byOpening -= rise(x) * free;
  }
  return { q, slope, byOpening };
}

/** The knob of a port. */
export function portKnob(device: DeviceDefinition, name: string): Knob {
  return { kind: 'port', index: Object.keys(device.ports).indexOf(name) };
}

/** The knob that a name in `also` means: a state, else a link (or its rate), else a port, as the network reads it. */
export function knobOf(device: DeviceDefinition, name: string): Knob {
  const [link, rate] = name.split('.');
  if (rate === 'rate')
    return { kind: 'rate', index: Object.keys(device.links ?? {}).indexOf(link) };
  const places = [
    ['state', device.states ?? {}],
    ['link', device.links ?? {}],
    ['port', device.ports],
  ] as const;
  for (const [kind, record] of places) {
    const index = Object.keys(record).indexOf(name);
    if (index >= 0) return { kind, index };
  }
  throw new Error(`${device.kind} declares no port, state or link ${name}`);
}

/** Everything the device declared at the frame's present values, by readable name. */
export function declared(device: DeviceDefinition, frame: FakeFrame): Record<string, number> {
  frame.run(device);
  const out: Record<string, number> = {};
  Object.keys(device.flows ?? {}).forEach((name, i) => (out[`flow ${name}`] = frame.flows[i].q));
  Object.keys(device.forces ?? {}).forEach((name, i) => {
    out[`force ${name}`] = frame.forces[i].value;
    out[`friction ${name}`] = frame.forces[i].friction;
  });
  Object.keys(device.states ?? {}).forEach(
    (name, i) => (out[`rate ${name}`] = frame.stateRates[i].value),
  );
  return out;
}

/** Every declared partial derivative at the frame's present values: of what, against which knob, and its value. */
export function partials(
  device: DeviceDefinition,
  frame: FakeFrame,
): { of: string; name: string; knob: Knob; value: number }[] {
  frame.run(device);
  const out: { of: string; name: string; knob: Knob; value: number }[] = [];
  const add = (of: string, name: string, value: number, knob = knobOf(device, name)): void => {
    out.push({ of, name, knob, value });
  };
  Object.entries(device.flows ?? {}).forEach(([name, flow], i) => {
    add(`flow ${name}`, flow.from, frame.flows[i].from, portKnob(device, flow.from));
    add(`flow ${name}`, flow.to, frame.flows[i].to, portKnob(device, flow.to));
    (flow.also ?? []).forEach((also, j) => add(`flow ${name}`, also, frame.flows[i].also[j]));
  });
  Object.entries(device.forces ?? {}).forEach(([name, force], i) => {
    (force.also ?? []).forEach((also, j) => {
      add(`force ${name}`, also, frame.forces[i].also[j]);
      add(`friction ${name}`, also, frame.forces[i].frictionAlso[j]);
    });
  });
  Object.entries(device.states ?? {}).forEach(([name, state], i) => {
    (state.also ?? []).forEach((also, j) => add(`rate ${name}`, also, frame.stateRates[i].also[j]));
  });
  return out;
}
