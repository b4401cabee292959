/**
 * Thermal relief valve: guards a closed-off line against the growth of its oil when it warms.
 * Made like a relief valve, for drops instead of the pump's flow, and set above the system relief
 * valve, so that it never opens while that one works. Stuck open it is a leak: raise `leak`.
 */
import type { DeviceDefinition } from '../define/index.js';
import { reliefValve } from './relief-valve.js';
import { bore, leakage } from './shared/parameters.js';

export const thermalRelief: DeviceDefinition = {
  ...reliefValve,
  kind: 'thermal-relief',
  title: 'Thermal relief valve',
  summary:
    'Lets a little oil out of a line that is shut off and warms; for the pump flow use a relief valve.',
  parameters: {
    ...reliefValve.parameters,
    crack: {
      title: 'crack setting',
      quantity: 'gauge-pressure',
      range: [1e5, 4e7],
      why: 'no default: above the full-flow setting of the system relief valve',
    },
    full: {
      title: 'full-flow setting',
      quantity: 'gauge-pressure',
      range: [1.1e5, 5e7],
      why: 'no default: 5 to 10 % above crack; common practice, no source',
    },
    flow: {
      title: 'rated flow at the full-flow setting',
      quantity: 'flow',
      range: [1e-8, 1e-4],
      default: 3e-6,
      why: 'about 3 cm^3/s: a litre that warms by 1 K a second grows by 0.8 cm^3/s; common practice, no source',
    },
    leak: leakage(
      'leak when shut, or stuck open',
      1e-9,
      1e-15,
      'a sound seat passes drops an hour at system pressure; common practice, no source',
    ),
    seat: bore(
      'seat diameter',
      0.002,
      'decides only where its flow turns laminar; common practice, no source',
    ),
  },
  symbol: { name: 'thermal-relief', size: [4, 4], ports: { inlet: [0, -2], outlet: [0, 2] } },
};
