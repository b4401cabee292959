import { ErrorNorm, type StepMethod, type StepMethodFactory } from './method.js';

/**
 * RODAS4: six stages, order 4(3), stiffly accurate, L-stable.
 * Source: Hairer, Wanner, Solving Ordinary Differential Equations II (1996), section IV.10,
 * coefficients of their code RODAS, method 1.
 */
const A = [
  [],
  [1.544],
  [0.9466785280815826, 0.2557011698983284],
  [3.314825187068521, 2.896124015972201, 0.9986419139977817],
  [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895],
];
const C = [
  [],
  [-5.6688],
  [-2.430093356833875, -0.2063599157091915],
  [-0.1073529058151375, -9.594562251023355, -20.47028614809616],
  [7.496443313967647, -10.24680431464352, -33.99990352819905, 11.7089089320616],
  [
    8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136,
    -6.058818238834054,
  ],
];
const ALPHA = [0, 0.386, 0.21, 0.63, 1, 1];

export const rodas4: StepMethodFactory = (problem, lu, shear, tolerance) => {
  const n = shear.size;
  const u = Array.from({ length: 6 }, () => new Float64Array(n));
  const f = new Float64Array(n);
  const z0 = new Float64Array(n);
  const z = new Float64Array(n);
  const norm = new ErrorNorm(problem.scale);
  const method: StepMethod = {
    name: 'rodas4',
    order: 4,
    gamma: 0.25,
    evaluations: 5,
    worst: () => norm.worst,
    attempt(t, h, y0, rate0, y1) {
      const r = 1 / h;
      shear.start(y0, z0);
      for (let i = 0; i < rate0.length; i++) f[i] = rate0[i];
      for (let s = 0; s < 6; s++) {
        const us = u[s];
        if (s > 0) {
          if (s < 5) {
            const a = A[s];
            for (let i = 0; i < n; i++) {
              let sum = z0[i];
              for (let j = 0; j < s; j++) sum += a[j] * u[j][i];
              z[i] = sum;
            }
          } else {
            // Stage 6 stands on stage 5 plus its own increment: the method is stiffly accurate.
            for (let i = 0; i < n; i++) z[i] += u[4][i];
          }
          shear.within(z, y1);
          problem.derivatives(t + ALPHA[s] * h, y1, f);
        }
        shear.turnRate(f);
        const c = C[s];
        for (let i = 0; i < n; i++) {
          let x = f[i];
          for (let j = 0; j < s; j++) x += r * c[j] * u[j][i];
          us[i] = x;
        }
        lu.solve(us);
        shear.complete(us, 4 * r, rate0);
      }
      const error = norm.take(u[5], z) / tolerance;
      shear.land(z, y1);
      return error;
    },
  };
  return method;
};
