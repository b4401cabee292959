/**
 * The jam after a shortening link has parted: the strut stays long, and the tyre is pressed by the
 * strut's gas on a greased ramp in the bay that it should have cleared.
 *
 * A body pressed by F square to its travel on a ramp inclined by a to that travel, friction angle
 * phi = atan(mu): along the travel it is pushed out by F tan(a - phi), or, where that is below zero,
 * held by it (self-locking); to push it further in takes F tan(a + phi). So it frees itself only if
 * tan(a) > mu. As a moment s with a Coulomb friction c, both exactly:
 *   s - c = r F tan(a - phi),  s + c = r F tan(a + phi)
 * The strut is squeezed by r tan(a) for every radian onto the ramp, and F is its gas force there.
 * Source: statics of the wedge (any text on engineering mechanics).
 */
import type { ParameterDefinitions, Parameters } from '../define/index.js';
import { gasForce } from './pose.js';
import { num } from './statics.js';

const DEG = Math.PI / 180;
/** Angle over which the tyre comes onto the ramp, rad. */
const ONSET = 1.5 * DEG;

export const rampParameters: ParameterDefinitions = {
  rampAngle: {
    title: 'Ramp in the bay, inclined to the travel of the tyre by',
    quantity: 'angle',
    range: [0, 60 * DEG],
    default: 0,
    why: 'None unless drawn; it guides a tyre that comes up too far out.',
  },
  rampFriction: {
    title: 'Friction coefficient of tyre on ramp',
    quantity: 'ratio',
    range: [0, 1.2],
    default: 0.2,
    why: 'Greased; dry rubber has 0.6 to 0.9. From memory.',
  },
  rampFrom: {
    title: 'Tyre meets the ramp at',
    quantity: 'angle',
    range: [0, 170 * DEG],
    default: 80 * DEG,
    why: 'Of the leg, with its strut not shortened; the last part of the travel.',
  },
};

/** How the ramp bears at an angle of the leg; nothing while the link is whole. */
export interface RampLoad {
  /** Force of the strut on the ramp, N. */
  readonly force: number;
  /** Moment towards up without friction, N m (below zero: it pushes the leg out), and what friction holds. */
  readonly moment: number;
  readonly friction: number;
}

const NONE: RampLoad = { force: 0, moment: 0, friction: 0 };

/** Load of the ramp at `angle` (rad). */
export function rampLoad(p: Parameters, angle: number): RampLoad {
  const incline = num(p, 'rampAngle');
  const broken = 1 - num(p, 'linkShare');
  const onto = angle - num(p, 'rampFrom');
  if (incline === 0 || broken === 0 || onto <= 0) return NONE;
  const arm = num(p, 'length');
  const x = Math.min(1, onto / ONSET);
  const force = broken * x * x * (3 - 2 * x) * gasForce(p, arm * Math.tan(incline) * onto);
  const phi = Math.atan(num(p, 'rampFriction'));
  const out = arm * force * Math.tan(incline - phi);
  const further = arm * force * Math.tan(Math.min(incline + phi, 80 * DEG));
  return { force, moment: -0.5 * (further + out), friction: 0.5 * (further - out) };
}

/** Whether the tyre frees itself from standstill, and by how much. */
export interface RampMargin {
  /**
   * Share of the strut's force that is left along the travel, tan(a - phi) where friction at rest
   * is that of motion: above zero it frees itself.
   */
  readonly margin: number;
  /** Moment that sets the leg off at the top of its travel, N m; below zero: what is needed to pull it out. */
  readonly moment: number;
}

/**
 * Margin of a leg's ramp with its link broken, with the leg's friction at standstill; undefined for a
 * leg without a ramp.
 */
export function rampMargin(p: Parameters): RampMargin | undefined {
  if (num(p, 'rampAngle') === 0) return undefined;
  const load = rampLoad({ ...p, linkShare: 0 }, num(p, 'travel'));
  const moment = -load.moment - num(p, 'staticRatio') * load.friction;
  const whole = num(p, 'length') * load.force;
  return { margin: whole > 0 ? moment / whole : 0, moment };
}
