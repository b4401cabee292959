import type { FaultDefinition } from '../define/index.js';

export const handPumpOutletCheckBackward: FaultDefinition = {
  kind: 'hand-pump-outlet-check-backward',
  title: 'Hand pump outlet check fitted the wrong way round',
  group: 'supply',
  meaning:
    'After an overhaul the outlet check of the hand pump points inward. All or nothing, whatever the severity.',
  shows:
    'The handle will not move in the pumping direction, from the first stroke, with no pressure in the system; nothing is delivered.',
  confirm:
    'Main pump off first: a handle that stands solid because that pump already holds the pressure is no fault. Handle solid with the gauge at zero: look at the arrow of the check.',
  remedy: 'Fit it the right way round, prime, prove it against a shut line.',
  caution:
    'Do not lengthen the handle: what it pushes against is the pump itself. Find another way to lower the gear before it is needed. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'public study questions of the FAA airframe test (hand pump)',
  prior: 'rare',
  priorWhy: 'Only after the pump was apart.',
  befalls: ['hand-pump'],
  worst: 'reversed',
  slows: 'up',
  change: (p, severity) => ({ outletReversed: p.outletReversed === true || severity > 0 }),
};
