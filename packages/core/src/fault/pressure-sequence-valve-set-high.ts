import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const pressureSequenceValveSetHigh: FaultDefinition = {
  kind: 'pressure-sequence-valve-set-high',
  title: 'Pressure-operated sequence or priority valve set high',
  group: 'valves and lines',
  meaning: 'The setting is near or above what the supply can reach, or a wrong valve is fitted.',
  shows:
    'A pause and a peak on the gauge before the second unit starts; where the supply never reaches the setting it does not move or lock at all.',
  confirm:
    'A gauge at the valve’s inlet at the moment of change-over: compare it with the setting.',
  remedy: 'Set, or fit the part the drawing names.',
  caution:
    'A unit that never locks looks nearly home: prove each lock by eye and by push. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NTSB report 20091029X63056 (a wrong part: a unit never locked); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Adjusted on the gear instead of on the bench.',
  befalls: ['pressure-sequence-valve', 'priority-valve'],
  worst: 'opens at twice its setting',
  change: (p, severity) => ({
    crack: add(number(p, 'crack'), severity * number(p, 'crack'), 4e7),
    full: add(number(p, 'full'), severity * number(p, 'full'), 5e7),
  }),
};
