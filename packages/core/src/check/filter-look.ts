import type { CheckDefinition } from '../define/index.js';

export const filterLook: CheckDefinition = {
  kind: 'filter-look',
  title: 'Look at the filters',
  how: 'Read the differential indicators; take the elements out and look at them.',
  minutes: 15,
  tools: 'tools for the bowls, catch can',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: ['filter-loaded', 'return-filter-loaded'],
};
