import {
  ANR,
  contentAt,
  cushionPressure,
  vesselCharge,
  vesselContent,
  vesselPressure,
  type ContentLaw,
  type NodeLaw,
} from '../medium/index.js';
import type { GasDefinition } from '../define/index.js';
import type { NodePlan } from './plan.js';
import type { Workspace } from './workspace.js';

/** Size of a pressure change that matters, for error control, Pa. */
const PRESSURE_SCALE = 2.5e6;
/**
 * Size of a content change that matters, m3: large volumes with air in them fill slowly, and a
 * small pressure there is a long time.
 */
const CONTENT_SCALE = 4e-8;
const VENTED_SCALE = 1e-3;
/** Size of a content change in an accumulator that matters, as a share of its gas volume. */
const CUSHION_SHARE = 0.001;

/** Largest size of a change of gas that matters, m3 at ANR, and that of a vessel's temperature, K. */
const MOST_SCALE = 1e-2;
const HEAT_SCALE = 50;
/** Largest size of a change of oil where gas drives it, as a share of the volume. */
const MIXED_SHARE = 0.01;
/** A dry node that no gas can reach in this run is this share a pocket of air. */
const MOST_GAS = 0.9;

/**
 * A step may leave a trace less than no gas, m3 at ANR: within this the gas that counts bends to
 * nothing instead of pressing the other way.
 */
const LEAST_GAS = 1e-9;

/** How a node's pressure comes about. */
const FIRM = 0;
const VENTED = 1;
const CUSHION = 2;
/** Oil and gas in one volume, at one pressure. */
const MIXED = 3;
const VESSEL = 4;

/** Where more of a node than this is gas, its pressure is soft and read from the states. */
const SOFT = 0.01;
/** Pressure at which the real-gas correction of mixed nodes is exact, Pa. */
const TYPICAL = 3.5e6;

/** The oil nodes: volumes and pressures from contents and travels. */
export class OilNodes {
  readonly count: number;
  /** Chambers of node i: `chamberStart[i] .. chamberStart[i + 1]`. */
  readonly chamberStart: Int32Array;
  readonly chamberAttachment: Int32Array;
  readonly chamberArea: Float64Array;
  private readonly volume: Float64Array;
  private readonly compliance: Float64Array;
  private readonly laws: readonly NodeLaw[];
  private readonly pocket: Float64Array;
  private readonly kind: Uint8Array;
  private readonly out = { pressure: 0, slope: 0 };
  /** Size of each content while the oil is firm. */
  private readonly firmScale: Float64Array;

  /** ANR volume to the product of pressure and volume at the oil's temperature, Pa. */
  private readonly warmth: number;
  /** Volume that the gas takes up beyond the ideal one, m3 per m3 at ANR (below zero where it attracts itself). */
  private readonly covolume: number;
  private readonly vesselOut = { pressure: 0, byGas: 0, byTemperature: 0 };

  /**
   * `reached`: 1 for nodes that gas can reach, with the gas it is. `gases`: the catalogue, for vessels.
   * `temperature`: of the oil, K.
   */
  constructor(
    private readonly law: ContentLaw,
    private readonly nodes: readonly NodePlan[],
    reached: Uint8Array,
    private readonly gases: Readonly<Record<string, GasDefinition>>,
    gas: GasDefinition,
    private readonly temperature: number,
  ) {
    this.warmth = (ANR.pressure * temperature) / ANR.temperature;
    // Z at the typical pressure, from the vessel's law: content is rho / rho0.
    // (In the cold carbon dioxide is liquid there: then at its vapour pressure.)
    const vapour =
      temperature < gas.criticalTemperature ? gas.saturation?.pressure(temperature) : undefined;
    const typical = Math.min(TYPICAL, vapour ?? TYPICAL);
    this.covolume = 1 / vesselCharge(gas, 1, typical, temperature) - this.warmth / typical;
    this.count = nodes.length;
    this.volume = Float64Array.from(nodes, (n) => n.volume);
    this.compliance = Float64Array.from(nodes, (n) => n.compliance);
    this.kind = Uint8Array.from(nodes, (n, i) => {
      if (n.vented !== undefined) return VENTED;
      if (n.cushion !== undefined) return CUSHION;
      if (n.vessel !== undefined) return VESSEL;
      return reached[i] === 1 ? MIXED : FIRM;
    });
    // A dry node that no gas can reach in this run is next to filled with air.
    this.laws = nodes.map((n, i) => ({
      compliance: n.compliance,
      pocket: n.dry && this.kind[i] === FIRM ? MOST_GAS * n.volume : n.pocket,
    }));
    this.pocket = Float64Array.from(this.laws, (l) => l.pocket);
    this.chamberStart = new Int32Array(nodes.length + 1);
    nodes.forEach((n, i) => (this.chamberStart[i + 1] = this.chamberStart[i] + n.chambers.length));
    const chambers = nodes.flatMap((n) => n.chambers);
    this.chamberAttachment = Int32Array.from(chambers, (c) => c.attachment);
    this.chamberArea = Float64Array.from(chambers, (c) => c.area);
    this.firmScale = new Float64Array(nodes.length);
  }

  /** Volume of a node, m3, walls not counted. */
  volumeOf(node: number, travel: Float64Array): number {
    let v = this.volume[node];
    const end = this.chamberStart[node + 1];
    for (let k = this.chamberStart[node]; k < end; k++) {
      v += this.chamberArea[k] * travel[this.chamberAttachment[k]];
    }
    return v;
  }

  /** Chambers whose oil is a state that their mechanism's angle moves, with their node. */
  movedChambers(): readonly { readonly node: number; readonly chamber: number }[] {
    return this.nodes.flatMap(({ chambers }, node) =>
      this.kind[node] === FIRM || this.kind[node] === MIXED
        ? chambers.map((_, k) => ({ node, chamber: this.chamberStart[node] + k }))
        : [],
    );
  }

  /** The integral of the gas's volume over pressure, from ambient, J per m3 at ANR. */
  gasWorth(pressure: number): number {
    const d = this.law.ambient - this.law.vapour;
    const q = pressure - this.law.vapour;
    return this.warmth * Math.log(q / d) + this.covolume * (q - d);
  }

  /**
   * Contents at rest, at ambient pressure. `gas`: what is at nodes (m3 at ambient pressure, Infinity
   * for all of it); dry nodes are full of it.
   */
  initial(
    y: Float64Array,
    states: GasStates,
    travel: Float64Array,
    gas: ReadonlyMap<number, number>,
  ): void {
    const { law, warmth } = this;
    const d = law.ambient - law.vapour;
    this.nodes.forEach((n, i) => {
      const volume = this.volumeOf(i, travel);
      if (n.vessel !== undefined) {
        const { gas: kind, pressure, temperature } = n.vessel;
        y[states.gasState[i]] = vesselCharge(this.gases[kind], volume, pressure, temperature);
        y[states.heatState[i]] = this.temperature;
        return;
      }
      if (this.kind[i] !== FIRM && this.kind[i] !== MIXED) {
        y[states.contentState[i]] = n.content ?? n.cushion?.content ?? 0;
        return;
      }
      const bubble = n.dry ? Infinity : (gas.get(i) ?? 0);
      if (this.kind[i] === FIRM) {
        y[states.contentState[i]] = contentAt(law, this.laws[i], volume, law.ambient);
        return;
      }
      const perGas = warmth / d + this.covolume;
      const amount = Math.min(bubble, volume) / perGas;
      const room = volume - counted(amount) * perGas;
      y[states.gasState[i]] = amount;
      y[states.contentState[i]] =
        bubble >= volume ? 0 : contentAt(law, this.laws[i], room, law.ambient);
    });
  }

  /**
   * Lets the oil of nodes that are shut in together grow by a share of its volume, and spreads it
   * so that they stand at one pressure.
   */
  grow(
    y: Float64Array,
    contentState: Int32Array,
    travel: Float64Array,
    group: readonly number[],
    growth: number,
  ): void {
    const at = (i: number, pressure: number): number =>
      contentAt(this.law, this.laws[i], this.volumeOf(i, travel), pressure);
    const wanted = group.reduce((sum, i) => sum + y[contentState[i]] * (1 + growth), 0);
    // Content rises with pressure: bisection between next to nothing and the bulk modulus.
    let low = this.law.vapour + 1e-3;
    let high = 0.5 * this.law.bulkModulus;
    for (let k = 0; k < 100; k++) {
      const middle = 0.5 * (low + high);
      if (group.reduce((sum, i) => sum + at(i, middle), 0) < wanted) low = middle;
      else high = middle;
    }
    for (const i of group) y[contentState[i]] = at(i, 0.5 * (low + high));
  }

  /**
   * Contents that give these pressures, into `y`: the oil of firm nodes, the gas where there is
   * more of it than a trace.
   */
  fill(
    y: Float64Array,
    { contentState, gasState, heatState }: GasStates,
    travel: Float64Array,
    pressure: Float64Array,
  ): void {
    const { law, kind } = this;
    this.nodes.forEach((n, i) => {
      const volume = this.volumeOf(i, travel);
      if (kind[i] === VESSEL) {
        const gas = this.gases[n.vessel!.gas];
        y[gasState[i]] = vesselContent(gas, volume, pressure[i], y[heatState[i]]);
        return;
      }
      if (kind[i] !== FIRM && kind[i] !== MIXED) return;
      let room = volume;
      if (kind[i] === MIXED) {
        const q = pressure[i] - law.vapour;
        const perGas = this.warmth / q + this.covolume;
        const held = counted(y[gasState[i]]) * perGas;
        if (held > SOFT * volume) {
          const d = law.ambient - law.vapour;
          const oil = y[contentState[i]];
          const own = oil * (1 - (q - d) / law.bulkModulus + (d * law.freeAir) / q);
          const free = volume + n.compliance * (q - d) - own - (d * this.laws[i].pocket) / q;
          y[gasState[i]] = Math.max(0, free) / perGas;
          return;
        }
        room -= held;
      }
      y[contentState[i]] = contentAt(law, this.laws[i], room, pressure[i]);
    });
  }

  /** Sizes of the contents against which errors are measured, from the contents at rest. */
  setScales(
    y: Float64Array,
    { contentState, gasState, heatState }: GasStates,
    scale: Float64Array,
  ): void {
    for (let i = 0; i < this.count; i++) {
      const s = contentState[i];
      const n = this.kind[i] === MIXED ? Math.max(y[s], this.volume[i]) : y[s];
      const stiff = 1 / this.law.bulkModulus + this.compliance[i] / Math.max(n, 1e-9);
      const { cushion, vessel } = this.nodes[i];
      this.firmScale[i] =
        cushion !== undefined
          ? CUSHION_SHARE * cushion.volume
          : this.kind[i] === VENTED
            ? VENTED_SCALE
            : n * PRESSURE_SCALE * stiff;
      if (vessel !== undefined) this.firmScale[i] = VENTED_SCALE;
      scale[s] = this.firmScale[i];
      if (gasState[i] >= 0) scale[gasState[i]] = VENTED_SCALE;
      if (heatState[i] >= 0) scale[heatState[i]] = HEAT_SCALE;
    }
  }

  /**
   * Sizes at the point last evaluated: by pressure where the oil is firm, by volume where air
   * makes it soft; gas by pressure.
   */
  weigh(w: Workspace, { contentState, gasState }: GasStates, scale: Float64Array): void {
    const { content, byContent } = w;
    const { firmScale, kind } = this;
    const half = 0.5 * this.law.bulkModulus;
    for (let i = 0; i < this.count; i++) {
      if (kind[i] === MIXED || kind[i] === VESSEL) {
        const size = PRESSURE_SCALE / w.byGas[i];
        scale[gasState[i]] = size < MOST_SCALE ? size : MOST_SCALE;
      }
      if (kind[i] !== FIRM && kind[i] !== MIXED) continue;
      const firm = byContent[i] * content[i] > half;
      if (firm) scale[contentState[i]] = firmScale[i];
      else if (kind[i] === MIXED && w.gas[i] > LEAST_GAS) {
        // Gas drives it, not a trickle of oil: by pressure again, but not more than a share of it.
        const size = PRESSURE_SCALE / byContent[i];
        const most = MIXED_SHARE * w.volume[i];
        scale[contentState[i]] = Math.max(CONTENT_SCALE, size < most ? size : most);
      } else scale[contentState[i]] = Math.min(firmScale[i], CONTENT_SCALE);
    }
  }

  /** Pressures, with their partial derivatives when those are wanted (see medium/content.ts). */
  evaluate(w: Workspace, y: Float64Array, states: GasStates): void {
    const { pressure, content, byContent, byVolume, travel, wantJacobian } = w;
    const { contentState, gasState } = states;
    const { bulkModulus, ambient, vapour, freeAir } = this.law;
    const { volume, compliance, pocket, kind, chamberStart, chamberArea, chamberAttachment } = this;
    const d = ambient - vapour;
    const give = 1 / bulkModulus;
    const full = 1 + d * give;
    for (let i = 0; i < contentState.length; i++) {
      const n = y[contentState[i]];
      content[i] = n;
      if (kind[i] !== FIRM && kind[i] !== MIXED) {
        if (kind[i] === CUSHION) {
          const { out } = this;
          cushionPressure(this.nodes[i].cushion!, ambient, n, out);
          pressure[i] = out.pressure;
          byContent[i] = out.slope;
        } else if (kind[i] === VESSEL) this.look(w, y, states, i);
        else if (gasState[i] >= 0) w.gas[i] = y[gasState[i]];
        continue;
      }
      let v = volume[i];
      const end = chamberStart[i + 1];
      for (let k = chamberStart[i]; k < end; k++)
        v += chamberArea[k] * travel[chamberAttachment[k]];
      let c = d * (n * freeAir + pocket[i]);
      const mixed = kind[i] === MIXED;
      let heldSlope = 0;
      if (mixed) {
        const gas = y[gasState[i]];
        w.gas[i] = gas;
        w.volume[i] = v;
        const size = Math.sqrt(gas * gas + LEAST_GAS * LEAST_GAS);
        const held = 0.5 * (gas + size);
        heldSlope = held / size;
        v -= this.covolume * held;
        c += this.warmth * held;
      }
      const a = compliance[i] + n * give;
      const b = v - compliance[i] * d - n * full;
      const root = Math.sqrt(b * b + 4 * a * c);
      const q = b > 0 ? (2 * c) / (b + root) : (root - b) / (2 * a);
      pressure[i] = vapour + q;
      if (wantJacobian) {
        const inverse = 1 / root;
        byContent[i] = (q * (full - q * give) + d * freeAir) * inverse;
        byVolume[i] = -q * inverse;
        if (mixed) w.byGas[i] = (this.warmth + this.covolume * q) * inverse * heldSlope;
      }
    }
  }

  /** The inside of a vessel. */
  private look(w: Workspace, y: Float64Array, { gasState, heatState }: GasStates, i: number): void {
    const { vesselOut: out, nodes, volume } = this;
    const gas = y[gasState[i]];
    const temperature = y[heatState[i]];
    vesselPressure(this.gases[nodes[i].vessel!.gas], volume[i], gas, temperature, out);
    w.gas[i] = gas;
    w.gasTemperature[i] = temperature;
    w.volume[i] = volume[i];
    w.pressure[i] = out.pressure;
    w.byGas[i] = out.byGas;
    w.byHeat[i] = out.byTemperature;
  }
}

/** The gas that counts for the pressure, m3 at ANR: never less than none (see {@link LEAST_GAS}). */
function counted(gas: number): number {
  return 0.5 * (gas + Math.sqrt(gas * gas + LEAST_GAS * LEAST_GAS));
}

/** Numbers of the states of the nodes: oil, gas (-1: none can come), temperature (-1: the oil's). */
export interface GasStates {
  readonly contentState: Int32Array;
  readonly gasState: Int32Array;
  readonly heatState: Int32Array;
}
