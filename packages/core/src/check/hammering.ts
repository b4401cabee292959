import type { CheckDefinition } from '../define/index.js';

export const hammering: CheckDefinition = {
  kind: 'hammering',
  title: 'Listen beside the pump',
  how: 'With the pump running and the gear at rest, then on the move: does it hammer, bang or chatter?',
  minutes: 3,
  tools: 'nothing',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'public airframe examination questions on accumulators; common practice, no source',
  shows: [
    'accumulator-precharge-low',
    'accumulator-seal-leak',
    'unloader-check-leak',
    'pressure-switch-set-low',
    'relief-set-high',
  ],
  anywhere: true,
  sure: 0.8,
};
