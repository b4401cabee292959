import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const unloaderCheckLeak: FaultDefinition = {
  kind: 'unloader-check-leak',
  title: 'Check valve of the unloader leaks',
  group: 'supply',
  meaning: 'The check valve that should hold the system while the pump is unloaded lets oil back.',
  shows:
    'The time to cut-out is normal, but cut-in comes too soon, with a fast chatter in and out; with the pump off, the pressure drops.',
  confirm: 'Time the regulator with everything at rest; stop the pump and watch the gauge fall.',
  remedy: 'Replace the check valve; flush.',
  caution:
    'The pressure may be gone by the time it is needed: prove the emergency system. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NAVEDTRA 14329, troubleshooting of the pressure regulator',
  prior: 'uncommon',
  priorWhy: 'Its seat hammers at every cycle.',
  befalls: ['unloader'],
  worst: '1 US gal/min at 1000 psi, oil of 12 mPa s',
  change: (p, severity) => ({
    checkLeak: add(number(p, 'checkLeak'), severity * GALLON_AT_1000_PSI),
  }),
};
