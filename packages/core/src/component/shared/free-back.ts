/**
 * A check valve beside a valve's main passage that lets oil back from outlet to inlet.
 */
import type { FlowDefinition, ParameterDefinitions } from '../../define/index.js';
import { bore, boreLaw, number } from './parameters.js';

export const freeBackParameters: ParameterDefinitions = {
  freeBore: bore('bore of the free way back', 0.005, 'about the bore of its line'),
  freeCrack: {
    title: 'drop at which the way back begins to open',
    quantity: 'gauge-pressure',
    range: [0, 1e6],
    default: 20_000,
    why: 'a light spring, about 3 psi; common practice, no source',
  },
  freeFull: {
    title: 'drop at which the way back is fully open',
    quantity: 'gauge-pressure',
    range: [2000, 2e6],
    default: 200_000,
    why: 'a few times the crack drop; common practice, no source',
  },
  freeStuckShut: {
    title: 'share of the way back that sticks shut',
    quantity: 'ratio',
    range: [0, 1],
    default: 0,
    why: 'a free check',
  },
};

export const freeBack: FlowDefinition = {
  from: 'outlet',
  to: 'inlet',
  title: 'free return flow',
  law: (p, s) => {
    const law = boreLaw(p, s, number(p, 'freeBore'));
    return {
      ...law,
      open: 0,
      check: {
        constant: law.constant * (1 - number(p, 'freeStuckShut')),
        transition: law.transition,
        crack: number(p, 'freeCrack'),
        full: number(p, 'freeFull'),
        sense: 1,
      },
    };
  },
};
