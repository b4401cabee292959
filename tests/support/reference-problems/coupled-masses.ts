import type { ReferenceProblem } from './reference-problem.js';

/**
 * Two equal masses (1 kg), each tied to the wall by a soft spring (1 N/m), to each other by a
 * very stiff damped one. In sum and difference coordinates the equations part: the sum swings
 * with omega 1; the difference is overdamped, with rates near -5e-1 x damping and -stiff/damping.
 */
const STIFF = 1e8;
const DAMPING = 1e5;

/** x1 - x2 of the difference mode from (1, 0): x'' = -(1 + 2 STIFF) x - 2 DAMPING x'. */
function difference(t: number): { x: number; v: number } {
  const root = Math.sqrt(DAMPING * DAMPING - (1 + 2 * STIFF));
  // The slow root by the product of the roots, free of cancellation.
  const fast = -DAMPING - root;
  const slow = (1 + 2 * STIFF) / fast;
  const a = -fast / (slow - fast);
  const b = slow / (slow - fast);
  return {
    x: a * Math.exp(slow * t) + b * Math.exp(fast * t),
    v: a * slow * Math.exp(slow * t) + b * fast * Math.exp(fast * t),
  };
}

const END = 1e-3;
const d = difference(END);
// Started from x1 = 1, x2 = 0 at rest: sum and difference both start from 1.
const sum = { x: Math.cos(END), v: -Math.sin(END) };

export const coupledMasses: ReferenceProblem = {
  name: 'two masses on a stiff damped spring',
  source: 'closed form by modes (any text on vibrations)',
  equations: () => ({
    names: ['x1', 'x2', 'v1', 'v2'],
    scale: [1, 1, 1e3, 1e3],
    rate: (_t, y, rate) => {
      const f = STIFF * (y[1] - y[0]) + DAMPING * (y[3] - y[2]);
      rate[0] = y[2];
      rate[1] = y[3];
      rate[2] = f - y[0];
      rate[3] = -f - y[1];
    },
    partials: () => [
      [0, 0, 1, 0],
      [0, 0, 0, 1],
      [-STIFF - 1, STIFF, -DAMPING, DAMPING],
      [STIFF, -STIFF - 1, DAMPING, -DAMPING],
    ],
  }),
  start: [1, 0, 0, 0],
  end: END,
  answer: [(sum.x + d.x) / 2, (sum.x - d.x) / 2, (sum.v + d.v) / 2, (sum.v - d.v) / 2],
  tolerance: 1e-7,
  within: [1e-5, 1e-5, 1e-2, 1e-2],
};
