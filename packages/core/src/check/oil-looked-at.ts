import type { CheckDefinition } from '../define/index.js';

export const oilLookedAt: CheckDefinition = {
  kind: 'oil-looked-at',
  title: 'Look at the oil',
  how: 'Level, colour, bubbles and smell; a sample against a fresh one, its thickness and its temperature.',
  minutes: 10,
  tools: 'sample bottle, thermometer',
  caution: 'Wrong fluid destroys seals: what went in must be known before more is done.',
  source: 'common practice, no source',
  shows: [
    'oil-too-thick',
    'oil-too-thin',
    'cold-oil',
    'water-in-oil',
    'contaminated-oil',
    'wrong-base-fluid',
    'reservoir-low',
    'reservoir-vent-blocked',
    'free-air',
    'suction-air-leak',
    'thermal-contraction',
    'thermal-expansion',
  ],
  sure: 0.9,
};
