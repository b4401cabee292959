import type { CheckDefinition } from '../define/index.js';

export const levelLow: CheckDefinition = {
  kind: 'level-low',
  title: 'Look at the level',
  how: 'Is oil missing, in the state of gear and pressure that the placard asks for?',
  minutes: 3,
  tools: 'dipstick or sight glass',
  caution: 'Where it went must be known before more is done.',
  source: 'common practice, no source',
  shows: [
    'reservoir-low',
    'line-pinhole',
    'fitting-leak',
    'rod-seal-leak',
    'pump-joint-leak',
    'hose-swollen',
    'actuator-reversed',
  ],
  anywhere: true,
  sure: 0.85,
};
