import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const pressureSequenceValveSetLow: FaultDefinition = {
  kind: 'pressure-sequence-valve-set-low',
  title: 'Pressure-operated sequence or priority valve set low',
  group: 'valves and lines',
  meaning:
    'The setting is below what the first unit needs, or a wrong valve is fitted: it opens while the first unit still moves.',
  shows: 'The second unit starts early, beside the first; each gets less.',
  confirm:
    'A gauge at the valve’s inlet at the moment of change-over: compare it with the setting.',
  remedy: 'Set, or fit the part the drawing names.',
  caution:
    'Parts that move out of turn meet: swing slowly with the arcs clear. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NTSB report 20091029X63056 (a wrong part in this place); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Adjusted on the gear instead of on the bench.',
  befalls: ['pressure-sequence-valve', 'priority-valve'],
  worst: 'opens at a fifth of its setting',
  change: (p, severity) => ({
    crack: Math.min(number(p, 'crack'), Math.max(5e4, number(p, 'crack') * (1 - 0.8 * severity))),
    full: Math.min(number(p, 'full'), Math.max(6e4, number(p, 'full') * (1 - 0.8 * severity))),
  }),
};
