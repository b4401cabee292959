import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const chainJumpedTooth: FaultDefinition = {
  kind: 'chain-jumped-tooth',
  title: 'Chain jumped a tooth',
  group: 'actuators, locks, structure',
  meaning: 'The chain runs one or two teeth off its timing marks.',
  shows:
    'The doors are out of step by the same angle everywhere, and at one end the chain is pulled tight: gauge up, the end not reached.',
  confirm: 'Look at the tooth marks; measure the door’s angle at both ends.',
  remedy: 'Re-time by the marks, set the tension; look for what let it jump.',
  caution:
    'Doors out of step close on the wheel: go by hand pump until it is re-timed. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'rare',
  priorWhy: 'Follows slack, or work on the chain.',
  befalls: ['chain'],
  worst: 'two teeth; one up to half the severity',
  change: (p, severity) => ({
    jumped: Math.max(
      number(p, 'jumped'),
      Math.min(6, number(p, 'jumped') + Math.ceil(2 * severity)),
    ),
  }),
};
