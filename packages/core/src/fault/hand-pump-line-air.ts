import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const handPumpLineAir: FaultDefinition = {
  kind: 'hand-pump-line-air',
  title: 'Air in the hand pump or its line',
  group: 'supply',
  meaning:
    'The emergency line was drained or never primed: air stands between the pump and its outlet.',
  shows:
    'The handle springs back to the end of its stroke, the first strokes give little, then it firms up: more strokes than usual, spongy.',
  confirm: 'Prime with some fifteen strokes and repeat: it gets better, a leak does not.',
  remedy: 'Prime and bleed the line, refill, find where the air came in.',
  caution:
    'Prove the emergency line firm before the aircraft leaves the jacks. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NAVEDTRA 14315 figure 12-13 (hand pump check); about 15 strokes to prime: common practice, no source',
  prior: 'common',
  priorWhy: 'Whenever the line was open and only the main system was bled.',
  befalls: ['hand-pump'],
  worst: '200 cm3 of air at ambient pressure, some fifteen strokes',
  slows: 'up',
  change: (p, severity) => ({ air: add(number(p, 'air'), 2e-4 * severity, 1e-3) }),
};
