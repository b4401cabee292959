import type { FaultDefinition } from '../define/index.js';
import { crossed } from './ports.js';

export const actuatorReversed: FaultDefinition = {
  kind: 'actuator-reversed',
  title: 'Actuator fitted the wrong way round',
  group: 'actuators, locks, structure',
  meaning:
    'Turned end for end or about its axis. Where the lines went with the ports, UP pushes it down and DOWN up. Where they did not, it works the right way, but a port meets the structure at full travel and leaks from then on: that shows to the eye alone. All or nothing, whatever the severity.',
  shows: 'UP does nothing but raise the gauge; with DOWN, where no lock holds the leg, it goes up.',
  confirm:
    'Look at ports and rod end through the full travel, by hand pump; follow each line to its port.',
  remedy: 'Refit by the drawing; look for damaged ports and bent pipes.',
  caution:
    'A leg that goes the other way strikes closed doors, and hands. First swing by hand pump. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'UK AAIB Bulletin 10/2015 (port struck the structure after an actuator change); crossed motion: common practice, no source',
  prior: 'rare',
  priorWhy: 'Only after an actuator change.',
  befalls: ['double-acting-actuator', 'locking-actuator'],
  worst: 'head and rod end swapped',
  change: () => ({}),
  reconnect: (ports) => crossed(ports, 'head', 'rod'),
};
