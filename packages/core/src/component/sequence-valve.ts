/**
 * Sequence valve, plunger operated: the mechanism it serves pushes its plunger near one end of
 * the travel and so lifts a ball or poppet off its seat; area rises smoothly (C1) from the end
 * of the lap to full stroke. Return flow passes freely through its own check valve.
 *
 * Depression = travel - trip (sense high) or trip - travel (sense low), less the rigging
 * offset: a positive offset makes it trip late, a negative one early.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import { orificeFlow, orificeSlope } from '../medium/index.js';
import {
  bore,
  constantOf,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionOf,
  transitionReynolds,
} from './shared/parameters.js';
import { poppetFlow, POPPET_SIZE, writePoppet } from './shared/poppet.js';
import { rise, riseSlope } from './shared/smooth.js';

const BACK = 0;
const CONSTANT = POPPET_SIZE;
const TRANSITION = POPPET_SIZE + 1;
const LEAK = POPPET_SIZE + 2;
const SENSE = POPPET_SIZE + 3;
const TOUCH = POPPET_SIZE + 4;
const LAP = POPPET_SIZE + 5;
const PER_LIFT = POPPET_SIZE + 6;
const STICK = POPPET_SIZE + 7;

/** Way back before the log says so, as a share of the lift, so that a mechanism at rest just there does not chatter. */
const SLACK = 0.01;

/** Lift of the poppet as a share of full lift, unlimited. */
const lift = (d: GuardFrame): number =>
  (d.k[SENSE] * d.travel(0) - d.k[TOUCH] - d.k[LAP]) * d.k[PER_LIFT];

export const sequenceValve: DeviceDefinition = {
  kind: 'sequence-valve',
  title: 'Plunger-operated sequence valve',
  summary:
    'Lets oil on to the next actuator only when the mechanism before it has pushed its plunger.',
  source:
    'orifice and quasi-static poppet: Merritt, Hydraulic Control Systems (from memory); mechanical sequence valve as in military maintenance training texts',
  role: 'sequence-valve',
  parameters: {
    bore: bore(
      'bore when fully open',
      0.004,
      'a little below the bore of its line; common practice, no source',
    ),
    sense: {
      type: 'choice',
      title: 'end of the travel at which the plunger is pushed',
      choices: ['high', 'low'],
      default: 'high',
      why: 'high: leg up or door open, as their mechanisms count',
    },
    trip: {
      title: 'travel at which the plunger is first touched',
      quantity: 'length',
      range: [-1, 3],
      why: "no default: set from the link's travel at the end it works at",
    },
    rigging: {
      title: 'rigging offset, positive trips late',
      quantity: 'length',
      range: [-0.1, 0.1],
      default: 0,
      why: 'rigged right',
    },
    lap: {
      title: 'depression at which it begins to open',
      quantity: 'length',
      range: [0, 0.02],
      default: 0.001,
      why: 'plunger clearance and seat lap; common practice, no source',
    },
    stroke: {
      title: 'depression at which it is fully open',
      quantity: 'length',
      range: [2e-4, 0.05],
      default: 0.004,
      why: 'a few millimetres of plunger; common practice, no source',
    },
    stick: {
      title: 'share of the full area held open by a sticking plunger',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a free plunger',
    },
    leak: leakage(
      'leak when shut',
      1e-9,
      1e-15,
      'a sound ball seat passes drops an hour; common practice, no source',
    ),
    freeBore: bore(
      'bore of the free return',
      0.004,
      'as the forward bore; common practice, no source',
    ),
    crack: {
      title: 'drop at which the free return begins to open',
      quantity: 'gauge-pressure',
      range: [0, 1e6],
      default: 20_000,
      why: 'a light spring, about 3 psi; common practice, no source',
    },
    full: {
      title: 'drop at which the free return is fully open',
      quantity: 'gauge-pressure',
      range: [2000, 2e6],
      default: 200_000,
      why: 'a few times the crack drop; common practice, no source',
    },
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet', volume: 3e-6 },
    outlet: { title: 'outlet', volume: 3e-6 },
  },
  links: { plunger: { title: 'plunger', shape: 'travel' } },
  flows: {
    through: { from: 'inlet', to: 'outlet', also: ['plunger'], title: 'flow' },
    back: { from: 'outlet', to: 'inlet', title: 'free return flow' },
  },
  modes: {
    closed: {
      title: 'closed',
      guards: [
        {
          to: 'opening',
          when: lift,
          cause: 'the plunger lifts the valve off its seat',
          reads: ['plunger'],
        },
      ],
    },
    opening: {
      title: 'partly open',
      active: true,
      guards: [
        {
          to: 'open',
          when: (d) => lift(d) - 1,
          cause: 'the plunger is fully pushed',
          reads: ['plunger'],
        },
        {
          to: 'closed',
          when: (d) => -SLACK - lift(d),
          cause: 'the plunger lets the valve seat',
          reads: ['plunger'],
        },
      ],
    },
    open: {
      title: 'open',
      active: true,
      guards: [
        {
          to: 'opening',
          when: (d) => 1 - SLACK - lift(d),
          cause: 'the plunger comes back',
          reads: ['plunger'],
        },
      ],
    },
  },
  check: (p) => [
    ...(number(p, 'stroke') > number(p, 'lap')
      ? []
      : [
          {
            parameter: 'stroke',
            message: 'must be above the depression at which it begins to open',
          },
        ]),
    ...(number(p, 'full') > number(p, 'crack')
      ? []
      : [
          {
            parameter: 'full',
            message: 'must be above the drop at which the free return begins to open',
          },
        ]),
  ],
  prepare: (p, s) => {
    const k = new Float64Array(POPPET_SIZE + 8);
    const free = number(p, 'freeBore');
    const main = number(p, 'bore');
    const sense = p.sense === 'low' ? -1 : 1;
    writePoppet(
      k,
      BACK,
      number(p, 'crack'),
      number(p, 'full'),
      constantOf(p, s, free),
      transitionOf(p, s, free),
      0,
    );
    k[CONSTANT] = constantOf(p, s, main);
    k[TRANSITION] = transitionOf(p, s, main);
    k[LEAK] = leakIn(s, number(p, 'leak'));
    k[SENSE] = sense;
    k[TOUCH] = sense * number(p, 'trip') + number(p, 'rigging');
    k[LAP] = number(p, 'lap');
    k[PER_LIFT] = 1 / (number(p, 'stroke') - number(p, 'lap'));
    k[STICK] = number(p, 'stick');
    return k;
  },
  equations: (d) => {
    const k = d.k;
    const dp = d.pressure(0) - d.pressure(1);
    const x = lift(d);
    const open = k[STICK] + (1 - k[STICK]) * rise(x);
    if (open === 0) {
      d.flow(0, k[LEAK] * dp, k[LEAK], -k[LEAK]);
      d.flowAlso(0, 0, 0);
    } else {
      const full = orificeFlow(k[CONSTANT], dp, k[TRANSITION]);
      const slope = open * orificeSlope(k[CONSTANT], dp, k[TRANSITION]) + k[LEAK];
      d.flow(0, open * full + k[LEAK] * dp, slope, -slope);
      d.flowAlso(0, 0, (1 - k[STICK]) * riseSlope(x) * k[PER_LIFT] * k[SENSE] * full);
    }
    poppetFlow(d, 1, BACK, -dp);
  },
  symbol: { name: 'sequence-valve', size: [8, 4], ports: { inlet: [-1, -2], outlet: [-1, 2] } },
};
