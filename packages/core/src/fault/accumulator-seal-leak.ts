import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const accumulatorSealLeak: FaultDefinition = {
  kind: 'accumulator-seal-leak',
  title: 'Accumulator seal leaks: oil in its gas side',
  group: 'supply',
  meaning:
    'Oil has passed the piston or bladder and stands in the gas side; gas has gone the other way.',
  shows:
    'The precharge creeps from check to check and there is oil at the gas valve; little oil is stored, and the unloader cuts in and out quickly.',
  confirm: 'With the pressure off, crack the gas valve slowly: oil mist comes.',
  remedy: 'Replace the accumulator or its seals; bleed the gas out of the system.',
  caution:
    'Oil at the gas valve sprays: let the oil pressure off first, and keep the face away. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NAVEDTRA 14018 and 14315 (accumulators)',
  prior: 'uncommon',
  priorWhy: 'Seals wear slowly; bladders go at once.',
  befalls: ['accumulator'],
  worst: 'seven tenths of the gas room full of oil, half of the precharge gone',
  change: (p, severity) => ({
    precharge: number(p, 'precharge') * (1 - 0.5 * severity),
    volume: Math.min(
      number(p, 'volume'),
      Math.max(1e-5, number(p, 'volume') * (1 - 0.7 * severity)),
    ),
  }),
};
