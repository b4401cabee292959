import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const hoseLinerFlap: FaultDefinition = {
  kind: 'hose-liner-flap',
  title: 'Hose liner loose',
  group: 'valves and lines',
  meaning:
    'The liner has come off the wall inside and lies down over the bore when oil comes one way: the hose acts as a check valve.',
  shows:
    'One direction slow or stuck with the gauge at its limit, the other normal. If it blocks the way home, cracking the actuator’s end drops the leg; if it blocks the feed, cracking it gives no oil.',
  confirm: 'Swap the hose. Its age is on the band.',
  remedy: 'Replace it, and its twin of the same age.',
  caution:
    'Cracking a line under a leg that hangs on oil drops it at once: support or pin the leg first, and never stand in its arc. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'rare',
  priorWhy: 'Old hoses, or hoses that saw the wrong oil.',
  befalls: ['hose'],
  worst: 'no oil passes the blocked way',
  change: (p, severity) => ({ flap: Math.max(number(p, 'flap'), severity) }),
};
