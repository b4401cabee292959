import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const uplockMisrigged: FaultDefinition = {
  kind: 'uplock-misrigged',
  title: 'Uplock hook out of reach',
  group: 'actuators, locks, structure',
  meaning: 'The hook lies too far for the leg to reach it.',
  shows:
    'The leg arrives but is not caught: it leans on oil alone and drops when the pressure goes. A door may close on an unlocked leg.',
  confirm: 'Feeler gauge between hook and roller with the leg pressed up.',
  remedy: 'Rig the hook to the approved gap.',
  caution:
    'A leg that only oil holds comes down when the supply stops: nobody under it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Follows work on leg, hook or stop.',
  befalls: ['uplock'],
  worst: 'hook 30 mrad (1.7 degrees) too far',
  change: (p, severity) => ({
    at: number(p, 'at') + 0.03 * severity,
  }),
};
