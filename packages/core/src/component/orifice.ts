/**
 * Fixed orifice: q = c dp / (dp^2 + dc^2)^(1/4), see medium/orifice. Use a one-way restrictor
 * where one direction must stay free, a line where length matters.
 */
import type { DeviceDefinition } from '../define/index.js';
import { orificeFlow, orificeSlope } from '../medium/index.js';
import {
  bore,
  constantOf,
  dischargeCoefficient,
  number,
  transitionOf,
  transitionReynolds,
} from './shared/parameters.js';

const CONSTANT = 0;
const TRANSITION = 1;

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
  flows: { through: { from: 'inlet', to: 'outlet', title: 'flow' } },
  prepare: (p, s) =>
    Float64Array.of(constantOf(p, s, number(p, 'bore')), transitionOf(p, s, number(p, 'bore'))),
  equations: (d) => {
    const dp = d.pressure(0) - d.pressure(1);
    const slope = orificeSlope(d.k[CONSTANT], dp, d.k[TRANSITION]);
    d.flow(0, orificeFlow(d.k[CONSTANT], dp, d.k[TRANSITION]), slope, -slope);
  },
  symbol: { name: 'orifice', size: [4, 4], ports: { inlet: [-2, 0], outlet: [2, 0] } },
};
