/**
 * What selectors look like: parameters, ports, lever and passages; shared/spool moves the spool.
 */
import type {
  FlowDefinition,
  InputDefinition,
  ParameterDefinitions,
  Parameters,
  PortDefinition,
  StateDefinition,
} from '../../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionReynolds,
} from './parameters.js';

/** Words of the lever, by its input. */
export const LEVER = ['up', 'neutral', 'down'] as const;

const moreLeak = (title: string) =>
  leakage(`leak ${title}, beyond that of each shut land`, 1e-10, 0, 'a sound valve has none');

/** Parameters of a selector; `own` are put behind the bore. */
export function spoolParameters(own: ParameterDefinitions): ParameterDefinitions {
  return {
    bore: bore(
      'bore of a fully open land',
      0.005,
      'a few psi at the flow of a light system; common practice, no source',
    ),
    ...own,
    overlap: {
      title:
        'spool travel within which a land stays shut (open, where the centre is open), share of the shift',
      quantity: 'ratio',
      range: [0.02, 0.8],
      default: 0.3,
      why: 'plain spools cover their ports generously; common practice, no source',
    },
    shiftTime: {
      title: 'time from neutral to either end',
      quantity: 'time',
      range: [0.01, 5],
      default: 0.1,
      why: 'a hand on a lever; common practice, no source',
    },
    leak: leakage(
      'leak of each shut land',
      1e-10,
      2e-14,
      'a new spool: some cm3 a minute at 1000 psi; common practice, no source',
    ),
    leakAcross: moreLeak('from pressure to return'),
    leakFeedUp: moreLeak('from pressure to the up line'),
    leakFeedDown: moreLeak('from pressure to the down line'),
    leakReturnUp: moreLeak('from the up line to return'),
    leakReturnDown: moreLeak('from the down line to return'),
    start: {
      type: 'choice',
      title: 'lever at the start',
      choices: LEVER,
      default: 'neutral',
      why: 'nothing selected',
    },
    rigging: {
      title: 'where the spool stands with the lever in neutral, share of the shift towards up',
      quantity: 'ratio',
      range: [-0.8, 0.8],
      default: 0,
      why: 'rigged right; beyond the overlap a land is open in neutral',
    },
    stopShort: {
      title: 'share of the shift that is missing at both ends',
      quantity: 'ratio',
      range: [0, 0.95],
      default: 0,
      why: 'the lever drops into its detent; short of it the lands open in part or not at all',
    },
    linked: {
      type: 'switch',
      title: 'lever linked to the spool',
      default: true,
      why: 'a linkage that has come off leaves the spool where it was',
    },
    dischargeCoefficient,
    transitionReynolds,
  };
}

export const spoolPorts: Readonly<Record<string, PortDefinition>> = {
  pressure: { title: 'pressure', volume: 5e-6 },
  return: { title: 'return', volume: 5e-6 },
  up: { title: 'up line', volume: 5e-6 },
  down: { title: 'down line', volume: 5e-6 },
};

export const spoolStates: Readonly<Record<string, StateDefinition>> = {
  spool: { title: 'spool position (1 up, -1 down)', unit: '', scale: 1, initial: 0 },
  drive: { title: 'shift under way', unit: '', scale: 1, initial: 0 },
};

export const spoolInputs: Readonly<Record<string, InputDefinition>> = {
  lever: {
    title: 'gear lever',
    choices: LEVER,
    initial: (p: Parameters) => LEVER.indexOf(p.start as (typeof LEVER)[number]),
  },
};

/** A land: an orifice that the spool opens, with a leak where it is shut; `extra` names its own leak. */
export function landPassage(extra: string, bored = 'bore'): Pick<FlowDefinition, 'also' | 'law'> {
  return {
    also: ['spool'],
    law: (p, s) => ({
      ...boreLaw(p, s, number(p, bored)),
      open: 0,
      leak: leakIn(s, number(p, 'leak') + number(p, extra)),
    }),
  };
}

/** The four lands between pressure, lines and return, in the order in which shared/spool opens them. */
export const spoolFlows: Readonly<Record<string, FlowDefinition>> = {
  feedUp: {
    from: 'pressure',
    to: 'up',
    title: 'pressure to up line',
    ...landPassage('leakFeedUp'),
  },
  feedDown: {
    from: 'pressure',
    to: 'down',
    title: 'pressure to down line',
    ...landPassage('leakFeedDown'),
  },
  returnUp: {
    from: 'up',
    to: 'return',
    title: 'up line to return',
    ...landPassage('leakReturnUp'),
  },
  returnDown: {
    from: 'down',
    to: 'return',
    title: 'down line to return',
    ...landPassage('leakReturnDown'),
  },
};
