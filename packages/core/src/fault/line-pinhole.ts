import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const linePinhole: FaultDefinition = {
  kind: 'line-pinhole',
  title: 'Pinhole or cracked flare',
  group: 'valves and lines',
  meaning: 'A chafed tube, a corroded spot or a cracked flare sprays oil outside under pressure.',
  shows:
    'Mist, an oily bay, the level falls; the pump runs on, the hand pump loses its resistance, what oil holds sags.',
  confirm:
    'Hold a sheet of card, on a stick, along the line under low pressure; clean, then look for wet.',
  remedy: 'Replace line or flare; find what chafed or strained it.',
  caution:
    'NEVER look for it with a hand: oil under pressure goes through gloves and skin, and such a wound is an emergency though it looks small. Mist burns: no flames, no hot lamps. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NAVEDTRA 14008 (card, not hand); NASA ASRS report 253327 (mist); NTSB report WPR16LA187',
  prior: 'uncommon',
  priorWhy: 'Lines chafe where a clamp is missing.',
  befalls: ['line', 'hose'],
  worst: 'a hole of 1 mm',
  slows: 'up',
  change: (p, severity) => ({ hole: Math.max(number(p, 'hole'), 0.001 * severity) }),
};
