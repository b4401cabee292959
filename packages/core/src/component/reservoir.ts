/**
 * Reservoir, vented or with its head space under pressure: its node stays at ambient pressure
 * plus head space plus the head of oil above it, and its content is its level. Outlet and return
 * are the same oil: connect both to one node. What happens when it runs dry is the business of
 * the supplies (shared/suction). A blocked vent is a `headspace` below zero: the vacuum is taken
 * as constant, its growth as the level falls is left out.
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';
import { levelFits, tankParameters, tankPressure } from './shared/tank.js';

const CAPACITY = 0;

export const reservoir: DeviceDefinition = {
  kind: 'reservoir',
  title: 'Reservoir',
  summary: 'Vented tank that feeds the supplies and takes the return oil.',
  source: 'hydrostatic head',
  role: 'reservoir',
  parameters: tankParameters,
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
  check: levelFits,
  vented: {
    ports: ['outlet', 'return'],
    pressure: tankPressure,
    content: (p) => number(p, 'level'),
  },
  prepare: (p) => Float64Array.of(number(p, 'capacity')),
  symbol: { name: 'reservoir', size: [6, 4], ports: { outlet: [-1, -2], return: [1, -2] } },
};
