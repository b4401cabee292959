import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const uplatchCableStretched: FaultDefinition = {
  kind: 'uplatch-cable-stretched',
  title: 'Uplatch cable stretched',
  group: 'actuators, locks, structure',
  meaning:
    'The cable that works the latch has stretched: the handle no longer draws it right out, and the latch no longer goes right in.',
  shows: 'Up and latched, then it falls later; the emergency handle does not release it.',
  confirm: 'Rig pin in, look at the latch through the handle’s travel.',
  remedy: 'Adjust the cable with the rig pin in, replace it if frayed.',
  caution:
    'A latch that the emergency handle cannot draw leaves a leg up: try it on jacks before flight. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Cables stretch in their first months and fray at pulleys.',
  befalls: ['uplock'],
  worst: 'all of the handle’s travel lost (from 0.6 on it draws no longer); holds for a minute',
  change: (p, severity) => ({
    cableSlack: add(number(p, 'cableSlack'), severity, 1),
    holdsFor: Math.min(number(p, 'holdsFor'), 60 / severity),
  }),
};
