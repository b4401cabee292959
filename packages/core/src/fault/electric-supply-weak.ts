import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const electricSupplyWeak: FaultDefinition = {
  kind: 'electric-supply-weak',
  title: 'Electric supply weak',
  group: 'supply',
  meaning: 'Battery, wiring, brushes or relay leave too few volts at the motor or the coil.',
  shows:
    'Works unloaded on jacks, slower than it should; stops or trips when the load is added that the air adds in flight. A coil does not pull, or lets go.',
  confirm:
    'Read volts at the motor or coil while it works, and the pressure with them; load the leg by hand or scale as the approved data say.',
  remedy: 'Charge or replace the battery; clean joints; overhaul the motor.',
  caution:
    'A pass on jacks is no proof: the air’s load is not there. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'a public owners’ forum thread (works on jacks, not in flight); common practice, no source',
  prior: 'common',
  priorWhy: 'Batteries age, joints corrode.',
  befalls: ['power-pack', 'solenoid-selector', 'solenoid-valve'],
  worst: 'four tenths of the volts',
  slows: 'up',
  change: (p, severity) => {
    const volts = p.voltage === undefined ? 'supply' : 'voltage';
    return { [volts]: number(p, volts) * (1 - 0.6 * severity) };
  },
};
