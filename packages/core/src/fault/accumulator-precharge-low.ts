import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const accumulatorPrechargeLow: FaultDefinition = {
  kind: 'accumulator-precharge-low',
  title: 'Accumulator precharge low or gone',
  group: 'supply',
  meaning:
    'Its gas has leaked out, so that next to no cushion is left for the oil to work against.',
  shows:
    'Hammer, an unloader that cuts in and out quickly, and a pressure that is gone the moment the pump stops.',
  confirm:
    'Read the gas gauge with no hydraulic pressure; or bleed slowly: the needle drops to zero from the precharge.',
  remedy: 'Charge it with dry nitrogen by the placard; find where the gas went.',
  caution:
    'Never charge with oxygen; gas in a cylinder is stored energy. Let the oil pressure off first. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'public A&P study questions (hammer: no precharge; pressure gone after shut-off: no gas)',
  prior: 'common',
  priorWhy: 'Gas valves and seals leak, and the gauge is read with pressure on.',
  befalls: ['accumulator'],
  worst: 'no gas above ambient pressure',
  change: (p, severity) => ({ precharge: number(p, 'precharge') * (1 - severity) }),
};
