import type { Bends, Curve } from '../solver/index.js';
import type { Placement } from './placement.js';

/** A chamber whose volume a mechanism moves: the oil in it follows the angle. */
export interface MovedChamber {
  /** Numbers of the states: oil content, angle, angular speed. */
  readonly content: number;
  readonly angle: number;
  readonly speed: number;
  readonly attachment: number;
  /** Piston area, m2; below zero where the chamber shrinks as the travel grows. */
  readonly area: number;
}

/** The volumes that pistons sweep, as curves of the angles (see the solver's shear.ts). */
export class ChamberBends implements Bends {
  readonly follower: Int32Array;
  readonly leader: Int32Array;
  readonly pace: Int32Array;
  private readonly attachment: Int32Array;
  private readonly area: Float64Array;

  constructor(
    chambers: readonly MovedChamber[],
    private readonly placement: Placement,
  ) {
    this.follower = Int32Array.from(chambers, (c) => c.content);
    this.leader = Int32Array.from(chambers, (c) => c.angle);
    this.pace = Int32Array.from(chambers, (c) => c.speed);
    this.attachment = Int32Array.from(chambers, (c) => c.attachment);
    this.area = Float64Array.from(chambers, (c) => c.area);
  }

  at(bend: number, angle: number): Curve {
    const { curve } = this;
    const travel = this.placement.travelAt(this.attachment[bend], angle);
    const area = this.area[bend];
    curve.value = area * travel.value;
    curve.slope = area * travel.slope;
    curve.curvature = area * travel.curvature;
    return curve;
  }
  private readonly curve = { value: 0, slope: 0, curvature: 0 };
}
