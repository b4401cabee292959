import type { CheckDefinition } from '../define/index.js';

export const valveBench: CheckDefinition = {
  kind: 'valve-bench',
  title: 'Valve on the bench',
  how: 'Take the valve off and try it: cracking pressure, leak, free movement.',
  minutes: 45,
  tools: 'bench, gauge, hand pump',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: [
    'pressure-sequence-valve-set-high',
    'pressure-sequence-valve-set-low',
    'sticking-sequence-valve',
    'sequence-valve-stuck-shut',
    'sequence-valve-leak',
    'air-across-sequence-valve',
    'check-valve-leak',
    'check-valve-backward',
    'water-in-oil',
    'unloader-check-leak',
    'unloader-bypass-leak',
    'debris-lodged',
    'selector-feed-leak',
  ],
};
