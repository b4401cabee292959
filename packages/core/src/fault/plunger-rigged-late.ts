import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const plungerRiggedLate: FaultDefinition = {
  kind: 'plunger-rigged-late',
  title: 'Sequence valve plunger rigged late',
  group: 'valves and lines',
  meaning:
    'The striker does not push the plunger far enough: the valve opens late, partly, or not at all.',
  shows: 'A pause, then the second part moves slowly or not at all, with the gauge at its limit.',
  confirm:
    'Press the plunger by hand (from outside the arc of the door): the second part starts at once. Measure the over-travel.',
  remedy: 'Adjust or shim striker or plunger; replace a worn striker or roller.',
  caution:
    'Pressing a plunger by hand sets a leg or door going: never reach through a door or past a leg to do it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'US Army TM 1-1500-204-23-2 (plunger-operated sequence valves); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Wear of striker and roller always goes this way.',
  befalls: ['sequence-valve'],
  worst: '4 mm late at the plunger',
  change: (p, severity) => ({
    rigging: number(p, 'rigging') + 0.004 * severity,
  }),
};
