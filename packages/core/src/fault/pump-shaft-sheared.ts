import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const pumpShaftSheared: FaultDefinition = {
  kind: 'pump-shaft-sheared',
  title: 'Pump shaft sheared or its coupling slips',
  group: 'supply',
  meaning:
    'The shaft or its coupling no longer turns the pump as fast as the engine turns; sheared, it does not turn it at all.',
  shows:
    'Sheared: no flow and no pressure with the engine running, while the hand pump works as always. A coupling that slips: slow everything.',
  confirm: 'Take the pump off and look at the shaft; try the hand pump or an outside supply.',
  remedy:
    'Replace shaft or pump; find out what stopped it (dirt, no oil, a seized rotor) before the next one shears.',
  caution:
    'Turning the engine to find out turns the propeller: use an outside supply. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'rare',
  priorWhy: 'Shafts are made to shear only when the pump seizes.',
  befalls: ['engine-pump', 'compensated-pump'],
  worst: 'the pump stands still',
  slows: 'up',
  change: (p, severity) => ({ drive: number(p, 'drive') * (1 - severity) }),
};
