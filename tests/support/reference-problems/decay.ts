import type { ReferenceProblem } from './reference-problem.js';

/** y' = -rate y, over two time constants. */
const RATE = 3;

export const decay: ReferenceProblem = {
  name: 'linear decay',
  source: 'closed form exp(-rate t)',
  equations: () => ({
    names: ['y'],
    rate: (_t, y, rate) => void (rate[0] = -RATE * y[0]),
    partials: () => [[-RATE]],
  }),
  start: [1],
  end: 2 / RATE,
  answer: [Math.exp(-2)],
  tolerance: 1e-7,
  within: [1e-6],
};
