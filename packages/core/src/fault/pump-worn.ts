import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const pumpWorn: FaultDefinition = {
  kind: 'pump-worn',
  title: 'Engine pump worn',
  group: 'supply',
  meaning: 'Oil slips back inside the pump from its outlet to its inlet.',
  shows:
    'All services slower going up, more when hot; down hardly changes. Normal on the ground supply.',
  confirm: 'Swap the supply: the fault stays behind with the pump. Measure flow at pressure.',
  remedy: 'Overhaul or replace the pump; look for metal in the filter.',
  caution:
    'A propeller that turns for this test kills: use the procedure of the approved data, or the ground supply. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'common',
  priorWhy: 'Pumps wear from the first hour.',
  befalls: ['engine-pump', 'compensated-pump'],
  worst: 'efficiency down to three tenths of what it was',
  slows: 'up',
  change: (p, severity) => ({
    efficiency: Math.max(0.05, number(p, 'efficiency') * (1 - 0.7 * severity)),
  }),
};
