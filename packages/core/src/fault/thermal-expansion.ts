import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const thermalExpansion: FaultDefinition = {
  kind: 'thermal-expansion',
  title: 'Trapped oil has warmed',
  group: 'fluid and environment',
  meaning:
    'Shut in cold, then warmed by ramp or sun: the oil has grown where no relief lets it out.',
  shows:
    'Gauges of shut-off lines stand high before anything is switched on; a pump with pressure switches will not start, the first unlock is hard. Cracking the dump or a line cures it at once.',
  confirm: 'Read both static gauges warm, before the pump is switched on.',
  remedy: 'Let the pressure off by the approved way; find why the thermal relief did not.',
  caution:
    'Never crack a fitting to find out except where the procedure says so: oil from a small opening goes through skin. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'a home builders’ public archive (both gauges high on a warm ramp, the pump refuses); amount: expansion times bulk modulus',
  prior: 'uncommon',
  priorWhy: 'Needs a warm ramp after cold, tight valves and no thermal relief.',
  befalls: ['fluid'],
  worst: 'warmed by 20 K since it was shut in',

  change: (p, severity) => ({
    warmedBy: Math.max(number(p, 'warmedBy'), Math.min(80, number(p, 'warmedBy') + 20 * severity)),
  }),
};
