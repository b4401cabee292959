/**
 * Reservoir, vented: its node stays at ambient pressure plus the head of oil above it, and its
 * content is its level. Outlet and return are the same oil: connect both to one node. What
 * happens when it runs dry is the business of the supplies (shared/suction).
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';

const CAPACITY = 0;

/** Standard gravity, m/s2. */
const GRAVITY = 9.80665;

export const reservoir: DeviceDefinition = {
  kind: 'reservoir',
  title: 'Reservoir',
  summary: 'Vented tank that feeds the supplies and takes the return oil.',
  source: 'hydrostatic head',
  role: 'reservoir',
  parameters: {
    capacity: {
      title: 'capacity',
      quantity: 'volume',
      range: [1e-4, 0.1],
      default: 3e-3,
      why: 'three to four times the swept difference of all actuators; common practice, no source',
    },
    level: {
      title: 'oil in it at the start',
      quantity: 'volume',
      range: [0, 0.1],
      default: 2e-3,
      why: 'about two thirds full; common practice, no source',
    },
    head: {
      title: 'height of the oil above its ports',
      quantity: 'length',
      range: [0, 5],
      default: 0.3,
      why: 'tank above the pump; common practice, no source',
    },
  },
  ports: {
    outlet: { title: 'suction side', volume: 0 },
    return: { title: 'return side', volume: 0, optional: true },
  },
  readings: {
    level: { title: 'oil in the reservoir', quantity: 'volume', value: (d) => d.content(0) },
    fullness: {
      title: 'share of capacity',
      quantity: 'ratio',
      value: (d) => d.content(0) / d.k[CAPACITY],
    },
  },
  check: (p) =>
    number(p, 'level') <= number(p, 'capacity')
      ? []
      : [{ parameter: 'level', message: 'is above the capacity' }],
  vented: {
    ports: ['outlet', 'return'],
    pressure: (p, s) => s.ambient + s.density * GRAVITY * number(p, 'head'),
    content: (p) => number(p, 'level'),
  },
  prepare: (p) => Float64Array.of(number(p, 'capacity')),
  symbol: { name: 'reservoir', size: [6, 4], ports: { outlet: [-1, -2], return: [1, -2] } },
};
