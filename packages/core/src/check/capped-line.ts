import type { CheckDefinition } from '../define/index.js';

export const cappedLine: CheckDefinition = {
  kind: 'capped-line',
  title: 'Cap the line',
  how: 'Blank the lines one after another and look which of them lets the flow at stall go on.',
  minutes: 25,
  tools: 'blanking caps, flow meter, gauge',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: [
    'selector-return-leak',
    'selector-leak',
    'selector-feed-leak',
    'working-system-leak',
    'thermal-relief-stuck-open',
    'pack-transfer-valve-leak',
    'sequence-valve-leak',
    'uplock-release-leak',
    'shuttle-cross-leak',
    'dump-valve-open',
    'check-valve-leak',
  ],
};
