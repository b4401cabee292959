import type { CheckDefinition } from '../define/index.js';

export const warmOil: CheckDefinition = {
  kind: 'warm-oil',
  title: 'Swing with warm oil',
  how: 'Circulate the oil through the stand until it is some 25 K warmer, and time a swing. What thick oil does goes, what a leak does grows.',
  minutes: 25,
  tools: 'ground supply, thermometer, stopwatch',
  caution:
    'Hot oil scalds. Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  swing: { warmer: 25 },
};
