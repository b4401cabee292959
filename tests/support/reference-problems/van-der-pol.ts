import type { ReferenceProblem } from './reference-problem.js';

const EPSILON = 1e-6;

/** Relaxation oscillation: slow creep, then jumps a million times faster. */
export const vanDerPol: ReferenceProblem = {
  name: 'stiff Van der Pol oscillator',
  source:
    'Hairer, Wanner, Solving Ordinary Differential Equations II, problem VDPOL, value at t = 2 as in the Test Set for IVP Solvers (from memory)',
  equations: () => ({
    names: ['y', 'z'],
    // z reaches a million in the jumps.
    scale: [1, 1e3],
    rate: (_t, y, rate) => {
      rate[0] = y[1];
      rate[1] = ((1 - y[0] * y[0]) * y[1] - y[0]) / EPSILON;
    },
    partials: (_t, y) => [
      [0, 1],
      [(-2 * y[0] * y[1] - 1) / EPSILON, (1 - y[0] * y[0]) / EPSILON],
    ],
  }),
  start: [2, 0],
  end: 2,
  answer: [1.706167732170483, -0.8928097010247975],
  tolerance: 1e-6,
  within: [1e-4, 1e-4],
};
