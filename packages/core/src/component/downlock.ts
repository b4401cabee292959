/**
 * Downlock: a plunger or over-centre brace that holds the leg at the low end until pressure at
 * its release port, or the cable, lets it go. It must hold without pressure. See shared/lock.
 */
import type { DeviceDefinition } from '../define/index.js';
import {
  AT,
  lockCheck,
  lockConstants,
  lockInputs,
  lockModes,
  lockParameters,
  PLAY,
  WINDOW,
} from './shared/lock.js';

export const downlock: DeviceDefinition = {
  kind: 'downlock',
  title: 'Downlock',
  summary: 'Holds a leg down without pressure; released by the up line.',
  source: 'common practice, no source: plunger with window, play and release piston',
  role: 'downlock',
  parameters: lockParameters(0, 'legs count their angle from down'),
  ports: { release: { title: 'release', volume: 2e-6, optional: true } },
  links: { leg: { title: 'leg', shape: 'plain' } },
  inputs: lockInputs,
  modes: lockModes((d) => d.k[AT] + d.k[WINDOW] - d.travel(0), {
    link: 'leg',
    high: (d) => d.k[AT] + d.k[PLAY],
  }),
  check: lockCheck,
  prepare: lockConstants,
  symbol: { name: 'lock', size: [4, 4], ports: { release: [0, -2] } },
};
