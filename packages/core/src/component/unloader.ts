/**
 * Unloader (pressure regulator): loads the pump until the system has reached the cut-out
 * pressure, then snaps open and lets the pump's flow back to the return with little pressure,
 * until the system has fallen to the cut-in pressure. Its own check valve holds the system
 * meanwhile. Wants an accumulator in the system: without one it snaps back and forth.
 *
 * Two leaks tell themselves apart by the clock (NAVEDTRA 14329, troubleshooting): past the dump
 * valve, cut-out takes long and cut-in time is normal; past the check valve, cut-out is normal and
 * cut-in comes too soon.
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

const CUT_OUT = 0;
const CUT_IN = 1;

const OUTLET = 1;
const RETURN = 2;

const DUMP = 1;
const UNLOADED = 1;

/** The system's pressure against the spring, whose chamber is open to the return. */
const sensed = (d: GuardFrame): number => d.pressure(OUTLET) - d.pressure(RETURN);

export const unloader: DeviceDefinition = {
  kind: 'unloader',
  title: 'Unloader',
  summary:
    'Rests a fixed-displacement pump between two system pressures; use it with an accumulator.',
  source:
    'valve with two settings, check and dump as orifices: Merritt, Hydraulic Control Systems (from memory)',
  role: 'control',
  parameters: {
    cutOut: {
      title: 'cut-out pressure',
      quantity: 'gauge-pressure',
      range: [2e5, 4e7],
      why: 'no default: the working pressure of the system, below its relief valve',
    },
    cutIn: {
      title: 'cut-in pressure',
      quantity: 'gauge-pressure',
      range: [1e5, 3.9e7],
      why: 'no default: 10 to 20 % below cut-out; common practice, no source',
    },
    bore: bore(
      'bore of check and dump valve when open',
      0.008,
      'passes the pump flow at a few psi; common practice, no source',
    ),
    crack: {
      title: 'drop at which the check valve begins to open',
      quantity: 'gauge-pressure',
      range: [0, 2e6],
      default: 20_000,
      why: 'light springs of 2 to 8 psi are usual; common practice, no source',
    },
    full: {
      title: 'drop at which the check valve is fully open',
      quantity: 'gauge-pressure',
      range: [2000, 4e6],
      default: 150_000,
      why: 'five to ten times the crack drop: full lift at some 20 psi; common practice, no source',
    },
    bypassLeak: leakage(
      'leak past the shut dump valve',
      1e-9,
      1e-14,
      'a weep of some drops a minute at system pressure; common practice, no source',
    ),
    checkLeak: leakage(
      'leak back past the shut check valve',
      1e-9,
      1e-15,
      'a sound seat passes drops an hour at system pressure; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'from the pump', volume: 5e-6 },
    outlet: { title: 'to the system', volume: 5e-6 },
    return: { title: 'to return', volume: 5e-6 },
  },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      title: 'flow to the system',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: 0,
        leak: leakIn(s, number(p, 'checkLeak')),
        check: checkOf(p, s, number(p, 'bore'), 1),
      }),
    },
    dump: {
      from: 'inlet',
      to: 'return',
      title: 'flow dumped to return',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: 0,
        leak: leakIn(s, number(p, 'bypassLeak')),
      }),
    },
  },
  modes: {
    loading: {
      title: 'loading the pump',
      active: true,
      guards: [
        {
          to: 'unloaded',
          when: (d) => sensed(d) - d.k[CUT_OUT],
          cause: 'system pressure above cut-out',
          reads: ['outlet', 'return'],
        },
      ],
    },
    unloaded: {
      title: 'pump unloaded',
      guards: [
        {
          to: 'loading',
          when: (d) => d.k[CUT_IN] - sensed(d),
          cause: 'system pressure below cut-in',
          reads: ['outlet', 'return'],
        },
      ],
    },
  },
  check: (p) => [
    ...mustExceed(p, 'cutOut', 'cutIn', 'must be above the cut-in pressure'),
    ...mustExceed(p, 'full', 'crack', 'must be above the drop at which the check begins to open'),
  ],
  prepare: (p) => Float64Array.of(number(p, 'cutOut'), number(p, 'cutIn')),
  equations: (d) => d.opening(DUMP, d.mode === UNLOADED ? 1 : 0),
  symbol: {
    name: 'unloader',
    size: [6, 6],
    ports: { inlet: [-3, 0], outlet: [3, 0], return: [0, -3] },
  },
};
