/**
 * A spool or poppet that inlet pressure lifts against its spring, whatever the outlet does: shut
 * up to the crack setting, fully open from the full setting on, between them opening smoothly
 * (C1). Its spring chamber is drained, so that the setting counts from the pressure there. Part
 * of it may stick open or shut; beside it a laminar leak.
 *
 * Quasi-static balance of pressure and spring (Merritt, Hydraulic Control Systems; from memory).
 */
import type {
  DeviceDefinition,
  Frame,
  GuardFrame,
  ParameterDefinitions,
  Parameters,
  Surroundings,
} from '../../define/index.js';
import { orificeFlow, orificeSlope } from '../../medium/index.js';
import {
  bore,
  constantOf,
  dischargeCoefficient,
  leakage,
  leakIn,
  mustExceed,
  number,
  transitionOf,
  transitionReynolds,
} from './parameters.js';
import { rise, riseSlope } from './smooth.js';

const CRACK = 0;
const PER_LIFT = 1;
const CONSTANT = 2;
const TRANSITION = 3;
const LEAK = 4;
const STICK = 5;
const FREE = 6;

/** Numbers it needs in `k`, from the first. */
export const LIFT_SIZE = 7;

/** Share of the lift by which pressure must fall before the log says so. */
export const LIFT_SLACK = 0.05;

/** Parameters of the valve; `own` come last but for those of its orifice. */
export function liftParameters(own: ParameterDefinitions): ParameterDefinitions {
  return {
    crack: {
      title: 'pressure at which it begins to open',
      quantity: 'gauge-pressure',
      range: [5e4, 4e7],
      why: 'no default: above what the unit served first needs',
    },
    full: {
      title: 'pressure at which it is fully open',
      quantity: 'gauge-pressure',
      range: [6e4, 5e7],
      why: 'no default: 10 to 20 % above crack, below the relief setting; common practice, no source',
    },
    bore: bore(
      'bore when fully open',
      0.005,
      'a little below the bore of its line; common practice, no source',
    ),
    leak: leakage(
      'leak when shut',
      1e-9,
      1e-15,
      'a sound seat passes drops an hour; common practice, no source',
    ),
    stick: {
      title: 'share of the full area held open',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a clean seat',
    },
    stuckShut: {
      title: 'share of the rest that sticks shut',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a free spool',
    },
    ...own,
    dischargeCoefficient,
    transitionReynolds,
  };
}

export const liftCheck: NonNullable<DeviceDefinition['check']> = (p) =>
  mustExceed(p, 'full', 'crack', 'must be above the pressure at which the valve begins to open');

export function writeLift(k: Float64Array, p: Parameters, s: Surroundings): void {
  k[CRACK] = number(p, 'crack');
  k[PER_LIFT] = 1 / (number(p, 'full') - number(p, 'crack'));
  k[CONSTANT] = constantOf(p, s, number(p, 'bore'));
  k[TRANSITION] = transitionOf(p, s, number(p, 'bore'));
  k[LEAK] = leakIn(s, number(p, 'leak'));
  k[STICK] = number(p, 'stick');
  k[FREE] = (1 - number(p, 'stick')) * (1 - number(p, 'stuckShut'));
}

/** Lift as a share of full lift, unlimited: inlet is port 0, the spring chamber port `chamber`. */
export const liftOf = (chamber: number) => (d: GuardFrame) =>
  (d.pressure(0) - d.pressure(chamber) - d.k[CRACK]) * d.k[PER_LIFT];

/** Declares flow `path` from port 0 to port `to`; `also[0]` of the path is the spring chamber. */
export function liftFlow(d: Frame, path: number, to: number, chamber: number): void {
  const k = d.k;
  const x = (d.pressure(0) - d.pressure(chamber) - k[CRACK]) * k[PER_LIFT];
  const dp = d.pressure(0) - d.pressure(to);
  const open = k[STICK] + k[FREE] * rise(x);
  const through = orificeFlow(k[CONSTANT], dp, k[TRANSITION]);
  const slope = open * orificeSlope(k[CONSTANT], dp, k[TRANSITION]) + k[LEAK];
  const byLift = k[FREE] * riseSlope(x) * k[PER_LIFT] * through;
  d.flow(path, open * through + k[LEAK] * dp, slope + byLift, -slope);
  d.flowAlso(path, 0, -byLift);
}
