import type { CheckDefinition } from '../define/index.js';

export const reliefTested: CheckDefinition = {
  kind: 'relief-tested',
  title: 'Dead-head the relief valve',
  how: 'Selector held at the end of its stroke, raise the supply’s pressure slowly: read where the relief cracks and where it shuts.',
  minutes: 8,
  tools: 'gauge',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  shows: [
    'relief-set-low',
    'relief-set-high',
    'relief-dirt-held',
    'thermal-relief-set-high',
    'pressure-switch-set-low',
  ],
};
