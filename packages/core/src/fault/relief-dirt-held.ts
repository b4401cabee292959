import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const reliefDirtHeld: FaultDefinition = {
  kind: 'relief-dirt-held',
  title: 'Relief valve held open by dirt',
  group: 'supply',
  meaning: 'Something under the seat keeps the relief valve from shutting.',
  shows: 'All services weak from one moment to the next; may clear when the valve is made to pop.',
  confirm:
    'Body warm and hissing at any pressure; flow from its return line with everything at rest.',
  remedy: 'Flush; clean or replace the valve, find where the dirt came from.',
  caution:
    'The oil behind a hissing valve is hot: let the system cool and bleed its pressure before opening it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Needs a particle of the right size; follows work on the system.',
  befalls: ['relief-valve'],
  worst: '2 US gal/min at 1000 psi, oil of 12 mPa s',
  slows: 'both',
  change: (p, severity) => ({
    leak: add(number(p, 'leak'), severity * 2 * GALLON_AT_1000_PSI),
  }),
};
