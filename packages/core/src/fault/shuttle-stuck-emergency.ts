import type { FaultDefinition } from '../define/index.js';

export const shuttleStuckEmergency: FaultDefinition = {
  kind: 'shuttle-stuck-emergency',
  title: 'Shuttle stuck on its emergency side',
  group: 'emergency system',
  meaning: 'After a blow-down the shuttle has not gone back: the normal line ends at a shut seat.',
  shows: 'That leg will not go up, for its oil cannot leave, or has no power down.',
  confirm: 'Read the line at the actuator; tap the shuttle and watch.',
  remedy: 'Reset, strip or replace.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Only after a blow-down.',
  befalls: ['shuttle-valve'],
  worst: 'stays on the emergency seat',
  slows: 'both',
  change: (_p, severity) => ({ stuck: severity > 0 ? 'emergency' : 'none' }),
};
