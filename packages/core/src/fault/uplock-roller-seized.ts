import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const uplockRollerSeized: FaultDefinition = {
  kind: 'uplock-roller-seized',
  title: 'Uplock roller seized',
  group: 'actuators, locks, structure',
  meaning:
    'The roller on which the hook rides no longer turns: the hook must be dragged off it under the weight of the leg.',
  shows:
    'DOWN: unlocks at a higher gauge, with a noise, and late where the supply is slow to reach it; in time a bent release rod.',
  confirm: 'Turn the roller by hand; look for a flat on it.',
  remedy: 'Clean and grease or replace the roller; look at the release rod.',
  caution:
    'The leg comes off with a jerk: keep out from under it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'ATSB occurrence 198702398 (seized roller); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Grease is forgotten where nobody sees it.',
  befalls: ['uplock'],
  worst: 'release pressure 400 psi higher with the leg’s weight on the hook',
  change: (p, severity) => ({ rollerDrag: add(number(p, 'rollerDrag'), severity * 2.76e6, 3e7) }),
};
