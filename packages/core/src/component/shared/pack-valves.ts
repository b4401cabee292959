/**
 * The valves inside a power pack: make-up checks, reliefs, the lock valve that holds the gear up,
 * and the shuttle spool that gives the idle side's surplus back to the reservoir and pushes the
 * lock valve open when the other side is under pressure. Orifices and leaks: Merritt, Hydraulic
 * Control Systems (from memory); the arrangement is common practice, no source.
 */
import type { FlowDefinition, ParameterDefinitions } from '../../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionOf,
  transitionReynolds,
} from './parameters.js';

/** Spring of the check valves: begins to open, is open, Pa. */
const CRACK = 20_000;
const FULL = 150_000;

export const packValveParameters: ParameterDefinitions = {
  reliefUp: {
    title: 'crack setting of the up relief',
    quantity: 'gauge-pressure',
    range: [2e5, 4e7],
    why: 'no default: above the cut-out pressure, below what the up line may bear',
  },
  reliefDown: {
    title: 'crack setting of the down relief',
    quantity: 'gauge-pressure',
    range: [2e5, 4e7],
    why: 'no default: often a third to a half of the up setting, as weight helps; common practice, no source',
  },
  reliefBand: {
    title: 'share of the setting over which a relief opens',
    quantity: 'ratio',
    range: [0.02, 0.5],
    default: 0.1,
    why: 'direct-acting valves: 10 to 20 %; common practice, no source',
  },
  reliefFlow: {
    title: 'flow of a fully open relief',
    quantity: 'flow',
    range: [1e-6, 2e-3],
    default: 8e-5,
    why: 'above the pump flow; common practice, no source',
  },
  bore: bore(
    'bore of checks, lock and spool',
    0.004,
    'the pack is small; common practice, no source',
  ),
  spoolStarts: {
    title: 'pressure across the pump at which the spool begins to move',
    quantity: 'gauge-pressure',
    range: [0, 3e6],
    default: 2e5,
    why: 'its centring spring, some 30 psi; common practice, no source',
  },
  spoolFull: {
    title: 'pressure across the pump at which the spool is over',
    quantity: 'gauge-pressure',
    range: [5e4, 6e6],
    default: 1.5e6,
    why: 'some 220 psi, below what moves the gear; common practice, no source',
  },
  spoolTime: {
    title: 'time constant of the spool',
    quantity: 'time',
    range: [0.002, 1],
    default: 0.1,
    why: 'damped by a drilled hole; a spool of some hundredths of a second hunts where weight moves the leg faster than the pump fills it; common practice, no source',
  },
  spoolTravel: {
    title: 'share of its travel that the spool makes',
    quantity: 'ratio',
    range: [0, 1],
    default: 1,
    why: 'all of it; a stuck spool makes none and stays where it rests',
  },
  spoolUnderlap: {
    title: 'share of its travel by which the spool is open both ways in its middle',
    quantity: 'ratio',
    range: [0, 0.5],
    default: 0.2,
    why: 'lets both sides of a resting pump down to the reservoir, so that no pressure is trapped there; common practice, no source',
  },
  spoolRest: {
    title: 'place where the spool rests: 1 opens the down side, -1 the up side',
    quantity: 'ratio',
    range: [-1, 1],
    default: 0,
    why: 'in its middle; off it towards -1 it holds the lock valve open and the gear sinks',
  },
  spoolLeak: leakage(
    'leak past the shut spool, each side',
    1e-9,
    1e-14,
    'a weep of some drops a minute; common practice, no source',
  ),
  lockLeak: leakage(
    'leak back past the lock valve',
    1e-9,
    1e-15,
    'a sound seat; common practice, no source',
  ),
  makeUpLeak: leakage(
    'leak back past each make-up check',
    1e-9,
    1e-15,
    'a sound seat; common practice, no source',
  ),
  dischargeCoefficient,
  transitionReynolds,
};

type Law = NonNullable<FlowDefinition['law']>;

const check =
  (leak: string): Law =>
  (p, s) => {
    const own = boreLaw(p, s, number(p, 'bore'));
    const { constant, transition } = own;
    return {
      ...own,
      open: 0,
      leak: leakIn(s, number(p, leak)),
      check: { constant, transition, crack: CRACK, full: FULL, sense: 1, fills: true },
    };
  };

const relief =
  (setting: string): Law =>
  (p, s) => {
    const crack = number(p, setting);
    const full = crack * (1 + number(p, 'reliefBand'));
    const constant = number(p, 'reliefFlow') / Math.sqrt(full);
    const transition = transitionOf(p, s, number(p, 'bore'));
    return {
      constant,
      transition,
      open: 0,
      leak: 0,
      check: { constant, transition, crack, full, sense: 1 },
    };
  };

const dump: Law = (p, s) => ({
  ...boreLaw(p, s, number(p, 'bore')),
  open: 0,
  leak: leakIn(s, number(p, 'spoolLeak')),
});

/** The valves between pump (`pumpUp`, `down`), line (`up`) and `reservoir`; `spool` is the pack's state. */
export const packFlows = {
  makeUpUp: {
    from: 'reservoir',
    to: 'pumpUp',
    title: 'make-up, up side',
    law: check('makeUpLeak'),
  },
  makeUpDown: {
    from: 'reservoir',
    to: 'down',
    title: 'make-up, down side',
    law: check('makeUpLeak'),
  },
  reliefUp: { from: 'pumpUp', to: 'reservoir', title: 'relief, up side', law: relief('reliefUp') },
  reliefDown: {
    from: 'down',
    to: 'reservoir',
    title: 'relief, down side',
    law: relief('reliefDown'),
  },
  lock: {
    from: 'pumpUp',
    to: 'up',
    also: ['spool'],
    title: 'flow through the lock valve',
    law: check('lockLeak'),
  },
  surplusUp: {
    from: 'pumpUp',
    to: 'reservoir',
    also: ['spool'],
    title: 'surplus, up side',
    law: dump,
  },
  surplusDown: {
    from: 'down',
    to: 'reservoir',
    also: ['spool'],
    title: 'surplus, down side',
    law: dump,
  },
} satisfies Readonly<Record<string, FlowDefinition>>;
