/**
 * Gas on its way through the network: what share of a flow it is, how much of it goes, and how a
 * vessel cools as it empties.
 *
 * Out of a node comes its oil or its gas: gas in the share x of the opening, which rises smoothly
 * with the share of gas in the node's volume. In a tube gas pushes the oil ahead of it and leaves
 * a film: little gas comes through until most of the oil is gone, and the film stays (the band is
 * an assumption, common practice, no source). Where q is what the path would pass as oil alone,
 *   oil = (1 - x) q,   gas = x q factor (medium/gas.ts, ISO 6358; pumps: by volume).
 * Vessel of constant volume, first law for an ideal gas with gamma = cp / cv, h of what comes in at T_in:
 *   dT/dt = ((gamma T_in - T) in - (gamma - 1) T out) / gas + (T_wall - T) / exchange
 */
import { anrDensity, ANR, gasFactor, type GasFactor } from '../medium/index.js';
import type { GasDefinition } from '../define/index.js';
import type { Exchange } from './exchange.js';
import type { GasPathWiring, GasSide, GasWiring, VesselWiring } from './gas-wiring.js';
import { VIA_LINK, VIA_NODE, type FrameWiring } from './slots.js';

/** Shares of gas in a node's volume from which gas comes with the oil, and no more oil with it. */
const FIRST_GAS = 0.15;
const LAST_OIL = 0.95;

/** Drop below which gas passes by volume, Pa: no passage turns turbulent below it either. */
const GENTLE = 1e4;

/** Partial derivatives of one path while gas takes it. */
const SIZE = 9;
const OIL_GAS = 0;
const OIL_VOLUME = 1;
const GAS_FROM = 2;
const GAS_TO = 3;
const GAS_GAS = 4;
const GAS_VOLUME = 5;
const GAS_HEAT = 6;
const GAS_ALSO = 7;
const OIL_ALSO = 8;

export interface VesselFacts {
  readonly gamma: number;
  readonly exchange: number;
}

export class GasCarriage {
  /** Gas through every gas path at the point last evaluated, m3/s at ANR, positive from `from` to `to`. */
  readonly flow: Float64Array;
  /** Whether gas takes it, and from which end: 1 forth, -1 back, 0 not. */
  private readonly sense: Int8Array;
  private readonly partials: Float64Array;
  private readonly alsoAt: Int32Array;
  /** Rate of the gas in every node. */
  private readonly gain: Float64Array;
  private readonly out: GasFactor = { factor: 0, byUp: 0, byDown: 0, byTemperature: 0 };
  private readonly root: number;
  private readonly paths: readonly GasPathWiring[];
  private readonly vessels: readonly VesselWiring[];

  constructor(
    private readonly wiring: GasWiring,
    private readonly x: Exchange,
    frames: readonly FrameWiring[],
    gas: GasDefinition,
    oilDensity: number,
    private readonly vapour: number,
    private readonly wall: number,
    private readonly facts: readonly VesselFacts[],
  ) {
    this.paths = wiring.paths;
    this.vessels = wiring.vessels;
    this.flow = new Float64Array(this.paths.length);
    this.sense = new Int8Array(this.paths.length);
    this.partials = new Float64Array(SIZE * this.paths.length);
    this.gain = new Float64Array(wiring.gasState.length);
    this.root = Math.sqrt(oilDensity / anrDensity(gas));
    const starts: number[] = [];
    let at = 0;
    for (const f of frames)
      for (const also of f.flowAlso) starts.push((at += also.length) - also.length);
    this.alsoAt = Int32Array.from(this.paths, (p) => starts[p.path]);
  }

  /** After the passages: splits their flows, and writes the rates of gas and of vessels' temperatures. */
  evaluate(): void {
    const { paths, flow, sense, x, gain, wiring } = this;
    const w = x.w;
    for (let i = 0; i < gain.length; i++) gain[i] = 0;
    for (let j = 0; j < paths.length; j++) {
      const p = paths[j];
      const q = x.flow[p.path];
      flow[j] = 0;
      sense[j] = 0;
      const forth = q >= 0;
      if (!(forth ? p.forth : p.back)) continue;
      const up = forth ? p.from : p.to;
      const down = forth ? p.to : p.from;
      if (w.gas[up] > 0) this.carry(j, p, q, up, down);
      if (wiring.heatState[down] >= 0) this.keepOilOut(p.path);
      gain[p.from] -= flow[j];
      gain[p.to] += flow[j];
    }
    const { rate } = w;
    const { gasState } = wiring;
    for (let i = 0; i < gain.length; i++) if (gasState[i] >= 0) rate[gasState[i]] = gain[i];
    for (let v = 0; v < this.vessels.length; v++) this.warm(v);
  }

  /** Oil does not get into a vessel: what of a passage oil would take is lost. */
  private keepOilOut(path: number): void {
    const { x } = this;
    x.flow[path] = 0;
    x.byFrom[path] = 0;
    x.byTo[path] = 0;
  }

  private carry(j: number, p: GasPathWiring, q: number, up: number, down: number): void {
    const { x, out, partials } = this;
    const w = x.w;
    const over = w.pressure[up] - this.vapour;
    const temperature = w.gasTemperature[up];
    const held = (ANR.pressure * temperature * w.gas[up]) / (ANR.temperature * over);
    const volume = w.volume[up];
    const vessel = this.wiring.heatState[up] >= 0;
    const filled = vessel ? 1 : held / volume;
    const s = (filled - FIRST_GAS) / (LAST_OIL - FIRST_GAS);
    if (s <= 0) return;
    const share = s >= 1 ? 1 : s * s * (3 - 2 * s);
    // Slope of the share against ln(filled).
    const bend = s >= 1 ? 0 : (6 * s * (1 - s) * filled) / (LAST_OIL - FIRST_GAS);
    if (p.byVolume) wholly(w.pressure[up], temperature, out);
    else {
      gasFactor(w.pressure[up], w.pressure[down], temperature, this.root, p.ratio, out);
      gently(w.pressure[up], w.pressure[down], temperature, out);
    }
    const { factor } = out;
    const i = p.path;
    this.flow[j] = share * q * factor;
    this.sense[j] = q >= 0 ? 1 : -1;
    x.flow[i] = (1 - share) * q;
    if (!w.wantJacobian) return;
    const k = SIZE * j;
    const forth = q >= 0;
    const bySelf = (-q * bend) / over;
    const upSlope = forth ? x.byFrom[i] : x.byTo[i];
    const downSlope = forth ? x.byTo[i] : x.byFrom[i];
    const gasUp = factor * (share * upSlope + bySelf) + share * q * out.byUp;
    const gasDown = factor * share * downSlope + share * q * out.byDown;
    const oilUp = (1 - share) * upSlope - bySelf;
    const oilDown = (1 - share) * downSlope;
    x.byFrom[i] = forth ? oilUp : oilDown;
    x.byTo[i] = forth ? oilDown : oilUp;
    partials[k + GAS_FROM] = forth ? gasUp : gasDown;
    partials[k + GAS_TO] = forth ? gasDown : gasUp;
    partials[k + OIL_GAS] = (-q * bend) / w.gas[up];
    partials[k + OIL_VOLUME] = (q * bend) / volume;
    partials[k + GAS_GAS] = -factor * partials[k + OIL_GAS];
    partials[k + GAS_VOLUME] = -factor * partials[k + OIL_VOLUME];
    partials[k + GAS_HEAT] = share * q * out.byTemperature;
    partials[k + GAS_ALSO] = share * factor;
    partials[k + OIL_ALSO] = 1 - share;
  }

  /** Temperature of a vessel. */
  private warm(v: number): void {
    const { node, paths } = this.vessels[v];
    const w = this.x.w;
    const { gamma, exchange } = this.facts[v];
    const t = w.gasTemperature[node];
    const gas = w.gas[node];
    let sum = 0;
    for (let i = 0; i < paths.length; i++) {
      const { path, leaves } = paths[i];
      const h = leaves ? this.flow[path] : -this.flow[path];
      sum -= h * this.drift(path, node, h, t, gamma);
    }
    w.rate[this.wiring.heatState[node]] = sum / gas + (this.wall - t) / exchange;
  }

  /** Kelvin that the vessel's gas falls per share of it that leaves by a path (h > 0) or comes in. */
  private drift(path: number, node: number, h: number, t: number, gamma: number): number {
    if (h >= 0) return (gamma - 1) * t;
    const p = this.paths[path];
    const other = p.from === node ? p.to : p.from;
    return gamma * this.x.w.gasTemperature[other] - t;
  }

  /** What the gas adds to the Jacobian; `sweep`: volume swept per radian by every chamber. */
  scatterPartials(values: Float64Array, sweep: Float64Array): void {
    const { paths, sense, partials, x } = this;
    const { partial } = x.w;
    for (let j = 0; j < paths.length; j++) {
      if (sense[j] === 0) continue;
      const p = paths[j];
      const k = SIZE * j;
      const e = p.entries;
      partial[e[0]] -= partials[k + GAS_FROM];
      partial[e[1]] -= partials[k + GAS_TO];
      partial[e[2]] += partials[k + GAS_FROM];
      partial[e[3]] += partials[k + GAS_TO];
      const side = p.sides[sense[j] === 1 ? 0 : 1]!;
      four(values, side.byGas, 0, partials[k + OIL_GAS], partials[k + GAS_GAS]);
      if (side.byHeat.length > 0) four(values, side.byHeat, 0, 0, partials[k + GAS_HEAT]);
      this.sweepSide(values, side, k, sweep);
      this.scatterAlso(values, p, j);
    }
    for (let v = 0; v < this.vessels.length; v++) this.scatterVessel(values, v);
  }

  private sweepSide(values: Float64Array, side: GasSide, k: number, sweep: Float64Array): void {
    for (let c = 0; c < side.chambers.length; c++) {
      const v = sweep[side.chambers[c]];
      const oil = this.partials[k + OIL_VOLUME] * v;
      four(values, side.byAngle, 4 * c, oil, this.partials[k + GAS_VOLUME] * v);
    }
  }

  /** The passage's own slopes against spools, links, further ports: the oil's shrink, the gas's come. */
  private scatterAlso(values: Float64Array, p: GasPathWiring, j: number): void {
    const { x, partials } = this;
    const at = this.alsoAt[j];
    for (let a = 0; a < p.also.length; a++) {
      const { via, attachment, first, second } = p.also[a];
      let d = x.flowAlso[at + a] * partials[SIZE * j + GAS_ALSO];
      x.flowAlso[at + a] *= partials[SIZE * j + OIL_ALSO];
      if (via === VIA_LINK) d *= x.w.ratio[attachment];
      const into = via === VIA_NODE ? x.w.partial : values;
      into[first] -= d;
      into[second] += d;
    }
  }

  private scatterVessel(values: Float64Array, v: number): void {
    const { node, paths, bySelf, byGas } = this.vessels[v];
    const w = this.x.w;
    const { gamma, exchange } = this.facts[v];
    const t = w.gasTemperature[node];
    const gas = w.gas[node];
    values[bySelf] -= 1 / exchange;
    for (let i = 0; i < paths.length; i++) {
      const { path: j, leaves, byFrom, byTo } = paths[i];
      if (this.sense[j] === 0) continue;
      const h = leaves ? this.flow[j] : -this.flow[j];
      const sign = leaves ? 1 : -1;
      const fall = this.drift(j, node, h, t, gamma);
      const k = SIZE * j;
      const share = -fall / gas;
      w.partial[byFrom] += share * sign * this.partials[k + GAS_FROM];
      w.partial[byTo] += share * sign * this.partials[k + GAS_TO];
      values[byGas] += (h * fall) / (gas * gas);
      if (h >= 0) {
        values[bySelf] += share * sign * this.partials[k + GAS_HEAT] - (h * (gamma - 1)) / gas;
        values[byGas] += share * sign * this.partials[k + GAS_GAS];
      } else values[bySelf] += h / gas;
    }
  }
}

/** Adds slopes of the two flows to the rows oil-from, oil-to, gas-from, gas-to. */
function four(values: Float64Array, slots: Int32Array, at: number, oil: number, gas: number): void {
  values[slots[at]] -= oil;
  values[slots[at + 1]] += oil;
  values[slots[at + 2]] -= gas;
  values[slots[at + 3]] += gas;
}

/** Gas by volume: as much as oil would go. */
function wholly(up: number, temperature: number, out: GasFactor): void {
  out.factor = (up * ANR.temperature) / (ANR.pressure * temperature);
  out.byUp = out.factor / up;
  out.byDown = 0;
  out.byTemperature = -out.factor / temperature;
}

/**
 * Below {@link GENTLE} gas goes by volume as well: so a passage with gas on one side and oil on
 * the other gives way alike to both, and nothing is bent where it comes to rest.
 */
function gently(up: number, down: number, temperature: number, out: GasFactor): void {
  const dp = up - down;
  const square = dp * dp + GENTLE * GENTLE;
  const full = (dp * dp) / square;
  const bend = (2 * dp * GENTLE * GENTLE) / (square * square);
  const volume = (up * ANR.temperature) / (ANR.pressure * temperature);
  const more = out.factor - volume;
  out.factor = volume + full * more;
  out.byUp = full * out.byUp + ((1 - full) * volume) / up + bend * more;
  out.byDown = full * out.byDown - bend * more;
  out.byTemperature = full * out.byTemperature - ((1 - full) * volume) / temperature;
}
