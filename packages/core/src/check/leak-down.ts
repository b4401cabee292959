import type { CheckDefinition } from '../define/index.js';

export const leakDown: CheckDefinition = {
  kind: 'leak-down',
  title: 'Leave it with the selector in neutral',
  how: 'Gear up, selector in neutral, supply off: watch the gauge and the gap at the lock for ten minutes.',
  minutes: 12,
  tools: 'gauge, watch, feeler',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  shows: [
    'check-valve-leak',
    'pack-transfer-valve-leak',
    'selector-leak',
    'thermal-contraction',
    'hand-pump-outlet-check-open',
  ],
  sure: 0.85,
};
