import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const groundSupplyWeak: FaultDefinition = {
  kind: 'ground-supply-weak',
  title: 'Ground supply weak',
  group: 'supply',
  meaning:
    'The stand gives less flow than it is set to: half-open coupling, worn pump, wrong setting.',
  shows: 'Everything slower going up; normal on the aircraft’s own pump.',
  confirm: 'Read the stand’s flow meter while something moves; seat the couplings again.',
  remedy: 'Set or repair the stand.',
  caution:
    'Bleed the pressure from hoses before a coupling is touched. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'common',
  priorWhy: 'Couplings that are not fully home look connected.',
  befalls: ['ground-supply'],
  worst: 'three tenths of the set flow',
  slows: 'up',
  change: (p, severity) => ({
    flow: Math.max(1e-6, number(p, 'flow') * (1 - 0.7 * severity)),
  }),
};
