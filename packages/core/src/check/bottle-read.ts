import type { CheckDefinition } from '../define/index.js';

export const bottleRead: CheckDefinition = {
  kind: 'bottle-read',
  title: 'Read bottle and accumulator',
  how: 'Gas pressure at zero hydraulic pressure, with the temperature, against the table.',
  minutes: 5,
  tools: 'gauge, thermometer',
  caution: 'Gas stores energy; never oxygen; eye protection.',
  source: 'common practice, no source',
  shows: [
    'bottle-low',
    'bottle-valve-leak',
    'accumulator-precharge-low',
    'accumulator-precharge-high',
    'accumulator-seal-leak',
  ],
};
