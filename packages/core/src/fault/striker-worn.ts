import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const strikerWorn: FaultDefinition = {
  kind: 'striker-worn',
  title: 'Striker or roller worn',
  group: 'valves and lines',
  meaning:
    'The striker or its roller has worn short: the plunger is pushed, but with little to spare.',
  shows:
    'The second part starts late, and only when the first comes fully home. It may pass on jacks and fail in the air, where load holds the first part a little short of its end.',
  confirm:
    'Measure the over-travel of the plunger with the first part home; look at roller and striker for flats. Pushing the first part by hand starts the second.',
  remedy: 'Replace striker or roller, then rig by the drawing; look at the pin and bush too.',
  caution:
    'A gear that passes on jacks is not proved: load it as the air does only by an approved procedure, and never push a leg or door by hand while it is under pressure. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a US Navy maintenance magazine, on a worn sequence (timer) check valve striker',
  prior: 'common',
  priorWhy: 'Wear always goes this way.',
  befalls: ['sequence-valve'],
  worst: '2.5 mm of the push lost',
  change: (p, severity) => ({ rigging: add(number(p, 'rigging'), 0.0025 * severity, 0.1) }),
};
