import type { CheckDefinition } from '../define/index.js';

export const doorsOff: CheckDefinition = {
  kind: 'doors-off',
  title: 'Swing with the doors disconnected',
  how: 'Take the doors off their drive, tie them clear, and time a swing.',
  minutes: 30,
  tools: 'tools for the door links, stopwatch',
  caution:
    'Tie the doors clear: a loose door meets the leg. Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  swing: { doors: 'disconnected' },
};
