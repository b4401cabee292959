import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const doorRestraintOut: FaultDefinition = {
  kind: 'door-restraint-out',
  title: 'Door restraint or stop out',
  group: 'actuators, locks, structure',
  meaning: 'Stop, stay or cable that ends the door’s opening is missing, broken or left off.',
  shows:
    'The door opens past its place and, where it hits the end of its actuator, arrives there hard: rods bend, the door is lost in the wind.',
  confirm: 'Look: stay, cable and bracket in place, and the door’s opening measured.',
  remedy: 'Replace the restraint; look at rod and hinge for damage.',
  caution:
    'A door past its stop can meet wheel, structure or hands. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report CEN17LA033 (door restraint out); signs: common practice, no source',
  prior: 'rare',
  priorWhy: 'Pins left out after work.',
  befalls: ['door'],
  worst: 'door goes 12 degrees beyond its place, or until its actuator bottoms',
  change: (p, severity) => ({
    overTravel: add(number(p, 'overTravel'), (12 * severity * Math.PI) / 180, Math.PI / 3),
  }),
};
