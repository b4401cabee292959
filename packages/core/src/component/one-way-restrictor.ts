/**
 * One-way restrictor (orifice check valve): a fixed orifice, and beside it a check valve that
 * opens for flow from inlet to outlet. `reversed` turns the body round in its line.
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
import { rise, riseSlope } from './shared/smooth.js';

const CONSTANT = 0;
const TRANSITION = 1;
const FREE_CONSTANT = 2;
const FREE_TRANSITION = 3;
const CRACK = 4;
const PER_OPENING = 5;
const SENSE = 6;

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
  flows: { through: { from: 'inlet', to: 'outlet', title: 'flow' } },
  check: (p) =>
    number(p, 'full') > number(p, 'crack')
      ? []
      : [
          {
            parameter: 'full',
            message: 'must be above the drop at which the valve begins to open',
          },
        ],
  prepare: (p, s) =>
    Float64Array.of(
      constantOf(p, s, number(p, 'bore')),
      transitionOf(p, s, number(p, 'bore')),
      constantOf(p, s, number(p, 'freeBore')),
      transitionOf(p, s, number(p, 'freeBore')),
      number(p, 'crack'),
      1 / (number(p, 'full') - number(p, 'crack')),
      p.reversed === true ? -1 : 1,
    ),
  equations: (d) => {
    const k = d.k;
    // Drop in the free direction of the body as fitted.
    const dp = k[SENSE] * (d.pressure(0) - d.pressure(1));
    let q = orificeFlow(k[CONSTANT], dp, k[TRANSITION]);
    const x = (dp - k[CRACK]) * k[PER_OPENING];
    const free = x > 0 ? orificeFlow(k[FREE_CONSTANT], dp, k[FREE_TRANSITION]) : 0;
    const open = rise(x);
    q += open * free;
    if (!d.partials) {
      d.flow(0, k[SENSE] * q, 0, 0);
      return;
    }
    let slope = orificeSlope(k[CONSTANT], dp, k[TRANSITION]);
    if (x > 0) {
      slope +=
        open * orificeSlope(k[FREE_CONSTANT], dp, k[FREE_TRANSITION]) +
        riseSlope(x) * k[PER_OPENING] * free;
    }
    d.flow(0, k[SENSE] * q, slope, -slope);
  },
  symbol: { name: 'one-way-restrictor', size: [6, 6], ports: { inlet: [-3, 0], outlet: [3, 0] } },
};
