import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const contaminatedOil: FaultDefinition = {
  kind: 'contaminated-oil',
  title: 'Particles in the oil hang a valve',
  group: 'fluid and environment',
  meaning:
    'Particles over the limit have lodged in this valve and keep it from opening. In service it is one valve one day and another the next; here it stays where it is put.',
  shows:
    'What the valve feeds hangs or is slow, the rest is healthy; a tap or another cycle may cure it, which is the sign.',
  confirm:
    'A particle count or patch from a sample, and the filter’s catch; swapping the valve cures it for a while.',
  remedy:
    'Flush with several times the system’s volume, renew filters, find what is wearing; clean the valves.',
  caution:
    'A hang-up that has gone by itself is not put right. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report ERA09IA338 (gear hang-up); NAVEDTRA 14018 (decontamination)',
  prior: 'uncommon',
  priorWhy: 'Test stands and open lines bring dirt in; filters catch most.',
  befalls: ['sequence-valve', 'check-valve', 'one-way-restrictor'],
  worst: 'opens to 2 % of its area',

  change: (p, severity) => ({
    stuckShut: 1 - (1 - number(p, 'stuckShut')) * (1 - 0.98 * severity),
  }),
};
