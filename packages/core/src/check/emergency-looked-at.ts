import type { CheckDefinition } from '../define/index.js';

export const emergencyLookedAt: CheckDefinition = {
  kind: 'emergency-looked-at',
  title: 'Look at shuttles and dump',
  how: 'Which side each shuttle stands on, whether the dump valve is open or shut, whether its vent is clear.',
  minutes: 10,
  tools: 'lamp, drawing',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: [
    'shuttle-stuck-emergency',
    'shuttle-stuck-normal',
    'shuttle-cross-leak',
    'dump-valve-open',
    'dump-valve-not-venting',
  ],
};
