import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const pressureSwitchSetLow: FaultDefinition = {
  kind: 'pressure-switch-set-low',
  title: 'Pressure switch set low',
  group: 'supply',
  meaning: 'The switch that stops the pump opens below its setting, or flutters on pressure peaks.',
  shows:
    'The pump stops short, before the gear is home, then stutters on and off at the end of the stroke; a lamp goes out too early.',
  confirm: 'A gauge beside the switch: note at what pressure the motor stops and starts.',
  remedy: 'Set or replace the switch; damp its line where peaks trip it.',
  caution:
    'A gear that stops short is not locked, whatever the pump says. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'a public owners’ forum thread (pump stutters at the end of the stroke); common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Springs and contacts tire.',
  befalls: ['pressure-switch', 'power-pack'],
  worst: '40 % of the setting',
  slows: 'up',
  change: (p, severity) => {
    const [upper, lower] = p.cutOut === undefined ? ['opens', 'closes'] : ['cutOut', 'cutIn'];
    const share = 1 - 0.6 * severity;
    return { [upper]: number(p, upper) * share, [lower]: number(p, lower) * share };
  },
};
