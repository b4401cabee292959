import type { CheckDefinition } from '../define/index.js';

export const byPassFlow: CheckDefinition = {
  kind: 'by-pass-flow',
  title: 'Flow past the piston',
  how: 'Hold the jack at the end of its stroke under pressure, open its other port into a can: what runs is what passes the piston. Or charge it with nitrogen and shut the valve: the pressure falls, and soapy water shows nothing outside.',
  minutes: 20,
  tools: 'can, blanking caps, gauge',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: [
    'piston-seal-bypass',
    'seal-fragment-jam',
    'internal-lock-worn',
    'actuator-check-left-out',
  ],
};
