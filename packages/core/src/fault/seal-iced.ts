import type { FaultDefinition } from '../define/index.js';
import { jam } from './grade.js';

export const sealIced: FaultDefinition = {
  kind: 'seal-iced',
  title: 'Ice on the rod seal',
  group: 'actuators, locks, structure',
  meaning:
    'Slush on the rod has frozen where the extended rod leaves its gland: it holds until it is broken.',
  shows:
    'After a cold soak with the gear up the leg does not start, or starts late and with a jerk; once it has moved it is free.',
  confirm: 'Look at the rod; warm the gland and try again.',
  remedy: 'Warm it, dry it, wipe the rod with hydraulic fluid; never chip ice off a rod.',
  caution:
    'A leg that is held by ice lets go at once, with all the pressure that has built up behind it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'rare',
  priorWhy: 'Needs wet ground, a climb into the cold, and a bare rod.',
  befalls: ['double-acting-actuator', 'locking-actuator'],
  worst: 'breakaway force of 20 MPa on the piston over the last 6 mm of the extended rod',
  // The extended end of the stroke: where the rod stands with the gear up, in actuators that extend to raise.
  change: (p, severity) => jam(p, severity, 0.99, 0.006),
};
