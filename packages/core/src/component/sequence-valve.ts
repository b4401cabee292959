/**
 * Sequence valve, plunger operated: the mechanism it serves pushes its plunger near one end of
 * the travel and so lifts a ball or poppet off its seat; area rises smoothly (C1) from the end
 * of the lap to full stroke. Return flow passes freely through its own check valve.
 *
 * Depression = travel - trip (sense high) or trip - travel (sense low), less the rigging
 * offset: a positive offset makes it trip late, a negative one early.
 *
 * Its plunger pushes back: its spring, and the pressure at its inlet on the plunger's area. Where
 * the mechanism cannot give that force it stops at the plunger. (The oil that the plunger
 * displaces, some hundredths of a cm3, is left out.)
 */
import type { DeviceDefinition, GuardFrame, Parameters } from '../define/index.js';
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
import { openingModes } from './shared/opening.js';
import { rise, riseSlope } from './shared/smooth.js';
import { without } from './shared/without.js';

const SENSE = 0;
const TOUCH = 1;
const LAP = 2;
const PER_LIFT = 3;
const STICK = 4;
const FREE = 5;
const PER_CONTACT = 6;
const SPRING = 7;
const AREA = 8;
const AMBIENT = 9;

const THROUGH = 0;
const PUSH = 0;

/** Share of the stroke over which the plunger takes up its load when it is touched. */
const CONTACT = 0.1;

/** Way back before the log says so, as a share of the lift, so that a mechanism at rest just there does not chatter. */
const SLACK = 0.01;

/** Depression is sense times travel less touch. */
function touching(p: Parameters): { readonly sense: number; readonly touch: number } {
  const sense = p.sense === 'low' ? -1 : 1;
  return { sense, touch: sense * number(p, 'trip') + number(p, 'rigging') };
}

/** How far the plunger of a sequence valve is pushed where its link has travelled so far, m; below 0 it is free. */
export function plungerDepression(p: Parameters, travel: number): number {
  const { sense, touch } = touching(p);
  return sense * travel - touch;
}

/** Depression of the plunger, m. */
const depression = (d: GuardFrame): number => d.k[SENSE] * d.travel(0) - d.k[TOUCH];

/** Lift of the poppet as a share of full lift, unlimited. */
const lift = (d: GuardFrame): number => (depression(d) - d.k[LAP]) * d.k[PER_LIFT];

export const sequenceValve: DeviceDefinition = {
  kind: 'sequence-valve',
  title: 'Plunger-operated sequence valve',
  summary:
    'Lets oil on to the next actuator only when the mechanism before it has pushed its plunger.',
  source:
    'orifice and quasi-static poppet: Merritt, Hydraulic Control Systems (from memory); mechanical sequence valve: US Army course AL0926, figure 2-14',
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
    stuckShut: {
      title: 'share of the rest that sticks shut however far the plunger is pushed',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a free poppet',
    },
    plungerForce: {
      title: 'force of the spring on the pushed plunger',
      quantity: 'force',
      range: [0, 5000],
      default: 0,
      why: 'some tens of newtons, which the mechanism does not feel; measured where leverage is short',
    },
    plungerArea: {
      title: 'area on which inlet pressure pushes the plunger out',
      quantity: 'area',
      range: [0, 1e-3],
      default: 0,
      why: 'none for a balanced plunger; a stem of 6 mm has 28 mm2, 200 N at 1000 psi',
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
    freeStuckShut: {
      title: 'share of the free return that sticks shut',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a free check',
    },
    air: {
      title: 'air trapped beyond the valve, at ambient pressure',
      quantity: 'volume',
      range: [0, 1e-3],
      default: 0,
      why: 'none once bled',
    },
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet', volume: 3e-6 },
    outlet: { title: 'outlet', volume: 3e-6, pocket: (p) => number(p, 'air') },
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
        check: checkOf(p, s, number(p, 'freeBore'), 1, 'freeStuckShut'),
      }),
    },
  },
  forces: { push: { link: 'plunger', also: ['plunger', 'inlet'] } },
  tailor: (p) =>
    without({ forces: {} }, number(p, 'plungerForce') === 0 && number(p, 'plungerArea') === 0),
  modes: openingModes(lift, SLACK, ['plunger'], {
    lifts: 'the plunger lifts the valve off its seat',
    full: 'the plunger is fully pushed',
    seats: 'the plunger lets the valve seat',
    back: 'the plunger comes back',
  }),
  check: (p) => [
    ...mustExceed(p, 'stroke', 'lap', 'must be above the depression at which it begins to open'),
    ...mustExceed(
      p,
      'full',
      'crack',
      'must be above the drop at which the free return begins to open',
    ),
  ],
  prepare: (p, s) => {
    const k = new Float64Array(10);
    const { sense, touch } = touching(p);
    k[SENSE] = sense;
    k[TOUCH] = touch;
    k[LAP] = number(p, 'lap');
    k[PER_LIFT] = 1 / (number(p, 'stroke') - number(p, 'lap'));
    k[STICK] = number(p, 'stick');
    k[FREE] = (1 - number(p, 'stick')) * (1 - number(p, 'stuckShut'));
    k[PER_CONTACT] = 1 / (CONTACT * number(p, 'stroke'));
    k[SPRING] = number(p, 'plungerForce');
    k[AREA] = number(p, 'plungerArea');
    k[AMBIENT] = s.ambient;
    return k;
  },
  energy: (d) => {
    // The spring's: its force rises over the contact (integral of `rise`), then stays.
    const x = Math.max(0, depression(d) * d.k[PER_CONTACT]);
    const over = x < 1 ? x * x * x * (1 - 0.5 * x) : x - 0.5;
    return (d.k[SPRING] * over) / d.k[PER_CONTACT];
  },
  equations: (d) => {
    const k = d.k;
    const x = lift(d);
    d.opening(THROUGH, k[STICK] + k[FREE] * rise(x));
    d.openingSlope(THROUGH, k[FREE] * riseSlope(x) * k[PER_LIFT] * k[SENSE]);
    // Else the force is not there, see tailor.
    if (k[SPRING] === 0 && k[AREA] === 0) return;
    const touched = depression(d) * k[PER_CONTACT];
    const load = k[SPRING] + k[AREA] * (d.pressure(0) - k[AMBIENT]);
    d.force(PUSH, -k[SENSE] * load * rise(touched));
    d.forceAlso(PUSH, 0, -load * riseSlope(touched) * k[PER_CONTACT]);
    d.forceAlso(PUSH, 1, -k[SENSE] * k[AREA] * rise(touched));
  },
  symbol: { name: 'sequence-valve', size: [8, 4], ports: { inlet: [-1, -2], outlet: [-1, 2] } },
};
