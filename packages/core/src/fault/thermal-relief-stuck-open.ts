import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const thermalReliefStuckOpen: FaultDefinition = {
  kind: 'thermal-relief-stuck-open',
  title: 'Thermal relief valve stuck open',
  group: 'supply',
  meaning: 'The small relief valve of one line does not shut, so that line leaks to the return.',
  shows:
    'Only that side is weak: its times are long and its stall pressure low, the other way is normal; what only oil holds sags on that side.',
  confirm:
    'Cap that side of the valve: the fault is gone. Its body is warm and hisses on that side only.',
  remedy: 'Replace the valve; flush.',
  caution:
    'A gear held up by that line alone comes down by itself. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report WPR14LA059 (thermal relief valve that did not shut)',
  prior: 'uncommon',
  priorWhy: 'It opens on hot ramps and catches what passes.',
  befalls: ['thermal-relief'],
  worst: '1.5 US gal/min at 1000 psi, oil of 12 mPa s: a seat of 2 mm open',
  slows: 'up',
  change: (p, severity) => ({ leak: add(number(p, 'leak'), severity * 1.5 * GALLON_AT_1000_PSI) }),
};
