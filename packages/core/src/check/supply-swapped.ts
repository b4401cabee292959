import type { CheckDefinition } from '../define/index.js';

export const supplySwapped: CheckDefinition = {
  kind: 'supply-swapped',
  title: 'Try another supply',
  how: 'Stand for pump, or pump for stand: does the trouble go with the supply?',
  minutes: 20,
  tools: 'second supply, caps',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source:
    'NTSB field report of a pump that leaked under pressure only, all normal on an outside pump; common practice, no source',
  shows: [
    'pump-worn',
    'pump-joint-leak',
    'pump-shaft-sheared',
    'suction-air-leak',
    'suction-line-collapsed',
    'ground-supply-weak',
    'quick-disconnect-half-mated',
    'electric-supply-weak',
    'unloader-bypass-leak',
    'unloader-check-leak',
  ],
  anywhere: true,
  sure: 0.9,
};
