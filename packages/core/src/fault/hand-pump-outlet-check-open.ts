import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const handPumpOutletCheckOpen: FaultDefinition = {
  kind: 'hand-pump-outlet-check-open',
  title: 'Hand pump outlet check sticks open',
  group: 'supply',
  meaning: 'Dirt or wear keeps the outlet check of the hand pump off its seat.',
  shows:
    'The handle kicks on the intake stroke and pressure falls back between strokes; more strokes, and under load they gain little.',
  confirm:
    'Pump against a shut line and hold: the handle comes back by itself and the gauge falls.',
  remedy: 'Clean or renew the check and its seat, flush, prime.',
  caution:
    'A handle that kicks breaks wrists: stand clear of its arc, and let go of nothing under pressure. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'public study questions of the FAA airframe test (hand pump); amounts: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'A small ball that sees every bit of dirt, used once a year.',
  befalls: ['hand-pump'],
  worst: 'a leak of 1 US gal/min at 1000 psi back past the check while the barrel fills',
  slows: 'up',
  change: (p, severity) => ({
    outletLeak: add(number(p, 'outletLeak'), severity * GALLON_AT_1000_PSI),
  }),
};
