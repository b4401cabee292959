import { describe, expect, it } from 'vitest';
import {
  evaluateDense,
  integrate,
  rodas3,
  rodas4,
  type JumpResult,
  type SolverOptions,
} from '../../../packages/core/src/solver/index.js';
import {
  keeper,
  problemOf,
  type Equations,
  type KeptStep,
} from '../../support/reference-problems/index.js';

const WIDTH = 1e-9;

interface Told {
  readonly t: number;
  readonly y: number;
}

function run(
  method: SolverOptions['method'],
  change: Partial<Equations>,
  end = 2,
): { told: Told[]; y: Float64Array; t: number; end: string; steps: readonly KeptStep[] } {
  const told: Told[] = [];
  const problem = problemOf({
    names: ['clock'],
    rate: (_t, _y, r) => void (r[0] = 1),
    partials: () => [[0]],
    ...change,
    jump: (t, y, first): JumpResult => {
      if (!first) told.push({ t, y: y[0] });
      return change.jump?.(t, y, first) ?? 'unchanged';
    },
  });
  const kept = keeper();
  const y = new Float64Array(problem.size);
  const result = integrate(
    problem,
    0,
    end,
    y,
    { method, tolerance: 1e-4, maxSteps: 10_000, eventWidth: WIDTH },
    kept,
  );
  return { told, y, t: result.t, end: result.end, steps: kept.steps };
}

describe.each(Object.entries({ rodas3, rodas4 }))('%s', (_, method) => {
  it('a guard fires just after its zero, with the guard above zero', () => {
    let fired = false;
    const { told } = run(method, {
      guards: [(_t, y) => (fired ? -1 : y[0] - 0.7)],
      jump: (_t, _y, first) => {
        if (!first) fired = true;
        return 'jumped';
      },
    });
    expect(told).toHaveLength(1);
    expect(told[0].t).toBeGreaterThan(0.7);
    expect(told[0].t).toBeLessThan(0.7 + 2 * WIDTH);
    expect(told[0].y).toBeGreaterThan(0.7);
  });

  it('a zero that lands on a step end fires once, after it (the interval is open there)', () => {
    let fired = false;
    const { told, steps } = run(method, {
      // The break makes a step end at 0.5 exactly; there the guard is zero, which is not above zero.
      breaks: [0.5],
      guards: [(t) => (fired ? -1 : t - 0.5)],
      jump: (t, _y, first) => {
        if (!first && t > 0.5) fired = true;
        return fired ? 'jumped' : 'unchanged';
      },
    });
    expect(steps.some((s) => s.t1 === 0.5)).toBe(true);
    expect(told.map((e) => e.t > 0.5)).toEqual([false, true]);
    expect(told[1].t - 0.5).toBeLessThan(2 * WIDTH);
  });

  it('a guard that is zero at the start does not fire there', () => {
    let fired = false;
    const { told } = run(method, {
      guards: [(_t, y) => (fired ? -1 : y[0])],
      jump: (_t, _y, first) => {
        if (!first) fired = true;
        return 'jumped';
      },
    });
    expect(told).toHaveLength(1);
    expect(told[0].t).toBeGreaterThan(0);
    expect(told[0].t).toBeLessThan(1e-4);
  });

  it('guards with one zero fire at one instant', () => {
    const open = [true, true, true];
    const fire: number[][] = [];
    run(method, {
      guards: [0.4, 0.4, 0.9].map(
        (at, k) => (_t: number, y: Float64Array) => (open[k] ? y[0] - at : -1),
      ),
      jump: (_t, y, first) => {
        if (first) return 'unchanged';
        const due = [0.4, 0.4, 0.9].flatMap((at, k) => (open[k] && y[0] > at ? [k] : []));
        due.forEach((k) => (open[k] = false));
        fire.push(due);
        return 'jumped';
      },
    });
    expect(fire).toEqual([[0, 1], [2]]);
  });

  it('a guard above zero for a moment is caught where a break falls into it', () => {
    let fired = false;
    const { told } = run(method, {
      breaks: [0.9, 1.0002],
      guards: [(_t, y) => (fired ? -1 : 1e-7 - (y[0] - 1) * (y[0] - 1))],
      jump: (t, _y, first) => {
        if (!first && t !== 0.9) fired = true;
        return 'unchanged';
      },
    });
    const zero = 1 - Math.sqrt(1e-7);
    expect(told[1].t).toBeGreaterThanOrEqual(zero);
    expect(told[1].t - zero).toBeLessThan(10 * WIDTH);
  });

  it('breaks are hit exactly, in order, and steps never run across them', () => {
    const breaks = [0.1, 1 / 3, 1 / 3 + 1e-12, Math.SQRT2];
    const { told, steps } = run(method, { breaks });
    expect(told.map((e) => e.t)).toEqual(breaks);
    for (const b of breaks) expect(steps.some((s) => s.t0 < b && s.t1 > b)).toBe(false);
  });

  it("'jumped' takes the new right-hand side, and new states, from there on", () => {
    let slope = 1;
    const { y } = run(method, {
      breaks: [1],
      rate: (_t, _y, r) => void (r[0] = slope),
      jump: (_t, s, first) => {
        if (first) return 'unchanged';
        slope = -2;
        s[0] = 5;
        return 'jumped';
      },
    });
    expect(Math.abs(y[0] - 3)).toBeLessThan(1e-12);
  });

  it("'unchanged' does not restart: the step goes on at its length", () => {
    const { steps } = run(method, { breaks: [1] });
    const after = steps.find((s) => s.t0 === 1)!;
    expect(after.t1 - after.t0).toBeGreaterThan(0.05);
  });

  it("'end' ends the run there, 'failed' says so", () => {
    const at = (result: JumpResult) =>
      run(method, { breaks: [1], jump: (_t, _y, first) => (first ? 'unchanged' : result) });
    expect(at('end')).toMatchObject({ end: 'done', t: 1 });
    expect(at('failed')).toMatchObject({ end: 'failed', t: 1 });
    const first = run(method, { jump: () => 'failed' });
    expect(first).toMatchObject({ end: 'failed', t: 0 });
  });

  it('the record ends where the guard fired, on the state that the jump was given', () => {
    let fired = false;
    const { told, steps } = run(method, {
      guards: [(_t, y) => (fired ? -1 : y[0] - 0.7)],
      jump: (_t, _y, first) => {
        if (!first) fired = true;
        return 'jumped';
      },
    });
    const cut = steps.find((s) => s.t1 === told[0].t)!;
    const y = new Float64Array(1);
    evaluateDense(cut.coefficients, 0, (cut.t1 - cut.t0) / cut.h, y);
    expect(Math.abs(y[0] - told[0].y)).toBeLessThan(1e-14);
  });
});
