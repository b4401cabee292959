import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const sequenceValveStuckShut: FaultDefinition = {
  kind: 'sequence-valve-stuck-shut',
  title: 'Sequence valve sticks shut',
  group: 'valves and lines',
  meaning:
    'The poppet stays on its seat though it is pushed off it: varnish, corrosion, a swollen seal.',
  shows:
    'The second part is slow or misses a cycle, with the gauge at its limit; a tap or a second cycle may cure it. Here it stays as it is put.',
  confirm:
    'Tap the body with the plunger pushed: the second part starts. On the bench it opens late or not at all.',
  remedy: 'Clean or replace; find where the dirt came from.',
  caution:
    'Tapping a valve sets a leg or door going: from outside its arc only, and with a long tool. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Dirt and corrosion in a part that moves twice a flight.',
  befalls: ['sequence-valve', 'pressure-sequence-valve', 'priority-valve'],
  worst: 'opens to 2 % of its area',
  change: (p, severity) => ({
    stuckShut: 1 - (1 - number(p, 'stuckShut')) * (1 - 0.98 * severity),
  }),
};
