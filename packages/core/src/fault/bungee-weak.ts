import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const bungeeWeak: FaultDefinition = {
  kind: 'bungee-weak',
  title: 'Downlock bungee or spring weak',
  group: 'actuators, locks, structure',
  meaning: 'Perished cord or a tired spring no longer carries the brace over.',
  shows:
    'With power all is normal. In free fall or emergency lowering the leg comes down but does not lock until it is pushed.',
  confirm:
    'Free fall on jacks; push by hand at the wheel: more than a few pounds to lock means the spring.',
  remedy: 'Replace the bungee by its date and its pull.',
  caution:
    'A leg that hangs unlocked folds when the aircraft is let down: ground locks first. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'owners’ club archive, message 18587 (more than 5 lb to lock by hand: spring); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Rubber ages by the calendar.',
  befalls: ['bungee', 'over-centre-brace'],
  worst: 'a tenth of the pull left',
  change: (p, severity) => ({ strength: number(p, 'strength') * (1 - 0.9 * severity) }),
};
