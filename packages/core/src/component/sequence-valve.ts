/**
 * Sequence valve, plunger operated: the mechanism it serves pushes its plunger near one end of
 * the travel and so lifts a ball or poppet off its seat; area rises smoothly (C1) from the end
 * of the lap to full stroke. Return flow passes freely through its own check valve.
 *
 * Depression = travel - trip (sense high) or trip - travel (sense low), less the rigging
 * offset: a positive offset makes it trip late, a negative one early.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import {
  bore,
  boreLaw,
  checkOf,
  dischargeCoefficient,
  leakage,
  leakIn,
  mustExceed,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const SENSE = 0;
const TOUCH = 1;
const LAP = 2;
const PER_LIFT = 3;
const STICK = 4;

const THROUGH = 0;

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
    through: {
      from: 'inlet',
      to: 'outlet',
      also: ['plunger'],
      title: 'flow',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: 0,
        leak: leakIn(s, number(p, 'leak')),
      }),
    },
    back: {
      from: 'outlet',
      to: 'inlet',
      title: 'free return flow',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'freeBore')),
        open: 0,
        check: checkOf(p, s, number(p, 'freeBore'), 1),
      }),
    },
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
    ...mustExceed(p, 'stroke', 'lap', 'must be above the depression at which it begins to open'),
    ...mustExceed(
      p,
      'full',
      'crack',
      'must be above the drop at which the free return begins to open',
    ),
  ],
  prepare: (p) => {
    const k = new Float64Array(5);
    const sense = p.sense === 'low' ? -1 : 1;
    k[SENSE] = sense;
    k[TOUCH] = sense * number(p, 'trip') + number(p, 'rigging');
    k[LAP] = number(p, 'lap');
    k[PER_LIFT] = 1 / (number(p, 'stroke') - number(p, 'lap'));
    k[STICK] = number(p, 'stick');
    return k;
  },
  equations: (d) => {
    const x = lift(d);
    const free = 1 - d.k[STICK];
    d.opening(THROUGH, d.k[STICK] + free * rise(x));
    d.openingSlope(THROUGH, free * riseSlope(x) * d.k[PER_LIFT] * d.k[SENSE]);
  },
  symbol: { name: 'sequence-valve', size: [8, 4], ports: { inlet: [-1, -2], outlet: [-1, 2] } },
};
