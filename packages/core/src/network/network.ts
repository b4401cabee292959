import { contentAt, oilAt, type ContentLaw } from '../medium/index.js';
import type { Catalogues, DeviceDefinition, Scenario, Surroundings } from '../define/index.js';
import type { SparsePattern } from '../solver/index.js';
import { Exchange } from './exchange.js';
import { InstanceFrame } from './frame.js';
import { plan as makePlan, type Plan } from './plan.js';
import { TableBuilder, type Tables } from './table.js';
import { wire, type Wiring } from './wiring.js';
import { Workspace } from './workspace.js';

/** Size of a pressure change that matters, for error control, Pa. */
const PRESSURE_SCALE = 2.5e6;
/**
 * Size of a content change that matters, m3: large volumes with air in them fill slowly, and a
 * small pressure there is a long time.
 */
const CONTENT_SCALE = 4e-8;
const VENTED_SCALE = 1e-3;
const ANGLE_SCALE = 0.1;
const SPEED_SCALE = 1;

/**
 * A compiled network: names resolved to indices, equations ready to run. The structure never
 * changes; what does (modes, inputs, bounds) stands in the frames and the workspace and is
 * set by the machine.
 */
export class Network {
  readonly plan: Plan;
  readonly wiring: Wiring;
  readonly workspace: Workspace;
  readonly frames: readonly InstanceFrame[];
  readonly law: ContentLaw;
  readonly around: Surroundings;
  readonly size: number;
  readonly pattern: SparsePattern;
  readonly scale: Float64Array;
  readonly fast: Uint8Array;

  private readonly firmScale: Float64Array;
  private readonly tables: Tables;
  private readonly travelTable: Int32Array;
  private readonly momentTable: Int32Array;
  private readonly inertiaTable: Int32Array;
  /** Static moments and their slopes, kept for held coordinates. */
  private readonly statics: Float64Array;
  private readonly staticSlopes: Float64Array;
  /** 1 where the inertia changes with the angle. */
  private readonly varies: Uint8Array;
  /** Scratch: volume swept per radian by every chamber. */
  private readonly sweep: Float64Array;
  private readonly damping: Float64Array;
  private readonly friction: Float64Array;

  private readonly volume: Float64Array;
  private readonly compliance: Float64Array;
  private readonly pocket: Float64Array;
  private readonly vented: Uint8Array;
  private readonly chamberStart: Int32Array;
  private readonly chamberAttachment: Int32Array;
  private readonly chamberArea: Float64Array;
  private readonly exchange: Exchange;
  private readonly running: readonly InstanceFrame[];
  private readonly equations: readonly NonNullable<DeviceDefinition['equations']>[];
  /** Travel, lever arms and static moments of held coordinates are not computed again until this is set. */
  private stale = true;

  constructor(scenario: Scenario, catalogues: Catalogues) {
    const oil = oilAt(catalogues.fluids[scenario.fluid.kind], scenario.fluid.temperature);
    this.around = {
      density: oil.density,
      viscosity: oil.viscosity,
      bulkModulus: oil.bulkModulus,
      ambient: scenario.ambient,
      temperature: scenario.fluid.temperature,
    };
    this.law = {
      bulkModulus: oil.bulkModulus,
      ambient: scenario.ambient,
      vapour: oil.vapourPressure,
      freeAir: Math.max(scenario.fluid.freeAir, 1e-6),
    };
    this.plan = makePlan(scenario, catalogues, this.around);
    const { nodes, coordinates, attachments, instances } = this.plan;

    this.volume = Float64Array.from(nodes, (n) => n.volume);
    this.compliance = Float64Array.from(nodes, (n) => n.compliance);
    this.pocket = Float64Array.from(nodes, (n) => n.pocket);
    this.vented = Uint8Array.from(nodes, (n) => (n.vented === undefined ? 0 : 1));
    this.chamberStart = new Int32Array(nodes.length + 1);
    nodes.forEach((n, i) => (this.chamberStart[i + 1] = this.chamberStart[i] + n.chambers.length));
    this.chamberAttachment = Int32Array.from(nodes.flatMap((n) => n.chambers.map((c) => c.attachment)));
    this.chamberArea = Float64Array.from(nodes.flatMap((n) => n.chambers.map((c) => c.area)));

    const builder = new TableBuilder();
    const range = (c: number): [number, number] => [coordinates[c].data.low, coordinates[c].data.high];
    this.travelTable = Int32Array.from(attachments, (a) =>
      a.travel === undefined ? -1 : builder.add(a.travel, ...range(a.coordinate)),
    );
    this.momentTable = Int32Array.from(coordinates, (c, i) => builder.add(c.data.moment, ...range(i)));
    this.inertiaTable = Int32Array.from(coordinates, (c, i) => builder.add(c.data.inertia, ...range(i)));
    this.tables = builder.build();
    this.statics = new Float64Array(coordinates.length);
    this.staticSlopes = new Float64Array(coordinates.length);
    this.varies = Uint8Array.from(coordinates, (c) =>
      c.data.inertia.y.some((v) => v !== c.data.inertia.y[0]) ? 1 : 0,
    );
    this.sweep = new Float64Array(this.chamberArea.length);
    this.damping = Float64Array.from(coordinates, (c) => c.data.damping);
    this.friction = Float64Array.from(coordinates, (c) => c.data.friction);

    this.wiring = wire(this.plan, this.chamberStart);
    this.size = this.wiring.states;
    this.pattern = this.wiring.pattern;
    this.workspace = new Workspace({
      nodes: nodes.length,
      coordinates: coordinates.length,
      attachments: attachments.length,
      inputs: this.wiring.inputs,
      partials: this.wiring.entries.count,
    });
    attachments.forEach((a, i) => (this.workspace.attachmentCoordinate[i] = a.coordinate));
    this.exchange = new Exchange(this.workspace, this.wiring.frames);
    this.frames = instances.map(
      (p, i) =>
        new InstanceFrame(
          p.name,
          p.definition,
          p.k,
          this.exchange,
          this.wiring.frames[i],
          this.exchange.offsets[i],
        ),
    );
    this.running = this.frames.filter((f) => f.definition.equations !== undefined);
    this.equations = this.running.map((f) => f.definition.equations!);
    nodes.forEach((n, i) => {
      if (n.vented !== undefined) this.workspace.pressure[i] = n.vented;
    });
    this.scale = new Float64Array(this.size);
    this.fast = new Uint8Array(this.size);
    this.firmScale = new Float64Array(nodes.length);
    this.setScales();
  }

  /** What each state's error is measured against: pressure for contents, by the node's middle volume. */
  private setScales(): void {
    const { nodes, coordinates, instances } = this.plan;
    const w = this.wiring;
    const y = this.initial();
    nodes.forEach((n, i) => {
      const s = w.contentState[i];
      const stiff = 1 / this.law.bulkModulus + this.compliance[i] / Math.max(y[s], 1e-9);
      this.scale[s] = n.vented === undefined ? y[s] * PRESSURE_SCALE * stiff : VENTED_SCALE;
      this.firmScale[i] = this.scale[s];
      this.fast[s] = n.vented === undefined ? 1 : 0;
    });
    coordinates.forEach((_, c) => {
      this.scale[w.angleState[c]] = ANGLE_SCALE;
      this.scale[w.speedState[c]] = SPEED_SCALE;
    });
    instances.forEach((p, i) => {
      Object.values(p.definition.states ?? {}).forEach((d, k) => {
        this.scale[w.ownStates[i][k]] = d.scale;
      });
    });
  }

  /** States at rest: oil at ambient pressure everywhere, mechanisms where they start. */
  initial(start: Readonly<Record<string, number>> = {}): Float64Array {
    const { nodes, coordinates, attachments, instances } = this.plan;
    const w = this.wiring;
    const y = new Float64Array(this.size);
    coordinates.forEach((c, i) => {
      const angle = start[c.name] ?? c.data.initial;
      y[w.angleState[i]] = Math.min(Math.max(angle, c.data.low), c.data.high);
    });
    instances.forEach((p, i) => {
      Object.values(p.definition.states ?? {}).forEach((d, k) => (y[w.ownStates[i][k]] = d.initial));
    });
    const travel = attachments.map((a, i) => {
      const angle = y[w.angleState[a.coordinate]];
      if (this.travelTable[i] < 0) return angle;
      this.tables.at(this.travelTable[i], angle);
      return this.tables.value;
    });
    nodes.forEach((n, i) => {
      const volume = n.chambers.reduce((v, c) => v + c.area * travel[c.attachment], n.volume);
      const node = { compliance: n.compliance, pocket: n.pocket };
      y[w.contentState[i]] =
        n.vented !== undefined
          ? (n.content ?? 0)
          : contentAt(this.law, node, volume, this.law.ambient);
    });
    return y;
  }

  /** Volume of a node at the point last evaluated, m3, walls not counted. */
  volumeOf(node: number): number {
    let v = this.volume[node];
    for (let k = this.chamberStart[node]; k < this.chamberStart[node + 1]; k++) {
      v += this.chamberArea[k] * this.workspace.travel[this.chamberAttachment[k]];
    }
    return v;
  }

  /** Kinetic energy of the coordinates at the point last evaluated, J. */
  kineticEnergy(): number {
    const w = this.workspace;
    let sum = 0;
    for (let c = 0; c < w.angle.length; c++) {
      this.tables.at(this.inertiaTable[c], w.angle[c]);
      sum += 0.5 * this.tables.value * w.speed[c] * w.speed[c];
    }
    return sum;
  }

  /** Static moment of a coordinate (weight, springs) at the point last evaluated, N m. */
  staticMoment(c: number): number {
    this.tables.at(this.momentTable[c], this.workspace.angle[c]);
    return this.tables.value;
  }

  /** To be called when a mode, a bound or a held angle has changed. */
  refresh(): void {
    this.stale = true;
  }

  derivatives(t: number, y: Float64Array, rate: Float64Array): void {
    this.workspace.wantJacobian = false;
    this.evaluate(t, y, rate);
  }

  jacobian(t: number, y: Float64Array, rate: Float64Array, values: Float64Array): void {
    const w = this.workspace;
    w.wantJacobian = true;
    w.jacobianValues = values;
    clear(values);
    clear(w.partial);
    this.evaluate(t, y, rate);
    this.turnPartials(values);
    this.weigh();
  }

  private evaluate(t: number, y: Float64Array, rate: Float64Array): void {
    const w = this.workspace;
    w.t = t;
    w.y = y;
    w.rate = rate;
    clear(rate);
    this.place(y);
    this.pressures(y);
    clear(w.gain);
    const { running, equations, exchange } = this;
    for (let i = 0; i < equations.length; i++) equations[i](running[i]);
    exchange.scatter();
    if (w.wantJacobian) exchange.scatterPartials();
    const { gain, direction } = w;
    const { angleState, speedState, contentState } = this.wiring;
    for (let i = 0; i < contentState.length; i++) rate[contentState[i]] = gain[i];
    for (let c = 0; c < angleState.length; c++) {
      const sign = direction[c];
      if (sign === 0) continue;
      rate[angleState[c]] = w.speed[c];
      rate[speedState[c]] = (w.drive[c] - sign * w.capacity[c]) * w.inverseInertia[c];
    }
  }

  /**
   * Sizes of the contents at this point: by pressure where the oil is firm, by volume where air
   * makes it soft.
   */
  private weigh(): void {
    const { content, byContent } = this.workspace;
    const { contentState } = this.wiring;
    const { scale, firmScale, vented } = this;
    const half = 0.5 * this.law.bulkModulus;
    for (let i = 0; i < contentState.length; i++) {
      if (vented[i] === 1) continue;
      const firm = byContent[i] * content[i] > half;
      scale[contentState[i]] = firm ? firmScale[i] : Math.min(firmScale[i], CONTENT_SCALE);
    }
  }

  /**
   * Angles, static moments, travels and lever arms. What belongs to held coordinates stays as it
   * was until `refresh`.
   */
  private place(y: Float64Array): void {
    const { workspace: w, tables, stale, statics, staticSlopes } = this;
    const { angle, speed, direction, travel, ratio, curvature, attachmentCoordinate } = w;
    const { angleState, speedState } = this.wiring;
    this.stale = false;
    for (let c = 0; c < angleState.length; c++) {
      const resist = this.damping[c];
      const v = y[speedState[c]];
      const moves = stale || direction[c] !== 0;
      speed[c] = v;
      if (moves) {
        angle[c] = y[angleState[c]];
        tables.at(this.momentTable[c], angle[c]);
        statics[c] = tables.value;
        staticSlopes[c] = tables.slope;
      }
      w.drive[c] = statics[c] - resist * v;
      w.driveByAngle[c] = staticSlopes[c];
      w.driveBySpeed[c] = -resist;
      w.viscous[c] = resist;
      w.capacity[c] = this.friction[c];
      if (stale || (moves && this.varies[c] === 1)) {
        tables.at(this.inertiaTable[c], angle[c]);
        w.inverseInertia[c] = direction[c] === 0 ? 0 : 1 / tables.value;
        w.drive[c] -= 0.5 * tables.slope * v * v;
        w.driveBySpeed[c] -= tables.slope * v;
      }
    }
    for (let a = 0; a < this.travelTable.length; a++) {
      const c = attachmentCoordinate[a];
      if (direction[c] === 0 && !stale) continue;
      const table = this.travelTable[a];
      if (table < 0) {
        travel[a] = angle[c];
        ratio[a] = 1;
        curvature[a] = 0;
      } else {
        tables.at(table, angle[c]);
        travel[a] = tables.value;
        ratio[a] = tables.slope;
        curvature[a] = tables.curvature;
      }
    }
  }

  /** Pressures of the oil nodes, with their partial derivatives (see medium/content.ts). */
  private pressures(y: Float64Array): void {
    const { pressure, content, byContent, byVolume, travel, wantJacobian } = this.workspace;
    const { contentState } = this.wiring;
    const { bulkModulus, ambient, vapour, freeAir } = this.law;
    const { volume, compliance, pocket, vented, chamberStart, chamberArea, chamberAttachment } =
      this;
    const d = ambient - vapour;
    const give = 1 / bulkModulus;
    const full = 1 + d * give;
    for (let i = 0; i < contentState.length; i++) {
      const n = y[contentState[i]];
      content[i] = n;
      if (vented[i] === 1) continue;
      let v = volume[i];
      const end = chamberStart[i + 1];
      for (let k = chamberStart[i]; k < end; k++) v += chamberArea[k] * travel[chamberAttachment[k]];
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

  /** Pressure partials become state partials; the coordinates' own rows are filled. */
  private turnPartials(values: Float64Array): void {
    const w = this.workspace;
    const { count, node, scaledBy, contentSlot, chamberStart, chamberSlot, chamber } =
      this.wiring.entries;
    const { chamberArea, chamberAttachment, sweep } = this;
    const { partial, byContent, byVolume, inverseInertia, direction, attachmentCoordinate } = w;
    // Volume swept per radian by every chamber; a held coordinate sweeps nothing.
    for (let k = 0; k < sweep.length; k++) {
      const a = chamberAttachment[k];
      sweep[k] = direction[attachmentCoordinate[a]] === 0 ? 0 : chamberArea[k] * w.ratio[a];
    }
    for (let i = 1; i < count; i++) {
      const c = scaledBy[i];
      const g = c < 0 ? partial[i] : partial[i] * inverseInertia[c];
      if (g === 0) continue;
      const j = node[i];
      values[contentSlot[i]] += g * byContent[j];
      const end = chamberStart[i + 1];
      const gv = g * byVolume[j];
      for (let k = chamberStart[i]; k < end; k++) values[chamberSlot[k]] += gv * sweep[chamber[k]];
    }
    const { angleBySpeed, speedByAngle, speedBySpeed, angleState, speedState } = this.wiring;
    for (let c = 0; c < angleState.length; c++) {
      if (direction[c] === 0) continue;
      const inverse = inverseInertia[c];
      let byAngle = w.driveByAngle[c];
      if (this.varies[c] === 1) {
        this.tables.at(this.inertiaTable[c], w.angle[c]);
        const { slope, curvature } = this.tables;
        byAngle -= 0.5 * curvature * w.speed[c] * w.speed[c] + slope * w.rate[speedState[c]];
      }
      values[angleBySpeed[c]] += 1;
      values[speedByAngle[c]] += byAngle * inverse;
      values[speedBySpeed[c]] += w.driveBySpeed[c] * inverse;
    }
  }
}

/** Small arrays: a loop is quicker than the built-in fill. */
function clear(a: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] = 0;
}
