import { describe, expect, it } from 'vitest';
import {
  integrate,
  rodas3,
  rodas4,
  type SolverOptions,
} from '../../../packages/core/src/solver/index.js';
import { keeper, problemOf, referenceProblems } from '../../support/reference-problems/index.js';

const methods = { rodas3, rodas4 };
const options = (method: SolverOptions['method'], tolerance: number): SolverOptions => ({
  method,
  tolerance,
  maxSteps: 200_000,
  eventWidth: 1e-10,
});

describe.each(Object.entries(methods))('%s', (_, method) => {
  it.each(referenceProblems.map((p) => [p.name, p] as const))(
    '%s comes to its known answer',
    (_name, p) => {
      const y = Float64Array.from(p.start);
      const kept = keeper();
      const result = integrate(
        problemOf(p.equations()),
        0,
        p.end,
        y,
        options(method, p.tolerance),
        kept,
      );
      expect(result.end).toBe('done');
      p.answer.forEach((a, i) => expect(Math.abs(y[i] - a)).toBeLessThan(p.within[i]));
      if (p.jumps === undefined) expect(result.t).toBe(p.end);
    },
  );

  it.each(referenceProblems.filter((p) => p.jumps !== undefined).map((p) => [p.name, p] as const))(
    '%s jumps at its known times, and only then',
    (_name, p) => {
      const equations = p.equations();
      const times: number[] = [];
      const problem = problemOf({
        ...equations,
        jump: (t, y, first) => {
          if (!first) times.push(t);
          return equations.jump?.(t, y, first) ?? 'unchanged';
        },
      });
      integrate(
        problem,
        0,
        p.end,
        Float64Array.from(p.start),
        options(method, p.tolerance),
        keeper(),
      );
      expect(times).toHaveLength(p.jumps!.length);
      // Slow crossings turn a state's error into a larger one of time.
      p.jumps!.forEach((t, k) => expect(Math.abs(times[k] - t)).toBeLessThan(1e-5 * t));
    },
  );

  it('the steps join without gaps, and their cubics meet the states at both ends', () => {
    const p = referenceProblems.find((r) => r.name === 'bouncing body')!;
    const kept = keeper();
    integrate(
      problemOf(p.equations()),
      0,
      p.end,
      Float64Array.from(p.start),
      options(method, 1e-6),
      kept,
    );
    expect(kept.steps[0].t0).toBe(0);
    expect(kept.steps.at(-1)!.t1).toBe(p.end);
    kept.steps.slice(1).forEach((s, k) => expect(s.t0).toBe(kept.steps[k].t1));
  });
});
