import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const reservoirLow: FaultDefinition = {
  kind: 'reservoir-low',
  title: 'Reservoir low',
  group: 'supply',
  meaning: 'There is not enough oil in the tank for the stroke that takes the most.',
  shows:
    'Sound at first; then foam, a howl, a ragged gauge and a cycle that stops short, at the position that holds most oil. The other way is quick again, since its oil comes back.',
  confirm: 'Read the level in the state that the placard asks for.',
  remedy: 'Find the leak, fill with the right oil, bleed, cycle, and read the level again.',
  caution:
    'A tank filled in the wrong state overflows, or empties on the next stroke. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a maker’s service manual of a light twin (slow retraction traced to low fluid and air)',
  prior: 'common',
  priorWhy: 'Oil leaves by every weep, and levels are read in the wrong state.',
  befalls: ['reservoir', 'standpipe-reservoir'],
  worst: 'no oil in it',
  slows: 'up',
  change: (p, severity) => ({ level: number(p, 'level') * (1 - severity) }),
};
