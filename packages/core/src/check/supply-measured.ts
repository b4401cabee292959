import type { CheckDefinition } from '../define/index.js';

export const supplyMeasured: CheckDefinition = {
  kind: 'supply-measured',
  title: 'Measure the supply',
  how: 'Read flow and pressure of the pump or stand into a known restriction, and what the motor gets.',
  minutes: 15,
  tools: 'flow meter, gauge, voltmeter',
  caution: 'Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: [
    'pump-worn',
    'pump-shaft-sheared',
    'ground-supply-weak',
    'electric-supply-weak',
    'unloader-bypass-leak',
    'hand-pump-piston-leak',
    'hand-pump-outlet-check-open',
    'hand-pump-outlet-check-backward',
    'pump-joint-leak',
  ],
};
