import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const uplockReleaseLeak: FaultDefinition = {
  kind: 'uplock-release-leak',
  title: 'Uplock release cylinder leaks or is dry',
  group: 'actuators, locks, structure',
  meaning:
    'Worn or dry seals of the release piston: it takes more line pressure before the hook moves.',
  shows:
    'DOWN: the gauge climbs to a peak, then the leg drops off the hook with a bang; a long pause where the supply is slow to reach that peak, and where it never does, the leg stays up.',
  confirm:
    'Gauge in the down line at the moment of unlocking, left against right; listen for oil passing.',
  remedy: 'Reseal and grease the release cylinder.',
  caution:
    'The leg lets go at a higher pressure than it should: keep out from under it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Small seals that move seldom dry out.',
  befalls: ['uplock'],
  worst: 'release pressure higher by six tenths',
  change: (p, severity) => ({
    release: add(number(p, 'release'), 0.6 * severity * number(p, 'release'), 3e7),
  }),
};
