import type { CheckDefinition } from '../define/index.js';

export const plungerPressed: CheckDefinition = {
  kind: 'plunger-pressed',
  title: 'Press the plunger by hand',
  how: 'Where the sequence stands still, press the plunger with a rod, hands clear, and see whether the next part starts.',
  minutes: 4,
  tools: 'rod',
  caution:
    'The door moves at once: hands and head out of its arc. Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  shows: [
    'plunger-rigged-late',
    'sticking-sequence-valve',
    'sequence-valve-stuck-shut',
    'striker-worn',
  ],
  sure: 0.9,
};
