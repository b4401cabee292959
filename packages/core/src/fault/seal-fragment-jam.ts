import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, jam, number } from './grade.js';

export const sealFragmentJam: FaultDefinition = {
  kind: 'seal-fragment-jam',
  title: 'Seal fragment jams the actuator',
  group: 'actuators, locks, structure',
  meaning:
    'A torn-off piece of seal wedges between piston and bore late in the stroke, and oil passes where it is missing.',
  shows:
    'Stops part-way late in the travel, at the same place, with the gauge at its limit; the rest is healthy. A lock that is not reached may still be shown as made.',
  confirm: 'Measure the angle where it stops, twice; then strip the actuator.',
  remedy: 'Strip, find every piece, reseal, look for scores, flush.',
  caution:
    'A leg that stops part-way is locked by nothing: support it before anyone reaches in, and believe no light. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'UK AAIB Bulletin 7/2017 (seal fragment, false indication); signs: common practice, no source',
  prior: 'rare',
  priorWhy: 'Needs a torn seal and a piece that finds the gap.',
  befalls: ['double-acting-actuator', 'locking-actuator', 'single-acting-actuator'],
  worst:
    'friction of 20 MPa on the piston over 10 mm at 0.75 of the stroke; by-pass of 0.3 US gal/min at 1000 psi',
  change: (p, severity) => ({
    ...jam(p, severity, 0.75, 0.005),
    bypass: add(number(p, 'bypass'), 0.3 * severity * GALLON_AT_1000_PSI),
  }),
};
