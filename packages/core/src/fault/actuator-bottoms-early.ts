import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const actuatorBottomsEarly: FaultDefinition = {
  kind: 'actuator-bottoms-early',
  title: 'Actuator bottoms before the gear stop',
  group: 'actuators, locks, structure',
  meaning:
    'The rod end is screwed in too far (or the actuator is the wrong one): fully extended, it stands short of the end of the travel.',
  shows:
    'Full speed, then a stop just short of the lock with the gauge at its limit; the other end is normal.',
  confirm: 'Disconnect the rod end with the leg pressed home by hand: the pin does not line up.',
  remedy:
    'Set the rod length by the approved procedure; look at the threads in the inspection hole, and at the rod for a bend.',
  caution:
    'An actuator that takes the load of the stop bends or breaks its rod, and the lock is not reached. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'owners’ club archive, message 18587 (bent rods); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Follows a change of actuator or rod end.',
  befalls: ['double-acting-actuator', 'locking-actuator', 'single-acting-actuator'],
  worst: '8 % of the stroke, counted from full extension (stroke in hand is used up first)',
  change: (p, severity) => ({
    shortExtended: Math.max(
      number(p, 'shortExtended'),
      Math.min(
        0.2,
        number(p, 'shortExtended') + 0.08 * severity * number(p, 'stroke'),
        0.5 * number(p, 'stroke') - number(p, 'shortRetracted'),
      ),
    ),
  }),
};
