import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const quickDisconnectHalfMated: FaultDefinition = {
  kind: 'quick-disconnect-half-mated',
  title: 'Quick-disconnect not fully home',
  group: 'supply',
  meaning:
    'The coupling of the stand’s hose is not pushed home: the poppet of one half lifts only partly.',
  shows:
    'Restricts one direction: slow while oil moves, full pressure at stall, and the coupling gets warm and noisy. The other direction pushes the poppet open and looks healthy.',
  confirm: 'Pull the hose, look at the poppet and the mark, mate it again and repeat.',
  remedy: 'Mate it again; renew a poppet or a lock ring that does not let it home.',
  caution:
    'Couple and uncouple without pressure; a hose that comes off whips and sprays. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'common',
  priorWhy: 'Couplings are mated for every test, often by feel and under the wing.',
  befalls: ['quick-disconnect'],
  worst: 'the mating holds 3 % of the bore open',
  slows: 'both',
  change: (p, severity) => ({ mating: number(p, 'mating') * (1 - 0.97 * severity) }),
};
