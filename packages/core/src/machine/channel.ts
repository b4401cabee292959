import type { ChannelInfo, Quantity } from '../define/index.js';
import { spline, type Network } from '../network/index.js';

/** A channel and how to read it from the network at the point last evaluated. */
export interface ReadableChannel {
  readonly info: ChannelInfo;
  readonly read: () => number;
  /** Number of the state it is, when it is one or follows from one alone: then it needs no evaluation. */
  readonly state?: number;
  /** What it is of that state, where it is not the state itself. */
  readonly from?: (state: number) => number;
}

const STATE_QUANTITY: Readonly<Record<string, Quantity>> = {
  m: 'length',
  m3: 'volume',
  'm^3': 'volume',
  rad: 'angle',
  'rad/s': 'angular-speed',
  'm3/s': 'flow',
  'm^3/s': 'flow',
  Pa: 'pressure',
  s: 'time',
  K: 'temperature',
};

/** Every channel of a network, mechanisms first, then nodes, then devices, in declared order. */
export function channelsOf(network: Network): readonly ReadableChannel[] {
  const { plan, workspace: w, frames, law, wiring } = network;
  const list: ReadableChannel[] = [];
  const add = (
    of: string,
    what: string,
    title: string,
    quantity: Quantity,
    read: () => number,
    state?: number,
    from?: (state: number) => number,
  ): void => {
    list.push({ info: { name: `${of}.${what}`, title, quantity, of }, read, state, from });
  };
  plan.members.forEach(({ name, definition, coordinate: c, angle }) => {
    const fromLow = `angle from ${definition.ends[0]}`;
    const towards = `angular speed, towards ${definition.ends[1]} positive`;
    const angleState = wiring.angleState[c];
    if (angle !== undefined) {
      const through = spline(angle);
      const own = (leader: number): number => through(leader).value;
      add(name, 'angle', fromLow, 'angle', () => own(w.angle[c]), angleState, own);
      const speed = (): number => through(w.angle[c]).slope * w.speed[c];
      add(name, 'speed', towards, 'angular-speed', speed);
      return;
    }
    add(name, 'angle', fromLow, 'angle', () => w.angle[c], angleState);
    add(name, 'speed', towards, 'angular-speed', () => w.speed[c], wiring.speedState[c]);
    add(name, 'moment', 'moment without friction', 'moment', () => w.drive[c]);
    add(name, 'weight', 'moment of weight and springs', 'moment', () => network.staticMoment(c));
    add(name, 'friction', 'most that friction can hold', 'moment', () => w.capacity[c]);
    const pushed = (sense: 1 | -1): (() => number) => {
      return () => network.pressureMoment(c, sense);
    };
    const [low, high] = definition.ends;
    add(name, 'pressed-low', `moment of pressure towards ${low}`, 'moment', pushed(-1));
    add(name, 'pressed-high', `moment of pressure towards ${high}`, 'moment', pushed(1));
  });
  for (const [name, i] of plan.nodeOf) {
    add(name, 'pressure', 'absolute pressure', 'pressure', () => w.pressure[i]);
    const { vented, cushion, vessel } = plan.nodes[i];
    const gasState = wiring.gas.gasState[i];
    if (gasState >= 0) add(name, 'gas', 'gas, as free gas', 'free-gas', () => w.gas[i], gasState);
    if (vessel !== undefined) {
      const own = wiring.gas.heatState[i];
      const title = 'temperature of the gas';
      add(name, 'temperature', title, 'temperature', () => w.gasTemperature[i], own);
      continue;
    }
    // A gas line that no gas can reach in this run is full of air all the time.
    if (plan.nodes[i].dry && gasState < 0) continue;
    if (vented === undefined && cushion === undefined) {
      const d = law.ambient - law.vapour;
      const { pocket } = plan.nodes[i];
      add(name, 'void', 'volume of air and vapour', 'volume', () => {
        return (d * (w.content[i] * law.freeAir + pocket)) / (w.pressure[i] - law.vapour);
      });
    } else {
      const own = wiring.contentState[i];
      add(name, 'content', 'oil in it', 'volume', () => w.content[i], own);
    }
  }
  const gasPath = new Map(wiring.gas.paths.map(({ path }, j) => [path, j]));
  let path = 0;
  frames.forEach((frame, i) => {
    const d = frame.definition;
    Object.keys(d.links ?? {}).forEach((link, k) => {
      if (plan.instances[i].attachments[k] < 0) return;
      const quantity = d.links![link].shape === 'plain' ? 'angle' : 'length';
      add(frame.name, link, d.links![link].title, quantity, () => frame.travel(k));
    });
    Object.entries(d.states ?? {}).forEach(([state, s], k) => {
      const quantity = STATE_QUANTITY[s.unit] ?? 'ratio';
      const own = wiring.ownStates[i][k];
      add(frame.name, state, s.title, quantity, () => frame.state(k), own);
    });
    Object.entries(d.flows ?? {}).forEach(([way, f], k) => {
      const title = f.title ?? `flow ${f.from} to ${f.to}`;
      add(frame.name, way, title, 'flow', () => frame.flowOf(k));
      const j = gasPath.get(path++);
      if (j === undefined) return;
      const { flow } = network.carriage!;
      add(frame.name, `${way}-gas`, `${title}, free gas`, 'free-gas-flow', () => flow[j]);
    });
    Object.entries(d.readings ?? {}).forEach(([reading, r]) => {
      add(frame.name, reading, r.title, r.quantity, () => r.value(frame));
    });
  });
  return list;
}
