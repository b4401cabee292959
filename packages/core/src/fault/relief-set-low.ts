import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const reliefSetLow: FaultDefinition = {
  kind: 'relief-set-low',
  title: 'Relief valve set low',
  group: 'supply',
  meaning: 'The relief valve opens below its setting: wrong adjustment, tired spring.',
  shows:
    'Moves at normal speed while the load is light, then stalls at the heavy point: end of travel, door seal. The relief is hot and hisses.',
  confirm: 'Dead-head the system with a gauge; adjust once, by the book.',
  remedy: 'Set or reseat the valve; replace a tired spring.',
  caution:
    'Never screw a relief valve up to overcome a stall before the cause of the load is known. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Settings seldom wander; they are disturbed at overhaul.',
  befalls: ['relief-valve'],
  worst: '40 % of the setting',
  slows: 'up',
  change: (p, severity) => ({
    crack: number(p, 'crack') * (1 - 0.6 * severity),
    full: number(p, 'full') * (1 - 0.6 * severity),
  }),
};
