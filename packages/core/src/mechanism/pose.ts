/**
 * Where a leg's parts point at an angle: its own axis, the axle turned about it, the shortening
 * of its strut; and the force of the strut's gas. Shared by the leg's moments and its outline.
 *
 * Source: rotation of a frame of unit vectors (any text on engineering mechanics); polytropic
 * change of state (any text on thermodynamics).
 */
import type { Parameters, ParameterValue, Point3, Shape } from '../define/index.js';
import { add, cross, curve, dot, num, times, type CurvePoint } from './statics.js';

const AMBIENT = 101_325;
const UP: Point3 = { x: 0, y: 0, z: 1 };

/** Horizontal direction, in the aircraft's axes, that a word means for a part on this side. */
export function towards(word: ParameterValue, pivotRight: number): Point3 {
  const right = pivotRight < 0 ? -1 : 1;
  switch (word) {
    case 'aft':
      return { x: 1, y: 0, z: 0 };
    case 'forward':
      return { x: -1, y: 0, z: 0 };
    case 'outboard':
      return { x: 0, y: right, z: 0 };
    default:
      return { x: 0, y: -right, z: 0 };
  }
}

/** The leg's axes, unit vectors, at an angle: along it, its derivative, the axle and its derivative, the shortening. */
export interface Pose {
  readonly along: Point3;
  readonly alongRate: Point3;
  readonly axle: Point3;
  readonly axleRate: Point3;
  readonly shortening: CurvePoint;
}

/** Rounds the corner where the link takes a strut over that hangs short, m. */
const CORNER = 0.002;

/**
 * Shortening against angle: what is left of the link's, or what the strut hangs short by where
 * that is more (the link is slack there, and the gas pushes on the sticking strut, not on the link).
 */
export function shortened(p: Parameters): (angle: number) => CurvePoint {
  const link = curve(p.shortening as Shape);
  const share = num(p, 'linkShare');
  const stuck = num(p, 'stuckShort');
  if (share === 1 && stuck === 0) return link;
  return (angle) => {
    const { value, slope, bend } = link(angle);
    if (stuck === 0) return { value: share * value, slope: share * slope, bend: share * bend };
    const over = share * value - stuck;
    const size = Math.hypot(over, CORNER);
    const part = 0.5 * (1 + over / size);
    const turn = (0.5 * CORNER * CORNER) / size ** 3;
    return {
      value: stuck + 0.5 * (over + size),
      slope: part * share * slope,
      bend: part * share * bend + turn * (share * slope) ** 2,
    };
  };
}

/** Largest shortening that is met, m. */
export function mostShortened(p: Parameters): number {
  return Math.max(
    num(p, 'linkShare') * Math.max(...(p.shortening as Shape).y),
    num(p, 'stuckShort'),
  );
}

export function poses(p: Parameters): (angle: number) => Pose {
  const h = towards(p.retract, num(p, 'pivotRight'));
  const side = num(p, 'pivotRight') < 0 ? -1 : 1;
  const hinge = cross(times(-1, UP), h);
  const outboard: Point3 = { x: 0, y: side, z: 0 };
  const rate = num(p, 'twist') / num(p, 'travel');
  const shortening = shortened(p);
  const misaligned = num(p, 'misaligned');
  return (angle) => {
    const t = num(p, 'rake') + angle;
    const along = add(times(-Math.cos(t), UP), times(Math.sin(t), h));
    const alongRate = add(times(Math.sin(t), UP), times(Math.cos(t), h));
    // The axle without its own turn, and the third axis, mirrored between left and right.
    const plain = add(times(dot(outboard, h), alongRate), times(dot(outboard, hinge), hinge));
    const plainRate = times(-dot(outboard, h), along);
    const third = times(side, cross(along, plain));
    const thirdRate = times(side, add(cross(alongRate, plain), cross(along, plainRate)));
    const turn = misaligned + rate * angle;
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    return {
      along,
      alongRate,
      axle: add(times(c, plain), times(s, third)),
      axleRate: add(
        add(times(c, plainRate), times(s, thirdRate)),
        times(rate, add(times(-s, plain), times(c, third))),
      ),
      shortening: shortening(angle),
    };
  };
}

/** Force of the strut's gas against shortening, N, at a shortening in m. */
export function gasForce(p: Parameters, s: number): number {
  const area = num(p, 'gasArea');
  if (area === 0) return 0;
  const v = num(p, 'gasVolume');
  const ratio = v / Math.max(v - area * s, 1e-3 * v);
  return area * ((num(p, 'gasPressure') + AMBIENT) * Math.pow(ratio, num(p, 'gasIndex')) - AMBIENT);
}
