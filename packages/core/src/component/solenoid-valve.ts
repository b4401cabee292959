/**
 * Solenoid valve, two ways and two positions, poppet type: shut or open at rest, shifted by its
 * coil, returned by its spring. The armature travels at a constant rate (rise and fall times) and
 * turns back at once when the coil changes on the way; the area opens smoothly (C1) with it. The
 * magnet pulls only against a limited pressure drop, which falls with its voltage
 * (shared/solenoid): once pulled it holds.
 *
 * Armature: 0 at rest, 1 pulled.
 */
import type { DeviceDefinition, GuardFrame, ModeDefinition } from '../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';
import { coilInput, shiftStep, solenoidParameters, spareForce } from './shared/solenoid.js';

const RISE = 0;
const FALL = 1;
/** Largest drop against which it pulls, Pa. */
const LIMIT = 2;
/** Opening at rest, and what the armature adds to it from rest to pulled. */
const AT_REST = 3;
const ADDS = 4;

/** A drop below any there is, Pa: a magnet too weak for its spring is not helped by pressure either. */
const NEVER = -1e12;

const ARMATURE = 0;
const PULLING = 1;
const DROPPING = 3;

/** Where it does not move (stuck), nothing is added. */
const moves = (d: GuardFrame): boolean => d.k[ADDS] !== 0;
const energised = (d: GuardFrame): boolean => d.input(0) > 0.5;
/** Above zero when an armature at rest pulls. */
const pulls = (d: GuardFrame): number =>
  energised(d) ? d.k[LIMIT] - (d.pressure(0) - d.pressure(1)) : -1;

/** A position at an end: that of the armature at rest or that of the pulled one, as `at-rest` says. */
function settled(title: string, addsWhenPulled: number): ModeDefinition {
  // Adds opening when pulled and this is open, or takes it away and this is closed: it is pulled here.
  const pulledHere = (d: GuardFrame): boolean => d.k[ADDS] === addsWhenPulled;
  return {
    title,
    active: addsWhenPulled > 0,
    enter: (d, states) => {
      states[ARMATURE] = pulledHere(d) ? 1 : 0;
    },
    guards: [
      {
        to: 'pulling',
        when: (d) => (moves(d) && !pulledHere(d) ? pulls(d) : -1),
        cause: 'the coil is energised',
        reads: ['coil'],
      },
      {
        to: 'dropping',
        when: (d) => (moves(d) && pulledHere(d) && !energised(d) ? 1 : -1),
        cause: 'the coil is switched off',
        reads: ['coil'],
      },
    ],
  };
}

export const solenoidValve: DeviceDefinition = {
  kind: 'solenoid-valve',
  title: 'Solenoid valve',
  summary: 'Opens or shuts one way by wire, with rise and fall times; two ways, two positions.',
  source:
    'turbulent orifice: Merritt, Hydraulic Control Systems (from memory); magnet force with the square of the current: any text on magnetic circuits (from memory)',
  role: 'other',
  parameters: {
    bore: bore(
      'bore when open',
      0.004,
      'a little below the bore of its line; common practice, no source',
    ),
    atRest: {
      type: 'choice',
      title: 'position without current',
      choices: ['closed', 'open'],
      default: 'closed',
      why: 'normally closed: nothing flows when the current fails',
    },
    ...solenoidParameters,
    maxDrop: {
      title: 'pressure drop against which it pulls at nominal voltage',
      quantity: 'gauge-pressure',
      range: [1e5, 6e7],
      default: 2.1e7,
      why: 'about 3000 psi, above the relief setting of a light system; common practice, no source',
    },
    stuck: {
      type: 'choice',
      title: 'stuck at',
      choices: ['none', 'closed', 'open'],
      default: 'none',
      why: 'a free armature',
    },
    leak: leakage(
      'leak when shut',
      1e-9,
      1e-15,
      'a sound seat passes drops an hour; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet', volume: 3e-6 },
    outlet: { title: 'outlet', volume: 3e-6 },
  },
  states: { armature: { title: 'armature (1 pulled)', unit: '', scale: 1, initial: 0 } },
  inputs: { coil: coilInput('coil') },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      also: ['armature'],
      title: 'flow',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: 0,
        leak: leakIn(s, number(p, 'leak')),
      }),
    },
  },
  modes: {
    closed: settled('closed', -1),
    pulling: {
      title: 'pulling',
      active: true,
      longestStep: (d) => shiftStep(1 / d.k[RISE]),
      guards: [
        {
          to: 'open',
          when: (d) => (d.k[ADDS] > 0 ? d.state(ARMATURE) - 1 : -1),
          cause: 'the armature is home',
        },
        {
          to: 'closed',
          when: (d) => (d.k[ADDS] < 0 ? d.state(ARMATURE) - 1 : -1),
          cause: 'the armature is home',
        },
        {
          to: 'dropping',
          when: (d) => (energised(d) ? -1 : 1),
          cause: 'the coil is switched off',
          reads: ['coil'],
        },
      ],
    },
    open: settled('open', 1),
    dropping: {
      title: 'dropping',
      active: true,
      longestStep: (d) => shiftStep(1 / d.k[FALL]),
      guards: [
        {
          to: 'closed',
          when: (d) => (d.k[ADDS] > 0 ? -d.state(ARMATURE) : -1),
          cause: 'the spring has returned it',
        },
        {
          to: 'open',
          when: (d) => (d.k[ADDS] < 0 ? -d.state(ARMATURE) : -1),
          cause: 'the spring has returned it',
        },
        { to: 'pulling', when: pulls, cause: 'the coil is energised', reads: ['coil'] },
      ],
    },
  },
  initialMode: (p) => (p.stuck === 'none' ? p.atRest : p.stuck) as string,
  prepare: (p) => {
    const k = new Float64Array(5);
    k[RISE] = 1 / number(p, 'riseTime');
    k[FALL] = 1 / number(p, 'fallTime');
    const spare = spareForce(p);
    k[LIMIT] = spare > 0 ? number(p, 'maxDrop') * spare : NEVER;
    k[AT_REST] = (p.stuck === 'none' ? p.atRest : p.stuck) === 'open' ? 1 : 0;
    k[ADDS] = p.stuck === 'none' ? 1 - 2 * k[AT_REST] : 0;
    return k;
  },
  equations: (d) => {
    const x = d.state(ARMATURE);
    d.opening(0, d.k[AT_REST] + d.k[ADDS] * rise(x));
    d.openingSlope(0, d.k[ADDS] * riseSlope(x));
    d.rate(ARMATURE, d.mode === PULLING ? d.k[RISE] : d.mode === DROPPING ? -d.k[FALL] : 0);
  },
  symbol: { name: 'solenoid-valve', size: [8, 4], ports: { inlet: [-1, -2], outlet: [-1, 2] } },
};
