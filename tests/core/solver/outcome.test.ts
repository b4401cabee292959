import { describe, expect, it } from 'vitest';
import {
  integrate,
  rodas3,
  rodas4,
  type SolverOptions,
  type SolverResult,
} from '../../../packages/core/src/solver/index.js';
import { keeper, problemOf, type Equations } from '../../support/reference-problems/index.js';

interface Ended extends SolverResult {
  readonly name: string;
  readonly kept: number;
}

function run(
  equations: Equations,
  start: readonly number[],
  options: Partial<SolverOptions>,
): Ended {
  const problem = problemOf(equations);
  const kept = keeper();
  const result = integrate(
    problem,
    0,
    10,
    Float64Array.from(start),
    { method: rodas3, tolerance: 1e-4, maxSteps: 20_000, eventWidth: 1e-9, ...options },
    kept,
  );
  return { ...result, name: problem.nameOf(result.state), kept: kept.steps.at(-1)?.t1 ?? 0 };
}

/** A quiet state beside one that misbehaves, so that the name means something. */
const beside = (
  rate: (t: number, y: number) => number,
  slope: (t: number, y: number) => number,
): Equations => ({
  names: ['quiet', 'wild'],
  rate: (t, y, r) => {
    r[0] = -y[0];
    r[1] = rate(t, y[1]);
  },
  partials: (t, y) => [
    [-1, 0],
    [0, slope(t, y[1])],
  ],
});

describe.each(Object.entries({ rodas3, rodas4 }))('%s', (_, method) => {
  it('a blow-up in finite time ends stuck or diverged at its time, with the state named', () => {
    const result = run(
      beside(
        (_t, y) => Math.exp(y),
        (_t, y) => Math.exp(y),
      ),
      [1, 0],
      { method },
    );
    expect(['stuck', 'diverged']).toContain(result.end);
    expect(result.name).toBe('wild');
    // y = -ln(1 - t). (y' = y^2 would not do: such methods step across its pole, exactly.)
    expect(Math.abs(result.t - 1)).toBeLessThan(1e-3);
    expect(result.kept).toBe(result.t);
  });

  it('a value that is not a number ends diverged, and what came before is kept', () => {
    const result = run(
      beside(
        (t) => (t > 0.5 ? NaN : 1),
        () => 0,
      ),
      [1, 0],
      { method },
    );
    expect(result).toMatchObject({ end: 'diverged', name: 'wild' });
    expect(Math.abs(result.t - 0.5)).toBeLessThan(1e-9);
    expect(result.kept).toBe(result.t);
  });

  it('NaN from the start ends diverged at the start', () => {
    expect(
      run(
        beside(
          () => NaN,
          () => NaN,
        ),
        [1, 0],
        { method },
      ),
    ).toMatchObject({ end: 'diverged', t: 0 });
  });

  it('an endless switch of sign ends stuck, with the state named', () => {
    // The rate always points across zero: without a guard no step is good enough.
    const result = run(
      beside(
        (_t, y) => (y > 0 ? -1e9 : 1e9),
        () => 0,
      ),
      [1, 1],
      { method, maxSteps: 1e5 },
    );
    expect(['stuck', 'exhausted']).toContain(result.end);
    expect(result.name).toBe('wild');
  });

  it('a used-up budget ends exhausted, with the hardest state named', () => {
    const result = run(
      beside(
        (t) => 1e3 * Math.cos(1e3 * t),
        () => 0,
      ),
      [1, 0],
      { method, maxSteps: 50 },
    );
    expect(result).toMatchObject({ end: 'exhausted', name: 'wild' });
    expect(result.statistics.steps + result.statistics.rejected).toBe(50);
    expect(result.t).toBeGreaterThan(0);
    expect(result.kept).toBe(result.t);
  });

  it('a guard that fires for ever, because no jump answers it, ends exhausted and does not hang', () => {
    const unanswered: Equations = {
      names: ['clock'],
      rate: (_t, _y, r) => void (r[0] = 1),
      partials: () => [[0]],
      guards: [(_t, y) => y[0] - 1],
    };
    const result = run(unanswered, [0], { method, maxSteps: 500 });
    expect(result.end).toBe('exhausted');
    expect(Math.abs(result.t - 1)).toBeLessThan(1e-6);
  });

  it('a cancelled run stops soon, and keeps what it has', () => {
    let asked = 0;
    const result = run(
      beside(
        (t) => 1e3 * Math.cos(1e3 * t),
        () => 0,
      ),
      [1, 0],
      {
        method,
        cancelled: () => ++asked > 2,
      },
    );
    expect(result.end).toBe('cancelled');
    expect(result.t).toBeGreaterThan(0);
    expect(result.t).toBeLessThan(10);
    expect(result.kept).toBe(result.t);
  });

  it('cancelled before the first step, nothing is computed', () => {
    expect(
      run(
        beside(
          () => 1,
          () => 0,
        ),
        [1, 0],
        { method, cancelled: () => true },
      ),
    ).toMatchObject({
      end: 'cancelled',
      t: 0,
      kept: 0,
    });
  });
});
