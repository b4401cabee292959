import type { ReferenceProblem } from './reference-problem.js';

/** Three reactions whose rates differ by nine decades, over eleven decades of time. */
export const robertson: ReferenceProblem = {
  name: "Robertson's reactions",
  source:
    'H. H. Robertson (1966); values at 1e11 s from Mazzia, Magherini, Test Set for IVP Solvers, problem ROBER (from memory)',
  equations: () => ({
    names: ['a', 'b', 'c'],
    scale: [1e-6, 1e-11, 1],
    rate: (_t, y, rate) => {
      const first = 0.04 * y[0] - 1e4 * y[1] * y[2];
      const second = 3e7 * y[1] * y[1];
      rate[0] = -first;
      rate[1] = first - second;
      rate[2] = second;
    },
    partials: (_t, y) => [
      [-0.04, 1e4 * y[2], 1e4 * y[1]],
      [0.04, -1e4 * y[2] - 6e7 * y[1], -1e4 * y[1]],
      [0, 6e7 * y[1], 0],
    ],
  }),
  start: [1, 0, 0],
  end: 1e11,
  answer: [0.2083340149701255e-7, 0.8333360770334713e-13, 0.999999979166505],
  tolerance: 1e-4,
  within: [2e-12, 8e-18, 1e-9],
};
