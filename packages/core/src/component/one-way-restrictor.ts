/**
 * One-way restrictor (orifice check valve): a fixed orifice, and beside it a check valve that
 * opens for flow from inlet to outlet. `reversed` turns the body round in its line.
 */
import type { DeviceDefinition } from '../define/index.js';
import {
  bore,
  boreLaw,
  checkOf,
  dischargeCoefficient,
  mustExceed,
  number,
  transitionReynolds,
} from './shared/parameters.js';

export const oneWayRestrictor: DeviceDefinition = {
  kind: 'one-way-restrictor',
  title: 'One-way restrictor',
  summary:
    'Free from inlet to outlet, restricted from outlet to inlet: sets the speed of one direction.',
  source: 'orifice and quasi-static poppet: Merritt, Hydraulic Control Systems (from memory)',
  role: 'other',
  parameters: {
    bore: bore(
      'bore of the restriction',
      0.0012,
      'sets the speed of the restricted direction: 0.5 to 3 mm in light gear systems; common practice, no source',
    ),
    freeBore: bore(
      'bore of the free direction',
      0.006,
      'about the bore of the line; common practice, no source',
    ),
    crack: {
      title: 'drop at which the free direction begins to open',
      quantity: 'gauge-pressure',
      range: [0, 1e6],
      default: 15_000,
      why: 'a light spring, about 2 psi; common practice, no source',
    },
    full: {
      title: 'drop at which the free direction is fully open',
      quantity: 'gauge-pressure',
      range: [2000, 2e6],
      default: 150_000,
      why: 'a few times the crack drop; common practice, no source',
    },
    stuckShut: {
      title: 'share of the free direction that sticks shut',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a free check; with it stuck both directions go through the restriction',
    },
    reversed: {
      type: 'switch',
      title: 'fitted the wrong way round',
      default: false,
      why: 'the arrow on the body points the free way; a swapped one is a known fitting fault',
    },
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet of the free direction', volume: 2e-6 },
    outlet: { title: 'outlet of the free direction', volume: 2e-6 },
  },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      title: 'flow',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        check: checkOf(p, s, number(p, 'freeBore'), p.reversed === true ? -1 : 1, 'stuckShut'),
      }),
    },
  },
  check: (p) =>
    mustExceed(p, 'full', 'crack', 'must be above the drop at which the valve begins to open'),
  prepare: () => new Float64Array(0),
  symbol: { name: 'one-way-restrictor', size: [6, 6], ports: { inlet: [-3, 0], outlet: [3, 0] } },
};
