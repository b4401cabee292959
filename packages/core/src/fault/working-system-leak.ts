import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const workingSystemLeak: FaultDefinition = {
  kind: 'working-system-leak',
  title: 'Leak in the working system',
  group: 'supply',
  meaning:
    'Oil leaves behind the unloader, here at the accumulator’s joint or bleed valve, which stands for any leak between unloader and services.',
  shows:
    'The time to cut-out is long and cut-in comes soon as well: a leak of the working system spoils both. The tank falls, if the oil leaves the aircraft.',
  confirm:
    'Shut off one service after the other: the times come right when the leaking one is off.',
  remedy: 'Find it, renew what leaks; refill and bleed.',
  caution:
    'Never feel for a leak by hand: a jet at working pressure goes through skin and is a surgical emergency. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'reasoning of NAVEDTRA 14329, troubleshooting of the pressure regulator: the leak takes from the charge and from the hold',
  prior: 'common',
  priorWhy: 'Every joint and seal of the system counts.',
  befalls: ['accumulator'],
  worst: '1 US gal/min at 1000 psi, oil of 12 mPa s',
  slows: 'up',
  change: (p, severity) => ({ leak: add(number(p, 'leak'), severity * GALLON_AT_1000_PSI) }),
};
