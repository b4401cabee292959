import type { CheckDefinition } from '../define/index.js';

export const handleSlack: CheckDefinition = {
  kind: 'handle-slack',
  title: 'Work the hand pump: is there any resistance',
  how: 'Does the handle meet no resistance, however long one pumps?',
  minutes: 3,
  tools: 'nothing',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'NTSB field report ANC20LA013, hand pump without resistance; common practice, no source',
  shows: [
    'fitting-leak',
    'line-pinhole',
    'reservoir-low',
    'dump-valve-open',
    'hand-pump-piston-leak',
    'relief-dirt-held',
    'hose-swollen',
  ],
  anywhere: true,
  needs: 'hand-supply',
  sure: 0.85,
};
