import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const returnBackPressure: FaultDefinition = {
  kind: 'return-back-pressure',
  title: 'Return does not come down to zero',
  group: 'valves and lines',
  meaning:
    'The tank is over-pressurised or its return connected to something that stands under pressure: every line at rest keeps that much.',
  shows:
    'The idle line never reads zero, at rest either; a pressure switch or lock on it may not reset. Times hardly change.',
  confirm:
    'A gauge in the return at rest. Slacken the filler cap of the tank carefully: the reading falls with it.',
  remedy: 'Put vent, tank pressure or return connection right.',
  caution:
    'A tank under pressure sprays when its cap is opened: let it down first. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a home builders’ public archive (a pressure switch held open)',
  prior: 'uncommon',
  priorWhy: 'Test stands with their own tank pressure; vents painted over.',
  befalls: ['reservoir', 'standpipe-reservoir'],
  worst: '4 bar in the return',
  change: (p, severity) => ({ headspace: add(number(p, 'headspace'), 4e5 * severity, 5e5) }),
};
