/**
 * Direct-current motor with a constant field: torque falls in a straight line from stall to
 * none at its no-load speed, both in proportion to the voltage; the current is proportional to
 * the torque. Source: speed-torque line of the permanent-magnet motor, textbooks of electric
 * drives (from memory); a series-wound motor is steeper at stall and is taken as this line
 * through its two ends.
 */
import type { GuardFrame, ParameterDefinitions, Parameters } from '../../define/index.js';
import { number } from './parameters.js';

/** Places of {@link writeMotor} in `k`, the first numbers of it. */
const STALL = 0;
const PER_SPEED = 1;
const PER_TORQUE = 2;
const FRICTION = 3;
const PER_INERTIA = 4;
export const MOTOR_SIZE = 5;

/** Speed at which the friction of bearings and brushes has turned round, rad/s: smooth through rest. */
const ROUND = 5;

export const motorParameters: ParameterDefinitions = {
  stallTorque: {
    title: 'torque at rest, at rated voltage',
    quantity: 'moment',
    range: [0.05, 50],
    default: 3,
    why: 'twice to three times what the pump needs at its relief setting; common practice, no source',
  },
  noLoadSpeed: {
    title: 'speed without load, at rated voltage',
    quantity: 'angular-speed',
    range: [50, 2000],
    default: 420,
    why: 'some 4000 rev/min; common practice, no source',
  },
  ratedVoltage: {
    title: 'rated voltage',
    quantity: 'voltage',
    range: [6, 120],
    default: 14,
    why: 'a 12 V system with its alternator on line; common practice, no source',
  },
  voltage: {
    title: 'voltage at the motor',
    quantity: 'voltage',
    range: [0, 150],
    default: 14,
    why: 'the rated one; a weak battery or a poor joint gives less and the motor slows and stalls',
  },
  inertia: {
    title: 'moment of inertia of motor and pump',
    quantity: 'inertia',
    range: [1e-5, 0.1],
    default: 2e-4,
    why: 'an armature of 60 mm and half a kilogram; common practice, no source',
  },
  friction: {
    title: 'friction torque of bearings and brushes',
    quantity: 'moment',
    range: [0, 10],
    default: 0.08,
    why: 'two to three per cent of the stall torque; common practice, no source',
  },
};

/** Constants of a motor, into the first of `k`. */
export function writeMotor(k: Float64Array, p: Parameters): void {
  const stall = number(p, 'stallTorque');
  const speed = number(p, 'noLoadSpeed');
  const rated = number(p, 'ratedVoltage');
  k[STALL] = (stall * number(p, 'voltage')) / rated;
  k[PER_SPEED] = stall / speed;
  // Volts per rad/s are newton metres per ampere: what is not heat is work.
  k[PER_TORQUE] = speed / rated;
  k[FRICTION] = number(p, 'friction');
  k[PER_INERTIA] = 1 / number(p, 'inertia');
}

/**
 * Torque of the motor, N m, at the speed that is state `speed`; `way` is 1, -1, or 0 when it is
 * switched off (then its circuit is open and it does not brake).
 */
export function motorTorque(d: GuardFrame, speed: number, way: number): number {
  return way === 0 ? 0 : way * d.k[STALL] - d.k[PER_SPEED] * d.state(speed);
}

/** Current, A, positive when it draws. */
export function motorCurrent(d: GuardFrame, speed: number, way: number): number {
  return way * motorTorque(d, speed, way) * d.k[PER_TORQUE];
}

/** Acceleration by motor and friction alone, rad/s2. */
export function ownAcceleration(d: GuardFrame, speed: number, way: number): number {
  const w = d.state(speed);
  const rub = (d.k[FRICTION] * w) / Math.sqrt(w * w + ROUND * ROUND);
  return (motorTorque(d, speed, way) - rub) * d.k[PER_INERTIA];
}

/** Slope of {@link ownAcceleration} against the speed, 1/s. */
export function accelerationSlope(d: GuardFrame, speed: number, way: number): number {
  const w = d.state(speed);
  const size = Math.sqrt(w * w + ROUND * ROUND);
  const rub = (d.k[FRICTION] * ROUND * ROUND) / (size * size * size);
  return -((way === 0 ? 0 : d.k[PER_SPEED]) + rub) * d.k[PER_INERTIA];
}

/** Acceleration per unit torque, 1/(kg m2). */
export function perInertia(d: GuardFrame): number {
  return d.k[PER_INERTIA];
}
