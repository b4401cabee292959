import type { CheckDefinition } from '../define/index.js';

export const swappedSides: CheckDefinition = {
  kind: 'swapped-sides',
  title: 'Swap left for right',
  how: 'Exchange the restrictor (or hose) of the slow side with the other side’s: the slowness goes with it or stays.',
  minutes: 35,
  tools: 'tools for the unions, caps',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: [
    'restrictor-blocked',
    'restrictor-check-stuck-shut',
    'restrictor-open',
    'restrictor-reversed',
    'contaminated-oil',
    'hose-liner-flap',
    'trapped-pressure',
  ],
};
