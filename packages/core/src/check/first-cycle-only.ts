import type { CheckDefinition } from '../define/index.js';

export const firstCycleOnly: CheckDefinition = {
  kind: 'first-cycle-only',
  title: 'Swing it five times running',
  how: 'Does it get better from swing to swing, and stay so?',
  minutes: 15,
  tools: 'watch',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source:
    'NAVEDTRA 14315, air check by moving the handle, as told in public excerpts; common practice, no source',
  shows: ['free-air', 'air-across-sequence-valve', 'hand-pump-line-air'],
  anywhere: true,
  sure: 0.85,
};
