import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const unloaderBypassLeak: FaultDefinition = {
  kind: 'unloader-bypass-leak',
  title: 'Unloader’s by-pass valve leaks',
  group: 'supply',
  meaning:
    'The valve that dumps the pump’s flow when it is unloaded does not shut, so part of the flow goes home while it should charge the system.',
  shows:
    'The time from cut-in to cut-out is long, the time from cut-out to cut-in is normal; with a bad leak it never cuts out. Services are slower going up.',
  confirm: 'Time the regulator with everything at rest: cut-out and cut-in, each on its own.',
  remedy: 'Reseat or replace the by-pass valve; flush.',
  caution:
    'Pressure stands in the system with the pump unloaded or off: let it down before opening anything. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NAVEDTRA 14329, troubleshooting of the pressure regulator',
  prior: 'uncommon',
  priorWhy: 'It works at every cycle, with the whole flow across its seat.',
  befalls: ['unloader'],
  worst: '2 US gal/min at 1000 psi, oil of 12 mPa s',
  slows: 'up',
  change: (p, severity) => ({
    bypassLeak: add(number(p, 'bypassLeak'), severity * 2 * GALLON_AT_1000_PSI),
  }),
};
