import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const doorLoose: FaultDefinition = {
  kind: 'door-loose',
  title: 'Door loose on its hinge',
  group: 'actuators, locks, structure',
  meaning: 'Worn hinge pins or rod ends let the panel hang low.',
  shows:
    'Nothing on jacks. In flight it rattles, lags and latches late; the clearance to the wheel is less than drawn.',
  confirm: 'Pull check by hand, door closed and open; measure the gap along the edge.',
  remedy: 'Replace pins and rod ends, rig the door.',
  caution:
    'A door that lies in the wheel’s way can jam the leg: measure the clearance before the next swing. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'home builders’ archive, messages 24827 and 25800 (doors fine on jacks, late in flight); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Piano hinges and rod ends wear.',
  befalls: ['door'],
  worst: 'panel hangs 15 mm low',
  change: (p, severity) => ({ hingePlay: add(number(p, 'hingePlay'), 0.015 * severity, 0.05) }),
  silent: true,
};
