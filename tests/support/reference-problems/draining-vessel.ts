import type { ReferenceProblem } from './reference-problem.js';

/** A vessel that drains through a hole: d sqrt(h) / dt is constant. Stops at the low mark. */
const G = 9.80665;
const RATIO = 0.01;
const START = 1;
const MARK = 0.04;

const rate = RATIO * Math.sqrt(G / 2);
const reached = (Math.sqrt(START) - Math.sqrt(MARK)) / rate;

export const drainingVessel: ReferenceProblem = {
  name: 'draining vessel',
  source: "Torricelli's law, closed form (any text on fluid mechanics)",
  equations: () => ({
    names: ['level'],
    rate: (_t, y, r) => void (r[0] = -RATIO * Math.sqrt(2 * G * Math.max(y[0], 0))),
    partials: (_t, y) => [[-RATIO * Math.sqrt(G / (2 * Math.max(y[0], 1e-9)))]],
    guards: [(_t, y) => MARK - y[0]],
    jump: (_t, _y, first) => (first ? 'unchanged' : 'end'),
  }),
  start: [START],
  end: 1000,
  answer: [MARK],
  tolerance: 1e-7,
  within: [1e-7],
  jumps: [reached],
};
