import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const dryBearing: FaultDefinition = {
  kind: 'dry-bearing',
  title: 'Dry or seized pivot bearing',
  group: 'actuators, locks, structure',
  meaning: 'No grease: the pivot rubs.',
  shows:
    'Going up that leg comes last and the other earlier, the total hardly changes on a supply limited by its flow. Coming down it is slow, and by its weight alone it may hang.',
  confirm: 'Disconnect the actuator and swing by hand, left against right.',
  remedy: 'Clean, look for galling, grease; replace bushes as the approved data says.',
  caution:
    'A hanging leg can drop at a touch. Support it before anything is disconnected. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'AC 43.13-1B chapter 9 (lubrication of retracting gear, from memory); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Missing lubrication is the commonest finding.',
  befalls: ['leg', 'door', 'linked-member'],
  worst: 'friction of a third of the greatest weight moment',
  slows: 'both',
  change: (p, severity) => ({
    friction: add(
      number(p, 'friction'),
      (severity / 3) * number(p, 'mass') * 9.81 * number(p, 'cog'),
      1000,
    ),
    staticRatio: Math.max(
      number(p, 'staticRatio'),
      Math.min(3, number(p, 'staticRatio') + 0.3 * severity),
    ),
  }),
};
