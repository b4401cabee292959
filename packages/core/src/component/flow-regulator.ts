/**
 * Flow regulator, pressure compensated: a metering orifice whose drop a spring-loaded spool holds
 * constant, so that the flow does not depend on the load. Below its least drop the spool is wide
 * open and it is an orifice; from there on the flow stays within one part in a hundred of its
 * setting. One smooth law:
 *
 *   q = flow sqrt(r) / (1 + r^4)^(1/8),  r = drop / (half of the least drop)
 *
 * which is 0.9925 of the setting at the least drop and rises to it. Back through it the spool is
 * open and it is a plain orifice; with `freeBack` a check valve lets oil back beside it. A spool
 * that sticks open makes that share of it an orifice forward too. Use an orifice or one-way
 * restrictor where the flow may follow the load.
 */
import type { DeviceDefinition } from '../define/index.js';
import { orificeFlow, orificeSlope } from '../medium/index.js';
import { freeBack, freeBackParameters } from './shared/free-back.js';
import {
  dischargeCoefficient,
  mustExceed,
  number,
  transitionOf,
  transitionReynolds,
} from './shared/parameters.js';
import { without } from './shared/without.js';

const CONSTANT = 0;
const TRANSITION = 1;
const PER_KNEE = 2;
const STUCK = 3;

const INLET = 0;
const OUTLET = 1;

/** The flow bends over at this share of the least drop. */
const KNEE = 0.5;

const through = {
  through: { from: 'inlet', to: 'outlet', title: 'flow' },
} satisfies DeviceDefinition['flows'];

export const flowRegulator: DeviceDefinition = {
  kind: 'flow-regulator',
  title: 'Flow regulator',
  summary: 'Passes a constant flow whatever the drop across it, from its least drop on.',
  source:
    'pressure-compensated flow control valve: Merritt, Hydraulic Control Systems (from memory); the joining curve is our own',
  role: 'other',
  parameters: {
    flow: {
      title: 'regulated flow',
      quantity: 'flow',
      range: [1e-6, 5e-3],
      why: 'no default: it sets the speed of the unit behind it',
    },
    least: {
      title: 'least drop at which it regulates',
      quantity: 'gauge-pressure',
      range: [5e4, 5e6],
      default: 700_000,
      why: 'about 100 psi for the spring of the compensator; common practice, no source',
    },
    stuckOpen: {
      title: 'share of the flow that the sticking compensator no longer holds',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a free spool',
    },
    freeBack: {
      type: 'switch',
      title: 'lets oil back freely through a check valve',
      default: false,
      why: 'plain ones regulate forward and are an orifice back',
    },
    ...freeBackParameters,
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet', volume: 3e-6 },
    outlet: { title: 'outlet', volume: 3e-6 },
  },
  flows: { ...through, back: freeBack },
  tailor: (p) => without({ flows: through }, p.freeBack !== true),
  check: (p) =>
    mustExceed(
      p,
      'freeFull',
      'freeCrack',
      'must be above the drop at which the way back begins to open',
    ),
  prepare: (p, s) => {
    const knee = KNEE * number(p, 'least');
    const constant = number(p, 'flow') / Math.sqrt(knee);
    const coefficient = number(p, 'dischargeCoefficient');
    // The metering orifice that gives this flow, for where it turns laminar.
    const area = constant / (coefficient * Math.sqrt(2 / s.density));
    const k = new Float64Array(4);
    k[CONSTANT] = constant;
    k[TRANSITION] = transitionOf(p, s, Math.sqrt((4 * area) / Math.PI));
    k[PER_KNEE] = 1 / knee;
    k[STUCK] = number(p, 'stuckOpen');
    return k;
  },
  equations: (d) => {
    const k = d.k;
    const dp = d.pressure(INLET) - d.pressure(OUTLET);
    const plain = orificeFlow(k[CONSTANT], dp, k[TRANSITION]);
    const plainSlope = orificeSlope(k[CONSTANT], dp, k[TRANSITION]);
    if (dp <= 0) {
      d.flow(0, plain, plainSlope, -plainSlope);
      return;
    }
    const r = dp * k[PER_KNEE];
    const sum = 1 + r * r * r * r;
    const held = 1 / Math.sqrt(Math.sqrt(Math.sqrt(sum)));
    const share = k[STUCK] + (1 - k[STUCK]) * held;
    const shareSlope = (-0.5 * (1 - k[STUCK]) * held * r * r * r * k[PER_KNEE]) / sum;
    const slope = share * plainSlope + shareSlope * plain;
    d.flow(0, share * plain, slope, -slope);
  },
  symbol: { name: 'flow-regulator', size: [6, 6], ports: { inlet: [-3, 0], outlet: [3, 0] } },
};
