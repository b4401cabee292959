/**
 * Fixed orifice: q = c dp / (dp^2 + dc^2)^(1/4), see medium/orifice. Use a one-way restrictor
 * where one direction must stay free, a line where length matters.
 */
import type { DeviceDefinition } from '../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  number,
  transitionReynolds,
} from './shared/parameters.js';

export const orifice: DeviceDefinition = {
  kind: 'orifice',
  title: 'Orifice',
  summary: 'A fixed hole that resists flow alike in both directions.',
  source: 'turbulent orifice with laminar core: Merritt, Hydraulic Control Systems (from memory)',
  role: 'other',
  parameters: {
    bore: bore(
      'bore of the hole',
      0.0015,
      'restrictors of light gear systems: about 0.5 to 3 mm; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet', volume: 1e-6 },
    outlet: { title: 'outlet', volume: 1e-6 },
  },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      title: 'flow',
      law: (p, s) => boreLaw(p, s, number(p, 'bore')),
    },
  },
  prepare: () => new Float64Array(0),
  symbol: { name: 'orifice', size: [4, 4], ports: { inlet: [-2, 0], outlet: [2, 0] } },
};
