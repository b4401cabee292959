import type { CheckDefinition } from '../define/index.js';

export const bledAgain: CheckDefinition = {
  kind: 'bled-again',
  title: 'Bleed it and swing again',
  how: 'Swing several times with the return running clear, bleed at the high points, swing again.',
  minutes: 20,
  tools: 'bleed hose, bottle',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: ['free-air', 'hand-pump-line-air', 'suction-air-leak', 'air-across-sequence-valve'],
  sure: 0.9,
};
