/**
 * Uplock: a hook that catches the leg (or door) at the high end and carries it until pressure
 * at its release port, or the cable, lets it go. See shared/lock.
 */
import type { DeviceDefinition } from '../define/index.js';
import { lockConstants, lockInputs, lockModes, lockSignals } from './shared/lock.js';
import { lockCheck, lockParameters } from './shared/lock-parameters.js';

export const uplock: DeviceDefinition = {
  kind: 'uplock',
  title: 'Uplock',
  summary:
    'Holds a leg up without pressure; leave its release port open where only a cable releases it.',
  source: 'common practice, no source: hook with window, play and release piston',
  role: 'uplock',
  parameters: lockParameters(
    undefined,
    "no default: the leg's angle when up, less what it over-travels",
  ),
  ports: { release: { title: 'release', volume: 2e-6, optional: true } },
  links: { leg: { title: 'leg', shape: 'plain' } },
  inputs: lockInputs,
  signals: lockSignals,
  modes: lockModes('low'),
  check: lockCheck,
  prepare: (p, s) => lockConstants(p, s, 1),
  symbol: { name: 'lock', size: [4, 4], ports: { release: [0, -2] } },
};
