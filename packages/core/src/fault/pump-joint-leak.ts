import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const pumpJointLeak: FaultDefinition = {
  kind: 'pump-joint-leak',
  title: 'Pump joint leaks under pressure',
  group: 'supply',
  meaning:
    'A body joint or outlet fitting of the pump opens under pressure and sprays oil out; at idle it is tight.',
  shows:
    'Looks sound at idle; under load the pressure stays low, the gear is slow or stops going up, there is oil at the pump and the tank empties. All normal on an outside supply.',
  confirm:
    'Swap the supply: on an outside one all is normal. Look for oil at the pump, with a card, after a run under load.',
  remedy: 'Reseal or replace the pump; refill and bleed; find out where the oil went.',
  caution:
    'A joint that opens under pressure sprays hot oil by a hot engine: fire, and a jet that goes through skin. Never feel for it by hand. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB summary 20180601X62529 (no pressure under load, all normal on an outside pump)',
  prior: 'uncommon',
  priorWhy: 'Joints weep long before they spray; a body joint seldom opens.',
  befalls: ['engine-pump', 'compensated-pump'],
  worst: '4 US gal/min at 1000 psi, oil of 12 mPa s',
  slows: 'up',
  change: (p, severity) => ({
    jointLeak: add(number(p, 'jointLeak'), severity * 4 * GALLON_AT_1000_PSI),
  }),
};
