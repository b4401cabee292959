import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const airAcrossSequenceValve: FaultDefinition = {
  kind: 'air-across-sequence-valve',
  title: 'Air across a sequence valve that is not tight',
  group: 'valves and lines',
  meaning:
    'After the lines were opened, air lies about a valve whose seat holds oil but not air: air passes it some hundred times as easily, and what it pushes along moves the second part. A run shows the first cycle after filling; on the aircraft it gets better with each cycle, in a run it does not.',
  shows:
    'The second part starts out of turn and springily in the first cycles after a fill, then the order comes right by itself.',
  confirm:
    'Repeat: five cycles, slowly, by hand pump. An order that comes right was air; one that does not is a leak.',
  remedy: 'Bleed or cycle until it is right; a seat that passes air is worth a look.',
  caution:
    'The first cycles after the lines were open are the ones out of order: slowly, by hand pump, with the arcs of legs and doors clear. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a home builders’ public archive',
  prior: 'common',
  priorWhy: 'After every opening of the lines.',
  befalls: ['sequence-valve'],
  worst:
    '5 cm3 of air beyond the valve, whose seat passes air as it would oil at one US gallon a minute at 1000 psi',
  change: (p, severity) => ({
    leak: add(number(p, 'leak'), severity * GALLON_AT_1000_PSI),
    air: add(number(p, 'air'), 5e-6 * severity, 1e-3),
  }),
};
