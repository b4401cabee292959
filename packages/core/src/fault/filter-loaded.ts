import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const filterLoaded: FaultDefinition = {
  kind: 'filter-loaded',
  title: 'Filter element loaded',
  group: 'supply',
  meaning: 'The element is blocked by what it caught.',
  shows:
    'Before the filter pressure is high, behind it low, while oil moves; equal at stall. The by-pass or its button is out. Cold oil makes it worse.',
  confirm: 'Two gauges, one each side, while something moves.',
  remedy: 'Change the element; look at what is in it.',
  caution:
    'What a by-passing filter lets through goes to valves and restrictors. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'common',
  priorWhy: 'Elements are forgotten.',
  befalls: ['filter'],
  worst: 'next to nothing passes the element',
  slows: 'both',
  change: (p, severity) => ({
    loading: 1 - (1 - number(p, 'loading')) * (1 - severity),
  }),
};
