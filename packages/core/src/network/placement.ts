import type { Shape } from '../define/index.js';
import type { Curve } from '../solver/index.js';
import type { AttachmentPlan, CoordinatePlan } from './plan.js';
import { TableBuilder, type Tables } from './table.js';
import type { Workspace } from './workspace.js';

/**
 * Where the mechanisms are: static moments, inertia, travels and lever arms of what hangs on
 * them, from their angles. What belongs to held coordinates stays as it was until `refresh`.
 */
export class Placement {
  private readonly tables: Tables;
  private readonly travelTable: Int32Array;
  private readonly momentTable: Int32Array;
  private readonly inertiaTable: Int32Array;
  /** Static moments and their slopes, kept for held coordinates. */
  private readonly statics: Float64Array;
  private readonly staticSlopes: Float64Array;
  /** 1 where the inertia changes with the angle. */
  private readonly varies: Uint8Array;
  /** Friction and damping of coordinates where they are constant, and tables where not (else -1). */
  private readonly damping: Float64Array;
  private readonly friction: Float64Array;
  private readonly dampingTable: Int32Array;
  private readonly frictionTable: Int32Array;
  private stale = true;

  constructor(
    private readonly coordinates: readonly CoordinatePlan[],
    private readonly attachments: readonly AttachmentPlan[],
  ) {
    const builder = new TableBuilder();
    const range = (c: number): [number, number] => {
      const { low, high } = coordinates[c].data;
      return [low, high];
    };
    this.travelTable = Int32Array.from(attachments, (a) =>
      a.travel === undefined ? -1 : builder.add(a.travel, ...range(a.coordinate)),
    );
    this.momentTable = Int32Array.from(coordinates, (c, i) =>
      builder.add(c.data.moment, ...range(i)),
    );
    this.inertiaTable = Int32Array.from(coordinates, (c, i) =>
      builder.add(c.data.inertia, ...range(i)),
    );
    const shaped = (v: number | Shape, c: number): number =>
      typeof v === 'number' ? -1 : builder.add(v, ...range(c));
    this.dampingTable = Int32Array.from(coordinates, (c, i) => shaped(c.data.damping, i));
    this.frictionTable = Int32Array.from(coordinates, (c, i) => shaped(c.data.friction, i));
    this.tables = builder.build();
    this.statics = new Float64Array(coordinates.length);
    this.staticSlopes = new Float64Array(coordinates.length);
    this.varies = Uint8Array.from(coordinates, (c) =>
      c.data.inertia.y.some((v) => v !== c.data.inertia.y[0]) ? 1 : 0,
    );
    const constant = (v: number | Shape): number => (typeof v === 'number' ? v : 0);
    this.damping = Float64Array.from(coordinates, (c) => constant(c.data.damping));
    this.friction = Float64Array.from(coordinates, (c) => constant(c.data.friction));
  }

  /** To be called when a mode, a bound or a held angle has changed. */
  refresh(): void {
    this.stale = true;
  }

  /** Angles at the start, and the travels there. */
  initial(
    y: Float64Array,
    angleState: Int32Array,
    start: Readonly<Record<string, number>>,
  ): Float64Array {
    this.coordinates.forEach((c, i) => {
      const angle = start[c.name] ?? c.data.initial;
      y[angleState[i]] = Math.min(Math.max(angle, c.data.low), c.data.high);
    });
    return Float64Array.from(
      this.attachments,
      (a, i) => this.travelAt(i, y[angleState[a.coordinate]]).value,
    );
  }

  /** Angle of its coordinate at which an attachment has a travel, by bisection; the nearer end where there is none. */
  coordinateAngle(a: number, travel: number): number {
    const table = this.travelTable[a];
    if (table < 0) return travel;
    const sense = this.senseOf(a);
    let { low, high } = this.coordinates[this.attachments[a].coordinate].data;
    for (let i = 0; i < 60; i++) {
      const middle = 0.5 * (low + high);
      this.tables.at(table, middle);
      if (sense * (this.tables.value - travel) < 0) low = middle;
      else high = middle;
    }
    return 0.5 * (low + high);
  }

  /** 1 where an attachment's travel is larger at the high end of its coordinate than at the low one, else -1. */
  senseOf(a: number): number {
    const table = this.travelTable[a];
    if (table < 0) return 1;
    const { low, high } = this.coordinates[this.attachments[a].coordinate].data;
    this.tables.at(table, low);
    const first = this.tables.value;
    this.tables.at(table, high);
    return this.tables.value >= first ? 1 : -1;
  }

  /** Kinetic energy at the point last evaluated, J. */
  kineticEnergy(w: Workspace): number {
    let sum = 0;
    for (let c = 0; c < w.angle.length; c++) {
      this.tables.at(this.inertiaTable[c], w.angle[c]);
      sum += 0.5 * this.tables.value * w.speed[c] * w.speed[c];
    }
    return sum;
  }

  /** Travel of an attachment (m, rad for plain links) at an angle of its coordinate; good until the next call. */
  travelAt(a: number, angle: number): Curve {
    const { tables, plain } = this;
    const table = this.travelTable[a];
    if (table < 0) {
      plain.value = angle;
      return plain;
    }
    tables.at(table, angle);
    return tables;
  }
  private readonly plain = { value: 0, slope: 1, curvature: 0 };

  /** Static moment of a coordinate (weight, springs) at the point last evaluated, N m. */
  staticMoment(c: number): number {
    return this.statics[c];
  }

  evaluate(w: Workspace, y: Float64Array, angleState: Int32Array, speedState: Int32Array): void {
    const { tables, stale, statics, staticSlopes } = this;
    const { angle, speed, direction, travel, ratio, curvature, attachmentCoordinate } = w;
    this.stale = false;
    for (let c = 0; c < angleState.length; c++) {
      const v = y[speedState[c]];
      const moves = stale || direction[c] !== 0;
      speed[c] = v;
      if (moves) angle[c] = y[angleState[c]];
      let resist = this.damping[c];
      let rub = this.friction[c];
      let slope = 0;
      if (this.dampingTable[c] >= 0) {
        tables.at(this.dampingTable[c], angle[c]);
        resist = tables.value;
        slope -= tables.slope * v;
      }
      if (this.frictionTable[c] >= 0) {
        tables.at(this.frictionTable[c], angle[c]);
        rub = tables.value > 0 ? tables.value : 0;
        if (tables.value > 0) slope -= direction[c] * tables.slope;
      }
      if (moves) {
        tables.at(this.momentTable[c], angle[c]);
        statics[c] = tables.value;
        staticSlopes[c] = tables.slope;
      }
      w.drive[c] = statics[c] - resist * v;
      w.driveByAngle[c] = staticSlopes[c] + slope;
      w.driveBySpeed[c] = -resist;
      w.viscous[c] = resist;
      w.capacity[c] = rub;
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
      const at = this.travelAt(a, angle[c]);
      travel[a] = at.value;
      ratio[a] = at.slope;
      curvature[a] = at.curvature;
    }
  }

  /** Partial of a moving coordinate's net moment against its angle that a varying inertia adds, N m/rad; `acceleration` in rad/s2. */
  inertiaTerm(c: number, w: Workspace, acceleration: number): number {
    if (this.varies[c] === 0) return 0;
    this.tables.at(this.inertiaTable[c], w.angle[c]);
    const { slope, curvature } = this.tables;
    return -(0.5 * curvature * w.speed[c] * w.speed[c] + slope * acceleration);
  }
}
