import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const restrictorCheckStuckShut: FaultDefinition = {
  kind: 'restrictor-check-stuck-shut',
  title: 'One-way restrictor’s free direction stuck shut',
  group: 'valves and lines',
  meaning:
    'The check seat beside the restriction sticks: both directions go through the restriction.',
  shows:
    'Up: that leg last, with a high gauge, and slow once the supply’s limit is reached. Down is normal.',
  confirm:
    'Swap left and right: the slow side moves with the restrictor. Blow through it both ways.',
  remedy: 'Clean or replace; look at the filter for where the dirt came from.',
  caution:
    'Do not open the line to look for it with the leg held by oil. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'A small poppet behind a filter.',
  befalls: ['one-way-restrictor'],
  worst: 'the free direction shut',
  slows: 'up',
  change: (p, severity) => ({ stuckShut: Math.max(number(p, 'stuckShut'), severity) }),
};
