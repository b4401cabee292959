import { ErrorNorm, type StepMethod, type StepMethodFactory } from './method.js';

/**
 * RODAS3: four stages, order 3(2), stiffly accurate, L-stable, three evaluations a step.
 * Source: Sandu, Verwer, Blom, Spee, Carmichael, Potra, 'Benchmarking stiff ODE solvers for
 * atmospheric chemistry problems II: Rosenbrock solvers', Atmospheric Environment 31 (1997)
 * 3459-3472, in the transformed form that needs no product with the Jacobian (Hairer, Wanner,
 * Solving Ordinary Differential Equations II, section IV.7).
 */
export const rodas3: StepMethodFactory = (problem, lu, shear, tolerance) => {
  const n = shear.size;
  const u1 = new Float64Array(n);
  const u2 = new Float64Array(n);
  const u3 = new Float64Array(n);
  const u4 = new Float64Array(n);
  const z = new Float64Array(n);
  const rate = new Float64Array(n);
  const norm = new ErrorNorm(problem.scale);
  const solve = (u: Float64Array, shift: number, rate0: Float64Array): void => {
    lu.solve(u);
    shear.complete(u, shift, rate0);
  };
  const method: StepMethod = {
    name: 'rodas3',
    order: 3,
    gamma: 0.5,
    evaluations: 2,
    worst: () => norm.worst,
    attempt(t, h, y0, rate0, y1) {
      const r = 1 / h;
      shear.start(y0, z);
      for (let i = 0; i < rate0.length; i++) u1[i] = rate0[i];
      shear.turnRate(u1);
      for (let i = 0; i < n; i++) u2[i] = u1[i];
      solve(u1, 2 * r, rate0);
      for (let i = 0; i < n; i++) u2[i] += 4 * r * u1[i];
      solve(u2, 2 * r, rate0);
      for (let i = 0; i < n; i++) z[i] += 2 * u1[i];
      shear.within(z, y1);
      problem.derivatives(t + h, y1, rate);
      shear.turnRate(rate);
      for (let i = 0; i < n; i++) u3[i] = rate[i] + r * (u1[i] - u2[i]);
      solve(u3, 2 * r, rate0);
      for (let i = 0; i < n; i++) z[i] += u3[i];
      shear.within(z, y1);
      problem.derivatives(t + h, y1, rate);
      shear.turnRate(rate);
      for (let i = 0; i < n; i++) u4[i] = rate[i] + r * (u1[i] - u2[i] - (8 / 3) * u3[i]);
      solve(u4, 2 * r, rate0);
      const error = norm.take(u4, z) / tolerance;
      shear.land(z, y1);
      return error;
    },
  };
  return method;
};
