import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const fittingLeak: FaultDefinition = {
  kind: 'fitting-leak',
  title: 'Fitting cross-threaded or not tight',
  group: 'valves and lines',
  meaning:
    'A fitting was started crooked or never brought to its torque. It holds at first and leaks more with every cycle.',
  shows:
    'Days after line work: a drip, then a level that falls, then a joint that lets go and takes all the oil with it.',
  confirm: 'A wrench at each joint that was touched, against the job card; wipe dry and cycle.',
  remedy:
    'New fitting if the thread is hurt; torque by the approved data, mark it, have a second pair of eyes.',
  caution:
    'Never tighten or feel a joint under pressure. Oil under pressure goes through skin. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report ANC20LA013',
  prior: 'uncommon',
  priorWhy: 'After every job on lines.',
  befalls: ['line', 'hose'],
  worst: 'the joint parts: as a hole of 3 mm',
  slows: 'up',
  change: (p, severity) => ({
    // A weep for long, then quickly the end.
    hole: Math.max(number(p, 'hole'), 0.003 * severity * severity),
  }),
};
