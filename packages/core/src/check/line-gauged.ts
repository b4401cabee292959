import type { CheckDefinition } from '../define/index.js';

export const lineGauged: CheckDefinition = {
  kind: 'line-gauged',
  title: 'Gauge at both ends while it moves',
  how: 'Put a gauge at either end of the line, and read both while the leg moves: the difference is the line’s.',
  minutes: 20,
  tools: 'two gauges, tees',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: [
    'line-pinched',
    'hose-liner-flap',
    'hose-swollen',
    'quick-disconnect-half-mated',
    'return-back-pressure',
    'suction-line-collapsed',
    'debris-lodged',
    'trapped-pressure',
  ],
};
