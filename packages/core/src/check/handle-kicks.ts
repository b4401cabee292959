import type { CheckDefinition } from '../define/index.js';

export const handleKicks: CheckDefinition = {
  kind: 'handle-kicks',
  title: 'Work the hand pump: does it kick',
  how: 'Against pressure: does the handle kick back on the intake stroke?',
  minutes: 3,
  tools: 'nothing',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'public airframe examination questions on hand pumps',
  shows: ['hand-pump-outlet-check-open'],
  anywhere: true,
  needs: 'hand-supply',
};
