import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const switchMisrigged: FaultDefinition = {
  kind: 'switch-misrigged',
  title: 'Position switch rigged late',
  group: 'actuators, locks, structure',
  meaning:
    'The switch is set so that the part must come further than it does before the switch is made.',
  shows:
    'Motion and locks are right, the light is wrong (or comes late); what waits for the switch waits on.',
  confirm: 'Eye on the lock, meter on the switch.',
  remedy: 'Set the switch by the approved procedure, with the lock proved home.',
  caution:
    'Never set a switch to make a light: it may be telling the truth. Look at the lock first. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'New Zealand TAIC inquiry into a nose leg, 30 September 2010; UK AAIB Bulletin 7/2017; signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Switches in wheel wells move, wear and get wet.',
  befalls: ['position-switch'],
  worst: '0.15 rad (8.6 degrees) late',
  change: (p, severity) => ({ rigged: add(number(p, 'rigged'), 0.15 * severity, 1) }),
};
