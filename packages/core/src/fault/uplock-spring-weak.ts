import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const uplockSpringWeak: FaultDefinition = {
  kind: 'uplock-spring-weak',
  title: 'Uplock spring weak or broken',
  group: 'actuators, locks, structure',
  meaning: 'The spring that keeps the hook on has tired or parted.',
  shows:
    'Up and locked as ever; later the hook works off, the transit light comes on, and the leg leans on oil alone: it drops when the pressure goes.',
  confirm: 'Spring scale on the hook; shake it by hand with the leg up.',
  remedy: 'Replace the spring.',
  caution:
    'A leg that only oil holds comes down when the supply stops: nobody under it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Springs corrode in the wheel well.',
  befalls: ['uplock'],
  worst: 'holds for 5 s before vibration shakes it off',
  change: (p, severity) => ({ holdsFor: Math.min(number(p, 'holdsFor'), 5 / severity) }),
};
