import type { CheckDefinition } from '../define/index.js';

export const pivotsLookedAt: CheckDefinition = {
  kind: 'pivots-looked-at',
  title: 'Look at the pivots',
  how: 'Studs, pins and hinges: is one dry, rusty, bent or marked, beside the same one of the other side?',
  minutes: 6,
  tools: 'lamp, mirror',
  caution: 'Ground locks in before a hand goes near a lock.',
  source:
    'NTSB field report of a dry side-brace stud, told by a weekly, 2013; common practice, no source',
  shows: [
    'dry-bearing',
    'bent-brace',
    'door-linkage-binding',
    'uplock-roller-seized',
    'downlock-stiff',
    'striker-worn',
  ],
  sure: 0.9,
};
