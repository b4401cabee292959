/**
 * Gas check valve: a check valve between gas ports, with a soft seat that holds gas. It keeps the
 * gas of one bottle from the other, and oil out of the gas lines.
 */
import type { DeviceDefinition } from '../define/index.js';
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

export const gasCheckValve: DeviceDefinition = {
  kind: 'gas-check-valve',
  title: 'Gas check valve',
  summary: 'Lets gas through from inlet to outlet only.',
  source: 'quasi-static poppet; flow by ISO 6358',
  role: 'other',
  parameters: {
    bore: bore(
      'bore when open',
      0.004,
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
    leak: leakage('leak when shut', 1e-9, 0, 'a soft seat is gas tight'),
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
  },
  ports: {
    inlet: { title: 'inlet', volume: 2e-6, dry: true },
    outlet: { title: 'outlet', volume: 2e-6, dry: true },
  },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      title: 'flow',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: number(p, 'stick'),
        leak: leakIn(s, number(p, 'leak')),
        check: { ...checkOf(p, s, number(p, 'bore'), 1, 'stuckShut'), fills: true },
      }),
    },
  },
  check: (p) =>
    mustExceed(p, 'full', 'crack', 'must be above the drop at which the valve begins to open'),
  prepare: () => new Float64Array(0),
  symbol: { name: 'gas-check', size: [4, 4], ports: { inlet: [-2, 0], outlet: [2, 0] } },
};
