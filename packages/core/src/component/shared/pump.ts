/**
 * What pumps driven by a turning shaft share: displacement, internal slip, a coupling that may
 * slip or shear, a joint that weeps under pressure, and a suction side that draws air or is blocked.
 */
import type {
  FlowDefinition,
  ParameterDefinitions,
  Parameters,
  Surroundings,
} from '../../define/index.js';
import { leakage, leakIn, number } from './parameters.js';
import { AIR_PARAMETER, airConstant, BLOCKED_PARAMETER, blockedConstant } from './suction.js';

/** Places of {@link pumpConstants} in `k`. */
export const DISPLACEMENT = 0;
export const SLIP = 1;
export const AIR = 2;
export const BLOCKED = 3;
export const PUMP_SIZE = 4;

export const pumpParameters: ParameterDefinitions = {
  displacement: {
    title: 'displacement',
    quantity: 'displacement',
    range: [1e-8, 1e-4],
    why: "no default: the pump's rating; 1 cm^3 a turn is 1.59e-7 m^3/rad",
  },
  speed: {
    title: 'speed at the start',
    quantity: 'angular-speed',
    range: [0, 1000],
    default: 0,
    why: 'engine at rest, as in a retraction test on jacks; the card may change it',
  },
  efficiency: {
    title: 'volumetric efficiency at its rating',
    quantity: 'ratio',
    range: [0.05, 1],
    default: 0.93,
    why: 'gear pumps in good order: 0.9 to 0.95; common practice, no source',
  },
  ratedSpeed: {
    title: 'speed of the rating',
    quantity: 'angular-speed',
    range: [10, 1000],
    default: 251,
    why: '2400 rev/min, an engine accessory drive; common practice, no source',
  },
  ratedPressure: {
    title: 'pressure of the rating',
    quantity: 'gauge-pressure',
    range: [5e5, 4e7],
    default: 6.9e6,
    why: '1000 psi, the usual working pressure of light systems; common practice, no source',
  },
  viscosity: {
    title: 'viscosity of the rating',
    quantity: 'viscosity',
    range: [2e-6, 1e-4],
    default: 14e-6,
    why: 'red mineral oil at 40 C',
  },
  drive: {
    title: "share of the shaft's speed that reaches the pump",
    quantity: 'ratio',
    range: [0, 1],
    default: 1,
    why: 'a sound coupling; 0 is a sheared shaft',
  },
  suctionAir: AIR_PARAMETER,
  suctionBlocked: BLOCKED_PARAMETER,
  jointLeak: leakage('leak of the outlet joint to the outside', 1e-9, 0, 'a tight joint'),
};

/** The leak of the outlet joint, for pumps with the ports `outlet` and `outside`. */
export const jointWeep: FlowDefinition = {
  from: 'outlet',
  to: 'outside',
  title: 'leak at the joint',
  law: (p, s) => ({ constant: 0, transition: 1, open: 0, leak: leakIn(s, number(p, 'jointLeak')) }),
};

/** Displacement that turns (m3/rad), slip in this oil (m3/(s Pa)), air drawn; into the first of `k`. */
export function writePump(k: Float64Array, p: Parameters, s: Surroundings): void {
  const displacement = number(p, 'displacement');
  const lost = (1 - number(p, 'efficiency')) * displacement * number(p, 'ratedSpeed');
  k[DISPLACEMENT] = displacement * number(p, 'drive');
  k[SLIP] = ((lost / number(p, 'ratedPressure')) * number(p, 'viscosity')) / s.viscosity;
  k[AIR] = airConstant(p, s);
  k[BLOCKED] = blockedConstant(
    p,
    s,
    displacement * number(p, 'ratedSpeed'),
    number(p, 'viscosity'),
  );
}
