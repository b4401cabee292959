import type { CheckDefinition } from '../define/index.js';

export const betterWarm: CheckDefinition = {
  kind: 'better-warm',
  title: 'Swing it again when all is warm',
  how: 'After an hour’s running, or in the afternoon: is it as it should be?',
  minutes: 60,
  tools: 'thermometer',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  shows: [
    'cold-oil',
    'oil-too-thick',
    'seal-iced',
    'water-in-oil',
    'downlock-stiff',
    'thermal-contraction',
  ],
  anywhere: true,
  sure: 0.9,
};
