import type { CheckDefinition } from '../define/index.js';

export const secondFlow: CheckDefinition = {
  kind: 'second-flow',
  title: 'Swing at half the flow',
  how: 'Set the stand to half its flow and time a swing. A restriction then matters less, a leak more.',
  minutes: 6,
  tools: 'ground supply with a flow meter, stopwatch',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  swing: { flowShare: 0.5 },
};
