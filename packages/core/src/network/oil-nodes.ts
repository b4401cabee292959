import { contentAt, cushionPressure, type ContentLaw } from '../medium/index.js';
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

/** How a node's pressure comes about. */
const FIRM = 0;
const VENTED = 1;
const CUSHION = 2;

/** The oil nodes: volumes and pressures from contents and travels. */
export class OilNodes {
  readonly count: number;
  /** Chambers of node i: `chamberStart[i] .. chamberStart[i + 1]`. */
  readonly chamberStart: Int32Array;
  readonly chamberAttachment: Int32Array;
  readonly chamberArea: Float64Array;
  private readonly volume: Float64Array;
  private readonly compliance: Float64Array;
  private readonly pocket: Float64Array;
  private readonly kind: Uint8Array;
  private readonly out = { pressure: 0, slope: 0 };
  /** Size of each content while the oil is firm. */
  private readonly firmScale: Float64Array;

  constructor(
    private readonly law: ContentLaw,
    private readonly nodes: readonly NodePlan[],
  ) {
    this.count = nodes.length;
    this.volume = Float64Array.from(nodes, (n) => n.volume);
    this.compliance = Float64Array.from(nodes, (n) => n.compliance);
    this.pocket = Float64Array.from(nodes, (n) => n.pocket);
    this.kind = Uint8Array.from(nodes, (n) =>
      n.vented !== undefined ? VENTED : n.cushion !== undefined ? CUSHION : FIRM,
    );
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

  /** Contents at rest, at ambient pressure. */
  initial(y: Float64Array, contentState: Int32Array, travel: Float64Array): void {
    this.nodes.forEach((n, i) => {
      y[contentState[i]] =
        this.kind[i] === FIRM
          ? contentAt(this.law, n, this.volumeOf(i, travel), this.law.ambient)
          : (n.content ?? n.cushion?.content ?? 0);
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
      contentAt(this.law, this.nodes[i], this.volumeOf(i, travel), pressure);
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

  /** Contents of firm nodes that give these pressures, into `y`. */
  fill(
    y: Float64Array,
    contentState: Int32Array,
    travel: Float64Array,
    pressure: Float64Array,
  ): void {
    this.nodes.forEach((n, i) => {
      if (this.kind[i] !== FIRM) return;
      y[contentState[i]] = contentAt(this.law, n, this.volumeOf(i, travel), pressure[i]);
    });
  }

  /** Sizes of the contents against which errors are measured, from the contents at rest. */
  setScales(y: Float64Array, contentState: Int32Array, scale: Float64Array): void {
    for (let i = 0; i < this.count; i++) {
      const s = contentState[i];
      const stiff = 1 / this.law.bulkModulus + this.compliance[i] / Math.max(y[s], 1e-9);
      const { cushion } = this.nodes[i];
      this.firmScale[i] =
        cushion !== undefined
          ? CUSHION_SHARE * cushion.volume
          : this.kind[i] === VENTED
            ? VENTED_SCALE
            : y[s] * PRESSURE_SCALE * stiff;
      scale[s] = this.firmScale[i];
    }
  }

  /**
   * Sizes at the point last evaluated: by pressure where the oil is firm, by volume where air
   * makes it soft.
   */
  weigh(w: Workspace, contentState: Int32Array, scale: Float64Array): void {
    const { content, byContent } = w;
    const { firmScale, kind } = this;
    const half = 0.5 * this.law.bulkModulus;
    for (let i = 0; i < this.count; i++) {
      if (kind[i] !== FIRM) continue;
      const firm = byContent[i] * content[i] > half;
      scale[contentState[i]] = firm ? firmScale[i] : Math.min(firmScale[i], CONTENT_SCALE);
    }
  }

  /** Pressures, with their partial derivatives when those are wanted (see medium/content.ts). */
  evaluate(w: Workspace, y: Float64Array, contentState: Int32Array): void {
    const { pressure, content, byContent, byVolume, travel, wantJacobian } = w;
    const { bulkModulus, ambient, vapour, freeAir } = this.law;
    const { volume, compliance, pocket, kind, chamberStart, chamberArea, chamberAttachment } = this;
    const d = ambient - vapour;
    const give = 1 / bulkModulus;
    const full = 1 + d * give;
    for (let i = 0; i < contentState.length; i++) {
      const n = y[contentState[i]];
      content[i] = n;
      if (kind[i] !== FIRM) {
        if (kind[i] === CUSHION) {
          const { out } = this;
          cushionPressure(this.nodes[i].cushion!, ambient, n, out);
          pressure[i] = out.pressure;
          byContent[i] = out.slope;
        }
        continue;
      }
      let v = volume[i];
      const end = chamberStart[i + 1];
      for (let k = chamberStart[i]; k < end; k++)
        v += chamberArea[k] * travel[chamberAttachment[k]];
      const a = compliance[i] + n * give;
      const b = v - compliance[i] * d - n * full;
      const c = d * (n * freeAir + pocket[i]);
      const root = Math.sqrt(b * b + 4 * a * c);
      const q = b > 0 ? (2 * c) / (b + root) : (root - b) / (2 * a);
      pressure[i] = vapour + q;
      if (wantJacobian) {
        const inverse = 1 / root;
        byContent[i] = (q * (full - q * give) + d * freeAir) * inverse;
        byVolume[i] = -q * inverse;
      }
    }
  }
}
