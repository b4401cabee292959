import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const accumulatorPrechargeHigh: FaultDefinition = {
  kind: 'accumulator-precharge-high',
  title: 'Accumulator precharge too high',
  group: 'supply',
  meaning: 'It holds so much gas that little oil finds room in it.',
  shows:
    'Little oil is stored, so few operations with the pump off; when bled slowly, the needle drops to zero from a high value.',
  confirm: 'Read the gas gauge with no hydraulic pressure, and the temperature with it.',
  remedy: 'Let gas off to the placard’s pressure at its temperature.',
  caution:
    'Let gas off slowly, away from the face; let the oil pressure off first. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NAVEDTRA 14018 and 14315 (precharge is the last value before the needle drops); signs common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Charged with pressure on, or hot from filling.',
  befalls: ['accumulator'],
  worst: 'two and a half times the precharge',
  change: (p, severity) => ({
    precharge: Math.max(
      number(p, 'precharge'),
      Math.min(3e7, number(p, 'precharge') * (1 + 1.5 * severity)),
    ),
  }),
};
