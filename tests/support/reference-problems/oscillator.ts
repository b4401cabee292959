import type { ReferenceProblem } from './reference-problem.js';

/** Undamped, ten periods: amplitude and phase both have to hold. */
const OMEGA = 2 * Math.PI;

export const oscillator: ReferenceProblem = {
  name: 'linear oscillator',
  source: 'closed form cos(omega t), ten periods and a quarter',
  equations: () => ({
    names: ['x', 'v'],
    scale: [1, OMEGA],
    rate: (_t, y, rate) => {
      rate[0] = y[1];
      rate[1] = -OMEGA * OMEGA * y[0];
    },
    partials: () => [
      [0, 1],
      [-OMEGA * OMEGA, 0],
    ],
  }),
  start: [1, 0],
  end: 10.25,
  answer: [0, -OMEGA],
  // Errors add up over a few thousand steps.
  tolerance: 1e-8,
  within: [2e-5, 2e-5],
};
