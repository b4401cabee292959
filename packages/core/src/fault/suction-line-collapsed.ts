import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const suctionLineCollapsed: FaultDefinition = {
  kind: 'suction-line-collapsed',
  title: 'Suction hose collapsed or strainer blocked',
  group: 'supply',
  meaning:
    'The way from tank to pump is narrow: the hose lies flat under the vacuum, or the strainer is full.',
  shows:
    'The pump howls and loses flow at high speed, much worse in cold oil, with no air in the sight glass; at low speed and warm it may look sound.',
  confirm:
    'A vacuum gauge at the pump’s inlet; feel whether the hose goes flat as the speed rises, well clear of what turns.',
  remedy:
    'Replace hose or strainer; look at what was in it, and whether the hose is made for vacuum.',
  caution:
    'Looking for it means a running engine: use the procedure of the approved data, or an outside supply. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Old hoses soften inside; strainers are out of sight.',
  befalls: ['engine-pump', 'compensated-pump'],
  worst:
    'nine tenths of the way shut: 1 bar absolute pushes a ninth of the rated flow through, in oil of the rating',
  slows: 'up',
  change: (p, severity) => ({
    suctionBlocked:
      number(p, 'suctionBlocked') + Math.max(0, 0.9 - number(p, 'suctionBlocked')) * severity,
  }),
};
