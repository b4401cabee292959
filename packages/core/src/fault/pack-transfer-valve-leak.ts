import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const packTransferValveLeak: FaultDefinition = {
  kind: 'pack-transfer-valve-leak',
  title: 'Valve in the power pack leaks',
  group: 'valves and lines',
  meaning: 'The lock valve that shuts the up line in, or the shuttle beside it, does not seat.',
  shows:
    'The gear sags slowly when it is up, with no oil outside; with power on the motor cuts in every so often, at rest too. Going up may be a little slow.',
  confirm: 'Cap the lines at the pack: if the sag stops the pack leaks, if not the actuators do.',
  remedy: 'Overhaul the pack; clean its screen.',
  caution:
    'A gear held up by oil alone comes down by itself: pins and props, not the pack, make it safe. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'an owners’ public forum (sag without outside leak)',
  prior: 'common',
  priorWhy: 'Small seats, and every bit of dirt goes through the pack.',
  befalls: ['power-pack'],
  worst:
    'a fifth of a US gallon a minute at 1000 psi past the lock valve, a twentieth past the shuttle, oil of 12 mPa s',
  change: (p, severity) => ({
    lockLeak: add(number(p, 'lockLeak'), 0.2 * severity * GALLON_AT_1000_PSI),
    spoolLeak: add(number(p, 'spoolLeak'), 0.05 * severity * GALLON_AT_1000_PSI),
  }),
};
