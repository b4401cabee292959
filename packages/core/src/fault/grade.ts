/** What the grading of faults shares. */
import type { Parameters } from '../define/index.js';

/** Leak coefficient that passes one US gallon a minute at 1000 psi, m3/(s Pa): 6.309e-5 / 6.895e6. */
export const GALLON_AT_1000_PSI = 9.15e-12;

/** A number among the parameters (the reader has checked that it is one). */
export function number(p: Parameters, name: string): number {
  return p[name] as number;
}

/** Sum, held at `most` (by default the largest leak coefficient a device takes) unless it was above already. */
export function add(healthy: number, more: number, most = 1e-9): number {
  return Math.max(healthy, Math.min(most, healthy + more));
}
