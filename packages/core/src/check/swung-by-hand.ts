import type { CheckDefinition } from '../define/index.js';

export const swungByHand: CheckDefinition = {
  kind: 'swung-by-hand',
  title: 'Swing the part by hand',
  how: 'Take the part off its jack, swing it by hand through its travel, and weigh what it takes.',
  minutes: 20,
  tools: 'spring scale, tools for the rod end',
  caution:
    'Open the dump valve or the return first: a leg moved by hand drives the others’ locks. Support the part.',
  source: 'common practice, no source',
  shows: [
    'dry-bearing',
    'bent-brace',
    'door-linkage-binding',
    'downlock-stiff',
    'uplock-roller-seized',
    'bore-galled',
    'steering-misaligned',
    'bungee-weak',
    'downlock-not-over-centre',
  ],
};
