import type { FaultDefinition } from '../define/index.js';

export const squatSwitchStuck: FaultDefinition = {
  kind: 'squat-switch-stuck',
  title: 'Squat switch stuck on ground',
  group: 'actuators, locks, structure',
  meaning:
    'The switch, its arm or its wiring says ground whatever the strut does. All or nothing, whatever the severity.',
  shows: 'UP is refused with healthy hydraulics: lever locked or selector dead, gauge normal.',
  confirm: 'On jacks, work the arm by hand with a meter on the switch; measure the strut.',
  remedy: 'Free, rig or replace the switch.',
  caution:
    'Never wedge or by-pass it to make the gear come up: it is what keeps the gear down on the ground. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Low on the leg, in mud and spray.',
  befalls: ['squat-switch'],
  worst: 'stuck on ground',
  change: (p, severity) => ({ stuck: severity > 0 ? 'ground' : p.stuck }),
};
