import type { GasCushion } from '../define/index.js';
import {
  cushionPressure,
  enthalpyAt,
  nodeEnergy,
  POPPET,
  type ContentLaw,
} from '../medium/index.js';
import type { InstanceFrame, Network } from '../network/index.js';
import type { Machine } from './machine.js';
import type { Record } from './record.js';
import { Replay } from './replay.js';

/** Oil, gas and energy of a run, for checking that nothing is lost. SI. */
export interface Account {
  /** All oil at ambient pressure, m3, at the start and at the end: chambers, lines, reservoirs, leaked. */
  readonly oil: { readonly start: number; readonly end: number };
  /** All gas, m3 at ANR: vessels, lines, chambers, let out. */
  readonly gas: { readonly start: number; readonly end: number };
  /** J; of gas that has left its vessel the work it can do at the oil's temperature. */
  readonly energy: {
    /** Given by supplies, and by gas that came out of vessels. */
    readonly supplied: number;
    /** Turned to heat in valves, lines, leaks. */
    readonly throttled: number;
    /** Turned to heat by friction and damping. */
    readonly rubbed: number;
    /** Lost in impacts at stops. */
    readonly struck: number;
    /** Done by weight and springs (positive when they give). */
    readonly weight: number;
    /** Done against the atmosphere. */
    readonly atmosphere: number;
    /** Change of what is stored in oil, walls and motion. */
    readonly stored: number;
    /** What the terms leave over: supplied + weight - everything else. */
    readonly gap: number;
  };
}

/** Gauss-Legendre points and weights on [0, 1], three points. */
const POINTS = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)];
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18];

/** Works out the account of a recorded run by quadrature over its dense output. */
export function accountOf(network: Network, machine: Machine, record: Record): Account {
  const replay = new Replay(network, machine, record);
  const { y } = replay;
  const w = network.workspace;
  let supplied = 0;
  let throttled = 0;
  let rubbed = 0;
  let struck = 0;
  let weight = 0;
  let kineticBefore = NaN;
  const first = { oil: 0, gas: 0, stored: 0, volume: 0 };
  const last = { oil: 0, gas: 0, stored: 0, volume: 0 };
  for (let i = 0; i < record.count; i++) {
    const t0 = record.start(i);
    const t1 = record.end(i);
    const look = (t: number): void => replay.look(i, t);
    look(t0);
    if (i === 0) Object.assign(first, stock(network, y));
    else struck += kineticBefore - network.kineticEnergy();
    const before = inVessels(network, y);
    const out = { given: 0, amount: 0 };
    for (let g = 0; g < 3; g++) {
      look(t0 + POINTS[g] * (t1 - t0));
      const dt = WEIGHTS[g] * (t1 - t0);
      for (const frame of network.frames) {
        const [given, lost] = flowPower(network, frame);
        supplied += given * dt;
        throttled += lost * dt;
        rubbed += (frame.definition.dissipation?.(frame) ?? 0) * dt;
      }
      const gas = gasPower(network);
      out.given += gas.given * dt;
      out.amount += gas.amount * dt;
      throttled += gas.lost * dt;
      for (let c = 0; c < w.speed.length; c++) {
        const speed = Math.abs(w.speed[c]);
        rubbed += (w.capacity[c] + w.viscous[c] * speed) * speed * dt;
        weight += network.staticMoment(c) * w.speed[c] * dt;
      }
    }
    look(t1);
    // How much left the vessels the states tell exactly; the quadrature only says what it was worth.
    const left = before - inVessels(network, y);
    supplied +=
      Math.abs(out.amount - left) < 0.5 * Math.abs(left)
        ? (out.given * left) / out.amount
        : out.given;
    kineticBefore = network.kineticEnergy();
    if (i === record.count - 1) Object.assign(last, stock(network, y));
  }
  const atmosphere = network.around.ambient * (last.volume - first.volume);
  const stored = last.stored - first.stored;
  return {
    oil: { start: first.oil, end: last.oil },
    gas: { start: first.gas, end: last.gas },
    energy: {
      supplied,
      throttled,
      rubbed,
      struck,
      weight,
      atmosphere,
      stored,
      gap: supplied + weight - throttled - rubbed - struck - atmosphere - stored,
    },
  };
}

/** Power given by source paths and lost in the others, W, at the point last evaluated. */
function flowPower(network: Network, frame: InstanceFrame): [number, number] {
  let given = 0;
  let lost = 0;
  Object.values(frame.definition.flows ?? {}).forEach((flow, k) => {
    const rise =
      enthalpyAt(network.law, network.workspace.pressure[frame.wiring.flowTo[k]]) -
      enthalpyAt(network.law, network.workspace.pressure[frame.wiring.flowFrom[k]]);
    const power = frame.flowOf(k) * rise;
    if (flow.source === true) given += power;
    else lost -= power;
  });
  return [given, lost];
}

/** Gas in all vessels, m3 at ANR. */
function inVessels(network: Network, y: Float64Array): number {
  const { plan, states } = network;
  return plan.nodes.reduce(
    (sum, { vessel }, i) => (vessel === undefined ? sum : sum + y[states.gasState[i]]),
    0,
  );
}

/**
 * At the point last evaluated: power given by vessels and lost by gas between other nodes, W, and
 * gas that leaves vessels, m3/s at ANR.
 */
function gasPower(network: Network): { given: number; lost: number; amount: number } {
  const { plan, wiring, carriage, workspace: w } = network;
  let given = 0;
  let lost = 0;
  let amount = 0;
  if (carriage === undefined) return { given, lost, amount };
  wiring.gas.paths.forEach(({ from, to }, j) => {
    const worth = (node: number): number =>
      plan.nodes[node].vessel === undefined ? network.gasWorth(w.pressure[node]) : 0;
    const flow = carriage.flow[j];
    const power = flow * (worth(to) - worth(from));
    const leaves = plan.nodes[from].vessel !== undefined;
    if (leaves || plan.nodes[to].vessel !== undefined) {
      given += power;
      amount += leaves ? flow : -flow;
    } else lost -= power;
  });
  return { given, lost, amount };
}

/** Oil, gas, stored energy and chamber volume at the point last evaluated. */
function stock(
  network: Network,
  y: Float64Array,
): { oil: number; gas: number; stored: number; volume: number } {
  const { plan, law, wiring, workspace: w } = network;
  let oil = 0;
  let gas = 0;
  let stored = network.kineticEnergy();
  for (const frame of network.frames) stored += frame.definition.energy?.(frame) ?? 0;
  let volume = 0;
  plan.nodes.forEach((node, i) => {
    const n = y[wiring.contentState[i]];
    oil += n;
    const state = wiring.gas.gasState[i];
    if (state >= 0) gas += y[state];
    if (node.vessel !== undefined) return;
    if (state >= 0) stored += y[state] * network.gasWorth(w.pressure[i]);
    if (node.vented !== undefined) {
      // Its pressure is held whatever moves: a chamber that opens right into it is pushed for nothing.
      const open = network.volumeOf(i);
      volume += open;
      stored += n * enthalpyAt(law, w.pressure[i]) - w.pressure[i] * open;
      return;
    }
    if (node.cushion !== undefined) {
      stored += cushionEnergy(law, node.cushion, n);
      return;
    }
    const v = network.volumeOf(i);
    volume += v;
    stored += nodeEnergy(law, node, v, n, w.pressure[i]);
  });
  return { oil, gas, stored, volume };
}

/** Energy of oil against a gas cushion, J: the integral of its enthalpy over the content. */
function cushionEnergy(law: ContentLaw, cushion: GasCushion, n: number): number {
  const out = { pressure: 0, slope: 0 };
  const part = (from: number, to: number): number => {
    let sum = 0;
    for (let i = 0; i < 32; i++) {
      for (let g = 0; g < 3; g++) {
        const at = from + ((i + POINTS[g]) / 32) * (to - from);
        cushionPressure(cushion, law.ambient, at, out);
        sum += (WEIGHTS[g] * enthalpyAt(law, out.pressure) * (to - from)) / 32;
      }
    }
    return sum;
  };
  const seated = Math.min(n, POPPET * cushion.volume);
  return part(0, seated) + (n > seated ? part(seated, n) : 0);
}
