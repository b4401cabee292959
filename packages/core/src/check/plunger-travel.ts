import type { CheckDefinition } from '../define/index.js';

export const plungerTravel: CheckDefinition = {
  kind: 'plunger-travel',
  title: 'Measure the plunger’s travel',
  how: 'Bring the leg or door to its end by hand pump, and measure when the plunger is met and how far it goes.',
  minutes: 10,
  tools: 'feeler, rule, hand pump',
  caution:
    'Fingers out of the linkage while there is pressure. Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  shows: ['plunger-rigged-early', 'plunger-rigged-late', 'striker-worn', 'plunger-load-high'],
};
