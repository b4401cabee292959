/**
 * A leg that comes down on its own door: where the door hangs, is not opened, or is opened late, the
 * tyre pushes it open, and the door's load comes on the leg. With the leg still `meets` from down the
 * tyre touches the closed door; from there on the door must be open by at least
 *   ratio x (meets - leg)
 * The contact is a spring against what is missing, with damping, so no energy is lost but by that.
 *
 * Source: penalty method for unilateral contact (Brogliato, Nonsmooth Mechanics, from memory).
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import { push, pushEnergy, pushSlope } from './shared/onset.js';
import { number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const MEETS = 0;
const RATIO = 1;
const STIFFNESS = 2;
const DAMPING = 3;
const ONSET = 4;

const LEG = 0;
const DOOR = 1;

/** Share of the onset by which they must have met, and come apart again, for the log. */
const TOUCH = 0.2;
const CLEAR = 1;

/** What is missing of the door's opening, rad; below zero: clearance. */
const missing = (d: GuardFrame): number =>
  d.k[RATIO] * (d.k[MEETS] - d.travel(LEG)) - d.travel(DOOR);
const closing = (d: GuardFrame): number => -d.k[RATIO] * d.travelRate(LEG) - d.travelRate(DOOR);

const also = ['leg', 'door', 'leg.rate', 'door.rate'];

export const legOnDoor: DeviceDefinition = {
  kind: 'leg-on-door',
  title: 'Leg on its door',
  summary: 'The tyre pushes a door that hangs, or was not opened, out of its way.',
  source: 'contact as a stiff spring (penalty method), common practice, no source',
  role: 'other',
  parameters: {
    meets: {
      title: 'angle of the leg at which its tyre touches the closed door',
      quantity: 'angle',
      range: [0.01, 3],
      why: 'no default: measured on the aircraft, or from its drawing',
    },
    ratio: {
      title: 'angle by which the door must be open per angle of the leg',
      quantity: 'ratio',
      range: [0.1, 10],
      default: 1.5,
      why: 'arm of the tyre about the leg over that about the hinge; common practice, no source',
    },
    stiffness: {
      title: 'stiffness of tyre and door where they meet, at the hinge',
      quantity: 'angular-stiffness',
      range: [10, 1e6],
      default: 3000,
      why: 'a tyre gives some centimetres: 3 kN at half a metre on half a radian; common practice, no source',
    },
    damping: {
      title: 'damping there',
      quantity: 'angular-damping',
      range: [0, 10_000],
      default: 60,
      why: 'rubber: a third of critical with a door of 3 kg m2; common practice, no source',
    },
    onset: {
      title: 'angle over which the contact becomes firm',
      quantity: 'angle',
      range: [1e-4, 0.1],
      default: 0.01,
      why: 'round tyre on a flat panel; common practice, no source',
    },
  },
  ports: {},
  links: {
    leg: { title: 'leg', shape: 'plain' },
    door: { title: 'door', shape: 'plain' },
  },
  forces: { onLeg: { link: 'leg', also }, onDoor: { link: 'door', also } },
  energy: (d) => d.k[STIFFNESS] * pushEnergy(missing(d), d.k[ONSET]),
  dissipation: (d) => {
    const rate = closing(d);
    return d.k[DAMPING] * rise(missing(d) / d.k[ONSET]) * rate * rate;
  },
  readings: {
    press: {
      title: 'moment of the tyre on the door',
      quantity: 'moment',
      value: (d) => d.k[STIFFNESS] * push(missing(d), d.k[ONSET]),
    },
  },
  modes: {
    clear: {
      title: 'clear of each other',
      guards: [
        {
          to: 'pushing',
          when: (d) => missing(d) / d.k[ONSET] - TOUCH,
          cause: 'the tyre has met the door',
          reads: ['leg', 'door'],
        },
      ],
    },
    pushing: {
      title: 'tyre on the door',
      active: true,
      guards: [
        {
          to: 'clear',
          when: (d) => -missing(d) / d.k[ONSET] - CLEAR,
          cause: 'the door is out of the way',
          reads: ['leg', 'door'],
        },
      ],
    },
  },
  prepare: (p) =>
    Float64Array.of(
      number(p, 'meets'),
      number(p, 'ratio'),
      number(p, 'stiffness'),
      number(p, 'damping'),
      number(p, 'onset'),
    ),
  equations: (d) => {
    const k = d.k;
    const w = k[ONSET];
    const x = missing(d);
    const grip = x > 0 ? k[DAMPING] * rise(x / w) : 0;
    const rate = closing(d);
    const press = x > 0 ? k[STIFFNESS] * push(x, w) + grip * rate : 0;
    const r = k[RATIO];
    d.force(LEG, r * press);
    d.force(DOOR, press);
    if (!d.partials) return;
    const bend =
      x > 0 ? k[STIFFNESS] * pushSlope(x, w) + (k[DAMPING] * riseSlope(x / w) * rate) / w : 0;
    // Missing falls by ratio with the leg's angle and by one with the door's.
    d.forceAlso(LEG, 0, -r * r * bend);
    d.forceAlso(LEG, 1, -r * bend);
    d.forceAlso(LEG, 2, -r * r * grip);
    d.forceAlso(LEG, 3, -r * grip);
    d.forceAlso(DOOR, 0, -r * bend);
    d.forceAlso(DOOR, 1, -bend);
    d.forceAlso(DOOR, 2, -r * grip);
    d.forceAlso(DOOR, 3, -grip);
  },
  symbol: { name: 'linkage', size: [4, 4], ports: {} },
};
