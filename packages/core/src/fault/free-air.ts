import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const freeAir: FaultDefinition = {
  kind: 'free-air',
  title: 'Air in the system',
  group: 'fluid and environment',
  meaning:
    'Free air all through the oil, as after a fill without bleeding. Here it is spread evenly and stays: that it is carried home and the next cycles are better is not simulated.',
  shows:
    'Moves start late and softly, the gauge rises slowly, many strokes by hand pump and a springy handle; what comes first may be wrong. In truth the first cycles are worst and each is better.',
  confirm:
    'Repeat the cycle: air improves, a leak does not. Note the reservoir level with pressure on and off: air makes it change.',
  remedy: 'Bleed at the high points, cycle, refill; find where it came in.',
  caution:
    'Soft oil stores energy: a leg that hangs on air jumps when it comes free. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'test by repetition and by the reservoir: common practice, no source; the number of cycles that a manual asks for differs by aircraft',
  prior: 'common',
  priorWhy: 'Follows every opening of the system.',
  befalls: ['fluid'],
  worst: 'another 8 % of free air',
  slows: 'up',
  change: (p, severity) => ({ freeAir: add(number(p, 'freeAir'), 0.08 * severity, 0.2) }),
};
