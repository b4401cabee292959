import type { FaultDefinition } from '../define/index.js';
import { jam } from './grade.js';

export const boreGalled: FaultDefinition = {
  kind: 'bore-galled',
  title: 'Bore galled, plating flaked',
  group: 'actuators, locks, structure',
  meaning: 'Piston or rod has picked up metal and grips the bore over a stretch of the stroke.',
  shows:
    'A hard stop, or a pause with a high gauge, at one point both ways; it survives every emergency means, for they push the same piston.',
  confirm: 'Disconnect the actuator and pull it through by hand: tight at one place. Then strip.',
  remedy: 'Replace the actuator; look for flakes downstream and flush.',
  caution:
    'More pressure can free it all at once, with a slam. Support the leg before disconnecting. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NASA ASRS report 304953 (flaked plating after an overhaul); signs: common practice, no source',
  prior: 'rare',
  priorWhy: 'Follows new plating, a missing bushing or dirt.',
  befalls: ['double-acting-actuator', 'locking-actuator', 'single-acting-actuator'],
  worst: 'friction of 20 MPa on the piston over 30 mm in the middle of the stroke',
  change: (p, severity) => jam(p, severity, 0.5, 0.015),
};
