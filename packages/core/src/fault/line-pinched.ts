import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const linePinched: FaultDefinition = {
  kind: 'line-pinched',
  title: 'Line pinched or of too small a bore',
  group: 'valves and lines',
  meaning: 'A kink, a dent or a wrong tube narrows the way.',
  shows:
    'Moving pressure high, worse when cold; with two legs on one supply the other one goes first. Stall pressure and strokes unchanged.',
  confirm: 'Gauges at both ends while something moves; look along the line.',
  remedy: 'Replace the line with the right bore; find out what bent it.',
  caution:
    'A dented tube is a burst one later: keep hands and face away. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Lines in wheel wells get stepped on and struck.',
  befalls: ['line', 'segmented-line', 'hose'],
  worst: 'bore down to three tenths',
  slows: 'both',
  // A kinked hose keeps its volume, so it has a narrowing of its own.
  change: (p, severity): Record<string, number> =>
    Object.hasOwn(p, 'narrowing')
      ? { narrowing: Math.max(number(p, 'narrowing'), 0.7 * severity) }
      : { bore: Math.max(0.002, number(p, 'bore') * (1 - 0.7 * severity)) },
};
