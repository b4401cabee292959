import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const selectorReturnLeak: FaultDefinition = {
  kind: 'selector-return-leak',
  title: 'Selector leaks from the up line to return',
  group: 'valves and lines',
  meaning:
    'One land or seat lets oil of the up line past to return, also with the lever in neutral.',
  shows:
    'In neutral, what only oil holds up sags, and the up gauge falls; with UP held under power all is well, if a little slower. The other side holds.',
  confirm:
    'Hold UP, go to neutral and watch the up gauge; with the up line capped at the valve the gauge falls as before, with it capped at the actuator it does too.',
  remedy: 'Rebuild or replace the selector; flush.',
  caution:
    'A leg or door that oil alone holds comes down by itself: locks and pins, not the valve, make it safe. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Seats and lands wear slowly unless the oil is dirty.',
  befalls: ['selector-valve', 'open-centre-selector', 'solenoid-selector'],
  worst: '1 US gal/min at 1000 psi over the shut land, oil of 12 mPa s',
  slows: 'up',
  change: (p, severity) => ({
    leakReturnUp: add(number(p, 'leakReturnUp'), severity * GALLON_AT_1000_PSI, 1e-10),
  }),
};
