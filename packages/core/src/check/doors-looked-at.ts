import type { CheckDefinition } from '../define/index.js';

export const doorsLookedAt: CheckDefinition = {
  kind: 'doors-looked-at',
  title: 'Look at the doors',
  how: 'Gaps all round with the gear up, seal marks, slack of chain and links, hinges, stops.',
  minutes: 10,
  tools: 'feeler, rule, lamp',
  caution: 'Stay out of the doors’ arcs unless they are tied.',
  source: 'common practice, no source',
  shows: [
    'door-seal-tight',
    'door-loose',
    'door-restraint-out',
    'door-linkage-binding',
    'chain-slack',
    'chain-jumped-tooth',
  ],
};
