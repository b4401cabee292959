import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const reservoirVentBlocked: FaultDefinition = {
  kind: 'reservoir-vent-blocked',
  title: 'Reservoir vent blocked or tank pressure lost',
  group: 'supply',
  meaning:
    'Air cannot follow the oil that leaves, or the air that should press on it is gone: the head space is below ambient.',
  shows:
    'The pump howls and loses flow at high speed, in cold oil and at height; at low speed on the ground all is well. The tank hisses when its cap is opened.',
  confirm:
    'Open the filler slowly with the system at rest and listen; blow through the vent; read the gauge of a pressurised tank.',
  remedy: 'Clear the vent, renew its filter; restore the air supply of a pressurised tank.',
  caution:
    'A tank that sucks in or blows out its cap can spray oil: open it at rest and slowly. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Vents point down into spray and insects; looked at seldom.',
  befalls: ['reservoir', 'standpipe-reservoir'],
  worst: '80 kPa below ambient',
  slows: 'up',
  change: (p, severity) => ({
    headspace: number(p, 'headspace') - Math.max(0, number(p, 'headspace') + 8e4) * severity,
  }),
};
