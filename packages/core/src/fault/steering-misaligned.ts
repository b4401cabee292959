import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const steeringMisaligned: FaultDefinition = {
  kind: 'steering-misaligned',
  title: 'Centring or steering out of line',
  group: 'actuators, locks, structure',
  meaning:
    'The wheel does not stand straight when it comes up: centring cam worn, steering rod set wrong.',
  shows: 'Times and gauge are normal; the wheel lies askew and catches door or well.',
  confirm:
    'Look along the wheel with the leg coming up by hand pump; measure at both edges of the well.',
  remedy: 'Set the steering, replace the cam.',
  caution:
    'A wheel that catches a door can wedge: go by hand pump and stop before it touches. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Follows towing beyond the stops or a steering adjustment.',
  befalls: ['leg'],
  worst: 'wheel 25 degrees out of line',
  change: (p, severity) => ({
    misaligned: add(number(p, 'misaligned'), (25 * severity * Math.PI) / 180, Math.PI / 3),
  }),
  silent: true,
};
