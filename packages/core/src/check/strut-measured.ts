import type { CheckDefinition } from '../define/index.js';

export const strutMeasured: CheckDefinition = {
  kind: 'strut-measured',
  title: 'Measure the strut',
  how: 'Length with the leg hanging, gas pressure, and what the shortening link does over the travel.',
  minutes: 12,
  tools: 'rule, strut gauge',
  caution: 'Strut gas is stored energy: valve cap off slowly, face aside.',
  source: 'common practice, no source',
  shows: ['strut-overcharged', 'strut-not-extended', 'shortening-link-broken'],
};
