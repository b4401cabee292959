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
import type { ParameterDefinitions, Parameters, Point3 } from '../define/index.js';
import { gasForce, poses, shortened } from './pose.js';
import { add, num, times } from './statics.js';

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

/** What the ramp takes off the strut's full length, m: the tyre goes up along it. */
function squeezed(p: Parameters, angle: number): number {
  const onto = Math.max(0, angle - num(p, 'rampFrom'));
  return num(p, 'length') * Math.tan(num(p, 'rampAngle')) * onto;
}

/** Shortening of the strut of a leg that may lie on its ramp, m: what is left of the link's or the ramp's, whichever is more. */
export function lying(p: Parameters): (angle: number) => number {
  const own = shortened(p);
  if (num(p, 'rampAngle') === 0 || num(p, 'linkShare') === 1) return (angle) => own(angle).value;
  return (angle) => Math.max(own(angle).value, squeezed(p, angle));
}

/** Load of the ramp at `angle` (rad). */
export function rampLoad(p: Parameters, angle: number): RampLoad {
  const incline = num(p, 'rampAngle');
  const broken = 1 - num(p, 'linkShare');
  const onto = angle - num(p, 'rampFrom');
  if (incline === 0 || broken === 0 || onto <= 0) return NONE;
  const arm = num(p, 'length');
  const x = Math.min(1, onto / ONSET);
  const force = broken * x * x * (3 - 2 * x) * gasForce(p, squeezed(p, angle));
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

/** Points that stand for the ramp's face: straight to a tenth of a millimetre between them. */
const POINTS = 13;

/** The ramp in the bay, for drawings. */
export interface Ramp {
  /** Its face, from where the tyre meets it to where the tyre lies when up; metres, aircraft axes. */
  readonly face: readonly Point3[];
  /** Whether the tyre is pressed on it at an angle of the leg, rad. */
  readonly bears: (angle: number) => boolean;
}

/** The ramp of a leg, as the tyre of an unshortened strut would find it; undefined for a leg without one. */
export function rampOf(p: Parameters): Ramp | undefined {
  const from = num(p, 'rampFrom');
  const high = num(p, 'travel');
  if (num(p, 'rampAngle') === 0 || from >= high) return undefined;
  const pivot: Point3 = { x: num(p, 'pivotAft'), y: num(p, 'pivotRight'), z: num(p, 'pivotUp') };
  const pose = poses(p);
  const face = Array.from({ length: POINTS }, (_, i) => {
    const angle = from + ((high - from) * i) / (POINTS - 1);
    const at = pose(angle);
    const reach = num(p, 'length') - squeezed(p, angle) + num(p, 'tyreRadius');
    return add(add(pivot, times(reach, at.along)), times(num(p, 'wheelOffset'), at.axle));
  });
  const own = shortened(p);
  const whole = num(p, 'linkShare') === 1;
  return { face, bears: (q) => !whole && q > from && squeezed(p, q) > own(q).value };
}
