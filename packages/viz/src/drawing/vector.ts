/** Sums and products of vectors in the aircraft's axes. */
import type { Vector } from './projection.js';

export const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y + a.z * b.z;

export const add = (a: Vector, b: Vector): Vector => ({
  x: a.x + b.x,
  y: a.y + b.y,
  z: a.z + b.z,
});

export const sub = (a: Vector, b: Vector): Vector => ({
  x: a.x - b.x,
  y: a.y - b.y,
  z: a.z - b.z,
});

export const scaled = (f: number, a: Vector): Vector => ({ x: f * a.x, y: f * a.y, z: f * a.z });

export function cross(a: Vector, b: Vector): Vector {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

export function unit(a: Vector): Vector {
  return scaled(1 / (Math.hypot(a.x, a.y, a.z) || 1), a);
}
