import type { CheckDefinition } from '../define/index.js';

export const pushedToLock: CheckDefinition = {
  kind: 'pushed-to-lock',
  title: 'Push it into its lock',
  how: 'Let down without power: does the leg need a push to lock, and how hard a one beside the other leg’s?',
  minutes: 8,
  tools: 'spring scale',
  caution: 'Stand where the leg cannot trap you; ground locks at hand.',
  source: 'common practice, no source: about 5 lbf and more speak for the spring',
  shows: ['bungee-weak', 'downlock-stiff', 'dry-bearing', 'downlock-not-over-centre', 'seal-iced'],
  sure: 0.9,
};
