import type { CheckDefinition } from '../define/index.js';

export const lightAgainstLock: CheckDefinition = {
  kind: 'light-against-lock',
  title: 'Hold the lights against the locks',
  how: 'An eye on each lock, another on its light: do they say different things?',
  minutes: 6,
  tools: 'mirror, lamp',
  caution: 'Ground locks in before a hand goes near a lock.',
  source: 'UK AAIB Bulletin 7/2017; common practice, no source',
  shows: [
    'switch-misrigged',
    'squat-switch-stuck',
    'internal-lock-worn',
    'seal-fragment-jam',
    'downlock-not-over-centre',
  ],
  sure: 0.9,
};
