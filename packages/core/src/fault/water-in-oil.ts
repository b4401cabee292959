import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const waterInOil: FaultDefinition = {
  kind: 'water-in-oil',
  title: 'Water in the oil rusts a valve',
  group: 'fluid and environment',
  meaning:
    'Water has rusted this valve: the poppet is stiff and its seat is pitted. (Ice, which stops a valve until it thaws, is not simulated.)',
  shows:
    'What the valve feeds is sluggish, and what it should hold shut leaks away after shut-off.',
  confirm:
    'A milky sample or a crackle on a hot plate; rust at the valve’s seat when it is stripped.',
  remedy:
    'Renew the valve, purge the water, change the oil, find the way in: breather, bottle or stand.',
  caution:
    'A valve that is used only in an emergency rusts unseen: look at it too. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NTSB report ANC20LA013 (corroded valve that was needed only once); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Breathers let moist air in every night; gas bottles that were filled wet, too.',
  befalls: ['check-valve', 'sequence-valve'],
  worst: 'opens to a tenth of its area, leaks 0.2 US gal/min at 1000 psi when shut',

  change: (p, severity) => ({
    stuckShut: 1 - (1 - number(p, 'stuckShut')) * (1 - 0.9 * severity),
    leak: add(number(p, 'leak'), 0.2 * severity * GALLON_AT_1000_PSI),
  }),
};
