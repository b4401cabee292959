import type { ReferenceProblem } from './reference-problem.js';

const G = 9.80665;
const HEIGHT = 2;
/** Speed after over speed before. */
const E = 0.7;

const fall = Math.sqrt((2 * HEIGHT) / G);
/** Impact k comes after the first fall and the flights between, each E times the last. */
const impacts = [0, 1, 2, 3, 4].map(
  (k) =>
    fall * (1 + 2 * Array.from({ length: k }, (_, i) => E ** (i + 1)).reduce((a, b) => a + b, 0)),
);
const last = impacts[4];
const END = last + 0.1;
const speed = G * fall * E ** 5;

export const bouncingBody: ReferenceProblem = {
  name: 'bouncing body',
  source: 'closed form of free fall with a coefficient of restitution (any text on mechanics)',
  equations: () => ({
    names: ['height', 'velocity'],
    rate: (_t, y, rate) => {
      rate[0] = y[1];
      rate[1] = -G;
    },
    partials: () => [
      [0, 1],
      [0, 0],
    ],
    guards: [(_t, y) => (y[1] < 0 ? -y[0] : -1)],
    jump: (_t, y, first) => {
      if (first) return 'unchanged';
      y[0] = 0;
      y[1] *= -E;
      return 'jumped';
    },
  }),
  start: [HEIGHT, 0],
  end: END,
  answer: [speed * 0.1 - 0.5 * G * 0.01, speed - G * 0.1],
  tolerance: 1e-6,
  // The path is a parabola, which both methods follow exactly; events are bracketed to 1e-9 s.
  within: [1e-7, 1e-7],
  jumps: impacts,
};
