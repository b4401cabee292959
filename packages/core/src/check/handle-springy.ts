import type { CheckDefinition } from '../define/index.js';

export const handleSpringy: CheckDefinition = {
  kind: 'handle-springy',
  title: 'Work the hand pump: is it springy',
  how: 'Is the handle springy or soft, and does it take more strokes than it should before it is firm?',
  minutes: 4,
  tools: 'nothing',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'NAVEDTRA 14315, hand pump check, as told in public excerpts; common practice, no source',
  shows: [
    'free-air',
    'hand-pump-line-air',
    'air-across-sequence-valve',
    'suction-air-leak',
    'hose-swollen',
  ],
  anywhere: true,
  needs: 'hand-supply',
  sure: 0.85,
};
