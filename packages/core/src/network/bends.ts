import type { Bends } from '../solver/index.js';
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

  look(y: Float64Array, value: Float64Array, slope: Float64Array, curvature: Float64Array): void {
    const { leader, attachment, area, placement } = this;
    for (let k = 0; k < leader.length; k++) {
      const travel = placement.travelAt(attachment[k], y[leader[k]]);
      value[k] = area[k] * travel.value;
      slope[k] = area[k] * travel.slope;
      curvature[k] = area[k] * travel.curvature;
    }
  }
}
