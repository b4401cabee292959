import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

/** End of the door's own range for this parameter, rad. */
const MOST_SEAL_ANGLE = Math.PI / 6;

export const doorSealTight: FaultDefinition = {
  kind: 'door-seal-tight',
  title: 'Door seal too thick, door rigged tight',
  group: 'actuators, locks, structure',
  meaning: 'The seal is squeezed harder and earlier than it should be.',
  shows:
    'The last part of closing is slow with a high gauge, or the door stays ajar; normal with the door disconnected.',
  confirm: 'Disconnect the door; or look for the bright line on the seal.',
  remedy: 'Trim or replace the seal, rig the door.',
  caution:
    'A tight door opens with a snap: keep out of its arc. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NAVEDTRA 14018 (rigging of doors); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Follows a new seal or a door re-rigged after repair.',
  befalls: ['door'],
  worst: 'five times the seal, plus the weight of the door',
  slows: 'up',
  change: (p, severity) => ({
    sealMoment: Math.min(
      5000,
      number(p, 'sealMoment') * (1 + 4 * severity) +
        severity * number(p, 'mass') * 9.81 * number(p, 'cog'),
    ),
    sealAngle: Math.min(
      number(p, 'sealAngle') * (1 + 0.5 * severity),
      number(p, 'travel'),
      MOST_SEAL_ANGLE,
    ),
  }),
};
