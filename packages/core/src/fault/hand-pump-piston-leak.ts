import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const handPumpPistonLeak: FaultDefinition = {
  kind: 'hand-pump-piston-leak',
  title: 'Hand pump piston or inlet check leaks',
  group: 'supply',
  meaning: 'Oil passes the piston seal or the inlet check on the working stroke.',
  shows:
    'Handle creeps under load, more strokes for the same travel, and pressure will not climb past where the leak takes the whole stroke.',
  confirm: 'A gauge at the pump against a shut line: strokes bring it up, the held handle sinks.',
  remedy: 'Rebuild the pump: seals, inlet check, look for a scored barrel.',
  caution:
    'A pump that cannot reach pressure in the hangar will not lower a leg that needs a push. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'common',
  priorWhy: 'Seals dry out in a pump that is hardly ever worked.',
  befalls: ['hand-pump'],
  worst: 'a leak of 1 US gal/min at 1000 psi past the piston',
  slows: 'up',
  change: (p, severity) => ({
    pistonLeak: add(number(p, 'pistonLeak'), severity * GALLON_AT_1000_PSI),
  }),
};
