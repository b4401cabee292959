import type { CheckDefinition } from '../define/index.js';

export const switchesTried: CheckDefinition = {
  kind: 'switches-tried',
  title: 'Try the switches',
  how: 'Each switch by hand, its lamp or its signal read; the setting of pressure switches by gauge.',
  minutes: 10,
  tools: 'meter, lamp',
  caution: 'Circuit breakers pulled: a switch starts a leg.',
  source: 'common practice, no source',
  shows: ['switch-misrigged', 'squat-switch-stuck', 'pressure-switch-set-low'],
};
