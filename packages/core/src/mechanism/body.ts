/** What every swinging part has: friction beside its tight spot, attitude, place, and its inertia's check. */
import type { ParameterDefinitions, Parameters } from '../define/index.js';
import { num } from './statics.js';
import { tightSpot } from './tight-spot.js';

const DEG = Math.PI / 180;

/** Figures of a pivot in which parts differ; SI. */
interface Pivot {
  /** `pivot` or `hinge`. */
  readonly what: string;
  readonly friction: number;
  readonly frictionMost: number;
  readonly frictionWhy: string;
  readonly damping: number;
  readonly dampingMost: number;
  readonly dampingWhy: string;
  readonly reboundWhy: string;
}

/** Friction, damping, rebound and attitude of a part on a pivot. */
export const swinging = (p: Pivot): ParameterDefinitions => ({
  friction: {
    title: `${p.what === 'hinge' ? 'Hinge' : 'Pivot'} friction moment`,
    quantity: 'moment',
    range: [0, p.frictionMost],
    default: p.friction,
    why: p.frictionWhy,
  },
  ...tightSpot(p.frictionMost, p.what),
  staticRatio: {
    title: 'Static over sliding friction',
    quantity: 'ratio',
    range: [1, 3],
    default: 1.2,
    why: 'Greased bronze on steel, from memory.',
  },
  damping: {
    title: 'Viscous damping',
    quantity: 'angular-damping',
    range: [0, p.dampingMost],
    default: p.damping,
    why: p.dampingWhy,
  },
  restitution: {
    title: 'Rebound at the end stops',
    quantity: 'ratio',
    range: [0, 0.9],
    default: 0.1,
    why: p.reboundWhy,
  },
  pitch: {
    title: 'Aircraft pitch on jacks',
    quantity: 'angle',
    range: [-30 * DEG, 30 * DEG],
    default: 0,
    why: 'Nose up positive; level in flight attitude unless said otherwise.',
  },
});

/** Where a part is, metres from the aircraft datum, and where it starts: `prefix` pivot or hinge. */
export const placed = (
  prefix: 'pivot' | 'hinge',
  title: string,
  fore: string,
  startWhy: string,
): ParameterDefinitions => ({
  [`${prefix}Aft`]: {
    title: `${title}, ${fore}aft of datum`,
    quantity: 'length',
    range: [-50, 50],
    default: 0,
    why: 'Aircraft drawing.',
  },
  [`${prefix}Right`]: {
    title: `${title}, right of centre line`,
    quantity: 'length',
    range: [-30, 30],
    default: 0,
    why: 'Aircraft drawing; negative on the left.',
  },
  [`${prefix}Up`]: {
    title: `${title}, above datum`,
    quantity: 'length',
    range: [-10, 10],
    default: 0,
    why: 'Aircraft drawing.',
  },
  initial: {
    title: 'Angle at the start',
    quantity: 'angle',
    range: [0, 170 * DEG],
    default: 0,
    why: startWhy,
  },
});

/** A body's moment of inertia about its pivot is at least mass times the square of its centre's distance (Huygens and Steiner). */
export function inertiaFits(p: Parameters): { parameter: string; message: string }[] {
  if (num(p, 'inertia') >= 0.999 * num(p, 'mass') * num(p, 'cog') ** 2) return [];
  const message = 'is less than mass times the square of the centre of gravity distance';
  return [{ parameter: 'inertia', message }];
}
