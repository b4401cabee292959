import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const stickingSequenceValve: FaultDefinition = {
  kind: 'sticking-sequence-valve',
  title: 'Sequence valve sticks open',
  group: 'valves and lines',
  meaning:
    'The poppet does not return to its seat: part of the area stays open with the plunger free.',
  shows:
    'The second part starts together with the first, the lighter one going first; or a door creeps over days.',
  confirm: 'Cap the valve’s outlet: the order comes right. A tap may free it for one cycle.',
  remedy: 'Clean or replace; find where the dirt came from.',
  caution:
    'A door that moves out of turn gives no warning. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'Function of the part: FAA-H-8083-31, landing gear chapter; signs and remedy: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Dirt and corrosion in a part that moves twice a flight.',
  befalls: ['sequence-valve', 'pressure-sequence-valve', 'priority-valve'],
  worst: 'half of the area open',
  change: (p, severity) => ({
    stick: Math.max(number(p, 'stick'), 0.5 * severity),
  }),
};
