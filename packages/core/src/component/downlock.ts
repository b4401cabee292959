/**
 * Downlock: a plunger or over-centre brace that holds the leg at the low end until pressure at
 * its release port, or the cable, lets it go. It must hold without pressure. See shared/lock.
 */
import type { DeviceDefinition } from '../define/index.js';
import { LOCK_SIZE, lockConstants, lockInputs, lockModes, lockSignals } from './shared/lock.js';
import { lockCheck, lockParameters } from './shared/lock-parameters.js';
import { number } from './shared/parameters.js';

export const downlock: DeviceDefinition = {
  kind: 'downlock',
  title: 'Downlock',
  summary: 'Holds a leg down without pressure; released by the up line.',
  source: 'common practice, no source: plunger with window, play and release piston',
  role: 'downlock',
  parameters: {
    ...lockParameters(0, 'legs count their angle from down'),
    overCentre: {
      title: 'how far past centre it rests',
      quantity: 'angle',
      range: [-0.1, 0.3],
      default: 0.03,
      why: 'about 2 degrees; common practice, no source. No swing on jacks shows it: it is read with a straightedge, and short of centre (below 0) the lock may give way under side load',
    },
  },
  ports: { release: { title: 'release', volume: 2e-6, optional: true } },
  links: { leg: { title: 'leg', shape: 'plain' } },
  inputs: lockInputs,
  signals: lockSignals,
  modes: lockModes('high'),
  check: lockCheck,
  readings: {
    overCentre: { title: 'past centre by', quantity: 'angle', value: (d) => d.k[LOCK_SIZE] },
  },
  prepare: (p, s) => Float64Array.of(...lockConstants(p, s, -1), number(p, 'overCentre')),
  symbol: { name: 'lock', size: [4, 4], ports: { release: [0, -2] } },
};
