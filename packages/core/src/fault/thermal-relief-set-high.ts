import type { FaultDefinition } from '../define/index.js';
import { raised } from './grade.js';

export const thermalReliefSetHigh: FaultDefinition = {
  kind: 'thermal-relief-set-high',
  title: 'Thermal relief valve blocked or set high',
  group: 'supply',
  meaning:
    'The valve that should let warm oil out of a shut-off line opens too late or not at all.',
  shows:
    'Nothing while swinging; after a warm ramp the shut-off line stands at a high pressure, the first unlock is hard, and both sides may be locked by pressure.',
  confirm: 'Read the static gauges after the aircraft has stood warm; prove the valve on a bench.',
  remedy: 'Replace or set the valve; inspect what was over-pressed.',
  caution:
    'Never crack a fitting to let it off except where the procedure says so: oil from a small opening goes through skin. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'expansion times bulk modulus (any fluid mechanics text); signs common practice, no source',
  prior: 'uncommon',
  priorWhy: 'It seldom works, so that nobody notices when it cannot.',
  befalls: ['thermal-relief'],
  worst: 'two and a half times the setting',
  change: (p, severity) => raised(p, 1 + 1.5 * severity),
};
