import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const shorteningLinkBroken: FaultDefinition = {
  kind: 'shortening-link-broken',
  title: 'Shortening link or cable broken',
  group: 'actuators, locks, structure',
  meaning:
    'The link or cable that pulls the strut together on the way up has parted: the leg stays long.',
  shows:
    'Late in the travel the gauge is lower than usual, for no gas is squeezed; the wheel arrives too far out and meets the edge of its well, or is pressed on a ramp there and may not come off it.',
  confirm: 'Look; measure from pivot to axle with the leg up.',
  remedy: 'Replace the link; find why it broke (an over-charged strut).',
  caution:
    'The wheel can wedge in its well and not come down: stop at the first odd noise. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NAVEDTRA 14315 (shrink mechanism); owners’ forum thread of 2009 (a link parted after the struts were aired up)',
  prior: 'rare',
  priorWhy: 'Follows an over-charged strut.',
  befalls: ['leg'],
  worst: 'no shortening at all',
  change: (p, severity) => ({ linkShare: number(p, 'linkShare') * (1 - severity) }),
};
