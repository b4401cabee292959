import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const sequenceValveLeak: FaultDefinition = {
  kind: 'sequence-valve-leak',
  title: 'Sequence valve leaks when shut',
  group: 'valves and lines',
  meaning: 'The seat does not hold: oil passes to the second part before the valve is opened.',
  shows:
    'The second part creeps: over days where it weeps, together with the first part where it leaks; the lighter one goes first.',
  confirm: 'Cap the valve’s outlet: the creep stops.',
  remedy: 'Reseat or replace; flush, and find where the dirt came from.',
  caution:
    'A door that creeps can meet a leg or a hand: pin it before working in the bay. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a home builders’ public archive; signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Dirt on the seat.',
  befalls: ['sequence-valve', 'pressure-sequence-valve', 'priority-valve'],
  worst: 'a quarter of a US gallon a minute at 1000 psi, oil of 12 mPa s',
  change: (p, severity) => ({ leak: add(number(p, 'leak'), 0.25 * severity * GALLON_AT_1000_PSI) }),
};
