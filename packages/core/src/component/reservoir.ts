/**
 * Reservoir, vented or with its head space under pressure: its node stays at ambient pressure
 * plus head space plus the head of oil above it, and its content is its level. Outlet and return
 * are the same oil: connect both to one node. What happens when it runs dry is the business of
 * the supplies (shared/suction). A blocked vent is a `headspace` below zero: the vacuum is taken
 * as constant, its growth as the level falls is left out.
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';
import { DRY } from './shared/suction.js';
import { levelFits, tankParameters, tankPressure } from './shared/tank.js';

const CAPACITY = 0;
const OUTLET = 0;

/** Oil left when the outlet is about to draw air, and what must be there again to cover it, m3: some mm in a tank a hand wide. */
const LEAST = 5e-5;
const COVERED = 8e-5;
/** A pump empties such a rest within tenths of a second: no step may stride over that, s; what is dry fills again more slowly. */
const WATCHED = 4e-3;
const DRY_WATCHED = 0.04;

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
  modes: {
    covered: {
      title: 'outlet covered',
      guards: [
        {
          to: 'nearly dry',
          when: (d) => 1 - d.content(OUTLET) / LEAST,
          cause: 'the level has fallen to the outlet',
          reads: ['outlet'],
        },
      ],
    },
    'nearly dry': {
      title: 'outlet nearly dry',
      active: true,
      longestStep: (d) => (d.content(OUTLET) > DRY ? WATCHED : DRY_WATCHED),
      guards: [
        {
          to: 'covered',
          when: (d) => d.content(OUTLET) / COVERED - 1,
          cause: 'the level has risen above the outlet',
          reads: ['outlet'],
        },
      ],
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
