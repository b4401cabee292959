/**
 * What check valves share, whatever goes through them: a spring-loaded poppet that opens from its
 * crack to its full drop and shuts against reverse flow but for a leak; no hysteresis. It may stick
 * open or shut in part.
 */
import type {
  DeviceDefinition,
  FlowDefinition,
  NumberParameter,
  ParameterDefinitions,
} from '../../define/index.js';
import {
  bore,
  boreLaw,
  checkOf,
  dischargeCoefficient,
  leakIn,
  mustExceed,
  number,
  transitionReynolds,
} from './parameters.js';

/** Its parameters, with the usual bore, m, and the leak of its kind of seat. */
export const checkParameters = (usual: number, leak: NumberParameter): ParameterDefinitions => ({
  bore: bore(
    'bore when open',
    usual,
    'about the bore of the line it sits in; common practice, no source',
  ),
  crack: {
    title: 'drop at which it begins to open',
    quantity: 'gauge-pressure',
    range: [0, 2e6],
    default: 20_000,
    why: 'light springs of 2 to 8 psi are usual; common practice, no source',
  },
  full: {
    title: 'drop at which it is fully open',
    quantity: 'gauge-pressure',
    range: [2000, 4e6],
    default: 150_000,
    why: 'five to ten times the crack drop: full lift at some 20 psi; common practice, no source',
  },
  leak,
  stick: {
    title: 'share of the full bore held open',
    quantity: 'ratio',
    range: [0, 1],
    default: 0,
    why: 'a clean seat; dirt under the poppet keeps it off',
  },
  stuckShut: {
    title: 'share of its opening that sticks shut',
    quantity: 'ratio',
    range: [0, 1],
    default: 0,
    why: 'a free poppet',
  },
  dischargeCoefficient,
  transitionReynolds,
});

/** The way through it, from inlet to outlet. */
export const checkFlow: FlowDefinition = {
  from: 'inlet',
  to: 'outlet',
  title: 'flow',
  law: (p, s) => ({
    ...boreLaw(p, s, number(p, 'bore')),
    open: number(p, 'stick'),
    leak: leakIn(s, number(p, 'leak')),
    check: { ...checkOf(p, s, number(p, 'bore'), 1, 'stuckShut'), fills: true },
  }),
};

export const checkFindings: NonNullable<DeviceDefinition['check']> = (p) =>
  mustExceed(p, 'full', 'crack', 'must be above the drop at which the valve begins to open');
