import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const chainSlack: FaultDefinition = {
  kind: 'chain-slack',
  title: 'Chain slack',
  group: 'actuators, locks, structure',
  meaning: 'Stretched chain or loose turnbuckle between leg and doors.',
  shows:
    'The doors lag, then follow with a clack when the slack is taken up; a hesitation at every reversal.',
  confirm: 'Move the driven part by hand with the other held: measure the free play.',
  remedy: 'Set the tension by the approved data, replace a stretched chain.',
  caution:
    'A slack chain can climb its sprocket and jump. Fingers out of the run. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Chains stretch and are out of sight.',
  befalls: ['chain'],
  worst: '9 degrees of free play more, end to end',
  change: (p, severity) => ({ slack: add(number(p, 'slack'), 0.157 * severity, 1) }),
};
