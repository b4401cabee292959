import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const restrictorBlocked: FaultDefinition = {
  kind: 'restrictor-blocked',
  title: 'One-way restrictor blocked',
  group: 'valves and lines',
  meaning: 'The restriction is narrowed by dirt or paint; its free direction still works.',
  shows:
    'That leg comes down slowly (in an emergency too); up is normal. The gauge on the down side is high.',
  confirm: 'Swap left and right: the slow side moves with the restrictor.',
  remedy: 'Clean or replace; look at the filter for where the dirt came from.',
  caution:
    'Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'Function of the part: FAA-H-8083-31, landing gear chapter; signs and remedy: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'The smallest hole in the system, but behind a filter.',
  befalls: ['one-way-restrictor'],
  worst: 'bore down to a fifth',
  slows: 'down',
  change: (p, severity) => ({
    bore: number(p, 'bore') * (1 - 0.8 * severity),
  }),
};
