/**
 * Quick-disconnect: two coupling halves, each with a poppet that its spring shuts when they are
 * apart. Pushed home, the halves hold both poppets off their seats and oil is free both ways.
 * Not fully home, the poppet of one half lifts only partly: oil that flows into that half pushes
 * it open, oil that flows out of it finds just the part that the mating holds open. So a half-open
 * coupling restricts one direction, and looks connected.
 *
 *   q = open orifice(dp), and beside it, into the loose half, a check valve on the rest of the bore
 *
 * Use a check valve or a one-way restrictor where that is the part's purpose.
 */
import type { DeviceDefinition } from '../define/index.js';
import {
  bore,
  boreLaw,
  checkOf,
  dischargeCoefficient,
  mustExceed,
  number,
  transitionReynolds,
} from './shared/parameters.js';

export const quickDisconnect: DeviceDefinition = {
  kind: 'quick-disconnect',
  title: 'Quick-disconnect',
  summary:
    'Self-sealing coupling of a hose, as between a test stand and the aircraft; half mated it restricts one direction.',
  source:
    'orifice and quasi-static poppet: Merritt, Hydraulic Control Systems (from memory); half-mated behaviour: common practice, no source',
  role: 'other',
  parameters: {
    bore: bore(
      'bore when fully home',
      0.008,
      'a little above the bore of its hose; common practice, no source',
    ),
    mating: {
      title: 'share of the bore that the mating holds open',
      quantity: 'ratio',
      range: [0, 1],
      default: 1,
      why: 'fully home; 0 is the poppet of the loose half on its seat',
    },
    loose: {
      type: 'choice',
      title: 'half whose poppet lifts partly when it is not home',
      choices: ['inlet', 'outlet'],
      default: 'inlet',
      why: 'oil leaves the inlet half, so this is the one that starves what lies behind it',
    },
    crack: {
      title: 'drop at which oil begins to push the loose poppet open',
      quantity: 'gauge-pressure',
      range: [0, 1e6],
      default: 30_000,
      why: 'a spring that seals an open half, about 4 psi; common practice, no source',
    },
    full: {
      title: 'drop at which oil has pushed it fully open',
      quantity: 'gauge-pressure',
      range: [2000, 2e6],
      default: 200_000,
      why: 'some times the drop at which it begins; common practice, no source',
    },
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet', volume: 5e-6 },
    outlet: { title: 'outlet', volume: 5e-6 },
  },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      title: 'flow',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: number(p, 'mating'),
        check: {
          ...checkOf(p, s, number(p, 'bore'), p.loose === 'inlet' ? -1 : 1),
          fills: true,
        },
      }),
    },
  },
  check: (p) =>
    mustExceed(p, 'full', 'crack', 'must be above the drop at which oil begins to push it open'),
  prepare: () => new Float64Array(0),
  symbol: { name: 'quick-disconnect', size: [6, 4], ports: { inlet: [-3, 0], outlet: [3, 0] } },
};
