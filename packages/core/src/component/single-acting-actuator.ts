/**
 * Single-acting actuator (jack) with spring return: oil pushes one way, a spring the other, the far
 * side of the piston breathes through a vent,
 *
 *   F = (p - p_ambient) A - (F0 + c x)    x from the end where the spring is longest
 *
 * signed so that F grows the travel. With `pushes: retract` the oil stands in the rod end and the
 * spring extends. What passes the piston seal drips outside through the vent. Seal friction, galling
 * and stops of its own as in the double-acting actuator (shared/jack).
 */
import type { DeviceDefinition, GuardFrame, Parameters } from '../define/index.js';
import {
  headArea,
  jackFindings,
  jackFriction,
  jackSize,
  jackWear,
  rodArea,
  rub,
  RUB_SIZE,
  rubStep,
  stopEnergy,
  stopForce,
  stopStiffness,
  writeRub,
} from './shared/jack.js';
import { leakage, leakIn, number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const RUB = 0;
const AREA = RUB_SIZE;
const AMBIENT = RUB_SIZE + 1;
const RELAXED = RUB_SIZE + 2;
const RATE = RUB_SIZE + 3;
const WEEP = RUB_SIZE + 4;

const PORT = 0;
const OUTSIDE = 1;

/** A dry seal lets no air in: the weep begins smoothly over this pressure, Pa. */
const WEEP_BAND = 1e5;

const isPush = (p: Parameters): boolean => p.pushes === 'extend';
const area = (p: Parameters): number => (isPush(p) ? headArea(p) : rodArea(p));

/** Squeeze of the spring, m: from its relaxed length, which is beyond either end. */
const squeeze = (d: GuardFrame): number => d.travel(0) - d.k[RELAXED];

export const singleActingActuator: DeviceDefinition = {
  kind: 'single-acting-actuator',
  title: 'Single-acting actuator',
  summary: 'Jack that oil pushes one way and its spring returns: locks, small doors, brakes.',
  source:
    'piston force and leakage: Merritt, Hydraulic Control Systems (from memory); spring after Hooke',
  role: 'actuator',
  parameters: {
    pushes: {
      type: 'choice',
      title: 'which way oil pushes it',
      choices: ['extend', 'retract'],
      default: 'extend',
      why: 'oil at the head end is the simpler build; common practice, no source',
    },
    ...jackSize,
    deadVolume: {
      title: 'oil left in the chamber at its end',
      quantity: 'volume',
      range: [1e-7, 1e-3],
      default: 5e-6,
      why: 'port and clearance, a few cm3; common practice, no source',
    },
    preload: {
      title: 'spring force where the spring is longest',
      quantity: 'force',
      range: [0, 2e4],
      why: "no default: the spring's drawing; more than seals and load at that end, or it does not come home",
    },
    springRate: {
      title: 'spring rate',
      quantity: 'stiffness',
      range: [1, 1e6],
      why: "no default: the spring's drawing",
    },
    ...jackFriction,
    bypass: leakage(
      'leak past the piston to the vent',
      1e-9,
      0,
      'soft seals: nothing to measure; common practice, no source',
    ),
    ...jackWear,
    air: {
      title: 'air trapped in the chamber, at ambient pressure',
      quantity: 'volume',
      range: [0, 1e-3],
      default: 0,
      why: 'none once bled',
    },
  },
  ports: {
    port: {
      title: 'port',
      volume: (p) => number(p, 'deadVolume') + (isPush(p) ? 0 : rodArea(p) * number(p, 'stroke')),
      pocket: (p) => number(p, 'air'),
    },
    outside: { title: 'outside, for what drips from the vent', volume: 0, optional: true },
  },
  links: { rod: { title: 'rod', shape: 'travel' } },
  chambers: [{ port: 'port', link: 'rod', area: (p) => (isPush(p) ? area(p) : -area(p)) }],
  flows: { drip: { from: 'port', to: 'outside', title: 'leak past the piston' } },
  forces: { push: { link: 'rod', also: ['port', 'outside', 'rod'] } },
  modes: { working: { title: 'working', longestStep: (d) => rubStep(d, RUB) } },
  energy: (d) => 0.5 * d.k[RATE] * squeeze(d) ** 2 + stopEnergy(d, RUB),
  check: (p) => jackFindings(p),
  prepare: (p, s) => {
    const k = new Float64Array(RUB_SIZE + 5);
    const rate = number(p, 'springRate');
    const slack = number(p, 'preload') / rate;
    writeRub(k, RUB, p, area(p));
    k[AREA] = isPush(p) ? area(p) : -area(p);
    k[AMBIENT] = s.ambient;
    k[RELAXED] = isPush(p) ? -slack : number(p, 'stroke') + slack;
    k[RATE] = rate;
    k[WEEP] = leakIn(s, number(p, 'bypass'));
    return k;
  },
  equations: (d) => {
    const { k } = d;
    const over = d.pressure(PORT) - d.pressure(OUTSIDE);
    const wet = rise(over / WEEP_BAND);
    const slope = k[WEEP] * (wet + (over * riseSlope(over / WEEP_BAND)) / WEEP_BAND);
    d.flow(0, k[WEEP] * over * wet, slope, -slope);
    const oil = k[AREA] * (d.pressure(PORT) - k[AMBIENT]);
    d.force(0, oil - k[RATE] * (d.travel(0) - k[RELAXED]) + stopForce(d, RUB));
    d.forceAlso(0, 0, k[AREA]);
    rub(d, RUB, PORT, OUTSIDE, 2);
    d.forceAlso(0, 2, -k[RATE] - stopStiffness(d, RUB));
  },
  symbol: {
    name: 'single-acting-cylinder',
    size: [10, 4],
    ports: { port: [-4, -2], outside: [5, 0] },
  },
};
