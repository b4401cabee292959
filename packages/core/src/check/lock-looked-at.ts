import type { CheckDefinition } from '../define/index.js';

export const lockLookedAt: CheckDefinition = {
  kind: 'lock-looked-at',
  title: 'Look at the locks',
  how: 'Hook to roller with a feeler gauge, spring by scale, over-centre by straight edge, cable by its slack.',
  minutes: 12,
  tools: 'feeler, spring scale, straight edge',
  caution: 'Ground locks in before a hand goes near a lock.',
  source: 'common practice, no source',
  shows: [
    'uplock-misrigged',
    'uplock-spring-weak',
    'uplock-release-leak',
    'uplock-roller-seized',
    'uplatch-cable-stretched',
    'downlock-not-over-centre',
    'downlock-stiff',
    'internal-lock-worn',
    'seal-iced',
  ],
};
