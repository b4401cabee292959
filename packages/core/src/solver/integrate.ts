import { evaluateDense, fillDense, fillSlopes } from './dense.js';
import type { StepMethodFactory } from './method.js';
import type { Problem, Recorder } from './problem.js';
import { firstAbove } from './root.js';
import { Shear } from './shear.js';
import { SparseLU } from './sparse-lu.js';
import { StepControl } from './step-control.js';

/** Named choices of the integration; they travel with the run. */
export interface SolverOptions {
  readonly method: StepMethodFactory;
  /** Relative to each state's scale. */
  readonly tolerance: number;
  /** Attempts allowed. */
  readonly maxSteps: number;
  /** Width to which an event's time is bracketed, s. */
  readonly eventWidth: number;
  /** Asked now and then: true stops the run. */
  readonly cancelled?: () => boolean;
}

export interface SolverStatistics {
  steps: number;
  rejected: number;
  evaluations: number;
  jacobians: number;
  restarts: number;
}

/** How the integration ended; `state` is the one with the largest error, -1 when none. */
export interface SolverResult {
  readonly end: 'done' | 'failed' | 'stuck' | 'diverged' | 'exhausted' | 'cancelled';
  readonly t: number;
  readonly state: number;
  readonly statistics: SolverStatistics;
}

/** Tries to end a step just past a guard; the last one takes the whole step. */
const CUT_ATTEMPTS = 10;
/** Where even such a step gives no number, there is none, s. */
const LEAST_STEP = 1e-13;

/**
 * Integrates from t0 to tEnd with `y` in place, stopping at guards and breaks.
 *
 * The loop, per step: choose h (never past the next break) - attempt - too large an error:
 * shrink and try again with the same slopes - accept: evaluate the end point - a guard above
 * zero there: locate its first crossing on the dense output, end the step there, let the
 * problem jump, start afresh.
 */
export function integrate(
  problem: Problem,
  t0: number,
  tEnd: number,
  y: Float64Array,
  options: SolverOptions,
  recorder: Recorder,
): SolverResult {
  const n = problem.size;
  const lu = new SparseLU(problem.pattern);
  const shear = new Shear(problem);
  const method = options.method(problem, lu, shear, options.tolerance);
  const control = new StepControl(method.order, options.tolerance);
  const rate0 = new Float64Array(n);
  const rate1 = new Float64Array(n);
  const y1 = new Float64Array(n);
  const trial = new Float64Array(n);
  const coefficients = new Float64Array(4 * n);
  const inner = new Float64Array(4 * shear.size);
  const z0 = new Float64Array(shear.size);
  const z1 = new Float64Array(shear.size);
  const slopes0 = new Float64Array(shear.size);
  const slopes1 = new Float64Array(shear.size);
  let jacobian0 = new Float64Array(problem.pattern.column.length);
  let jacobian1 = new Float64Array(problem.pattern.column.length);
  const statistics = { steps: 0, rejected: 0, evaluations: 0, jacobians: 0, restarts: 0 };
  let t = t0;
  let stepLength = 0;
  /** As long as the problem allows from here. */
  let longest = Infinity;

  const fill = (
    into: Float64Array,
    length: number,
    from: Float64Array,
    rateFrom: Float64Array,
    to: Float64Array,
    rateTo: Float64Array,
  ): void => {
    fillDense(into, problem.fast, length, from, rateFrom, to, rateTo);
    if (problem.integrals !== undefined) fillSlopes(into, problem.integrals, length);
  };

  /** Dense output of a step of this length that ends in `y1`. */
  const output = (length: number): void => fill(coefficients, length, y, rate0, y1, rate1);

  /**
   * Dense output for the guards, of the sheared states: the cubics of an oil content and of the
   * angle it follows are good each by itself, but what they differ by is a large pressure.
   */
  const outputForGuards = (length: number): void => {
    const turned = (
      at: Float64Array,
      own: Float64Array,
      z: Float64Array,
      rate: Float64Array,
    ): void => {
      shear.start(at, z);
      rate.set(own);
      shear.turnRate(rate);
    };
    turned(y, rate0, z0, slopes0);
    turned(y1, rate1, z1, slopes1);
    fill(inner, length, z0, slopes0, z1, slopes1);
  };

  const guardAt = (s: number): number => {
    evaluateDense(inner, 0, s, z0);
    shear.within(z0, trial);
    problem.look(t + s * stepLength, trial);
    statistics.evaluations++;
    return problem.marked();
  };

  /**
   * Ends the step that has just been accepted where the first of its guards crosses zero: the place comes from
   * the dense output, the state from a step of exactly that length, so that what the method
   * conserves stays conserved. Leaves the state in `y1` with a guard above zero; returns the
   * length.
   */
  const cutAtGuard = (step: number, guardAtEnd: number): number => {
    stepLength = step;
    outputForGuards(step);
    problem.mark();
    const before = guardAt(0);
    if (before > 0) {
      y1.set(y);
      rate1.set(rate0);
      return 0;
    }
    const width = options.eventWidth / Math.max(step, options.eventWidth);
    let s = firstAbove(guardAt, 0, before, 1, guardAtEnd, width);
    let more = width;
    for (let attempt = 0; attempt < CUT_ATTEMPTS; attempt++) {
      const length = attempt === CUT_ATTEMPTS - 1 ? step : s * step;
      lu.factor(jacobian0, 1 / (method.gamma * length));
      method.attempt(t, length, y, rate0, y1);
      statistics.evaluations += method.evaluations;
      problem.derivatives(t + length, y1, rate1);
      const found = problem.marked();
      if (found > 0 || problem.crossing() > 0) return length;
      // A little short: the dense output shows where the guard has risen by what is missing. (A
      // straight line would not do: guards of several conditions are often cut off at the top.)
      const missing = found - guardAt(s);
      more *= 8;
      const next =
        guardAtEnd + missing > 0
          ? firstAbove((x) => guardAt(x) + missing, s, found, 1, guardAtEnd + missing, width)
          : 0.5 * (s + 1);
      s = Math.min(1, Math.max(s + more, next));
    }
    return step;
  };
  const finish = (end: SolverResult['end'], state = -1): SolverResult => ({
    end,
    t,
    state,
    statistics,
  });
  /** The state whose rate is no number: in the linear algebra NaN spreads to all the others. */
  const broken = (step: number): number => {
    const find = (rate: Float64Array): number => rate.findIndex((r) => !Number.isFinite(r));
    const now = find(rate0);
    if (now >= 0) return now;
    problem.derivatives(t + step, y, rate1);
    const soon = find(rate1);
    return soon >= 0 ? soon : method.worst();
  };
  /** True when a jump left state and rates as they were (a mode that only has another name). */
  const smooth = (): boolean => {
    for (let i = 0; i < n; i++) {
      if (y[i] !== y1[i]) return false;
      const a = rate0[i];
      const b = rate1[i];
      const size = Math.abs(a) + Math.abs(b);
      if (Math.abs(a - b) > 1e-9 * size + 1e-12 * problem.scale[i]) return false;
    }
    return true;
  };
  /** Lets the problem jump at (t, y); the result says how to go on. */
  const jump = (): SolverResult | undefined => {
    const result = problem.jump(t, y);
    if (result === 'end') return finish('done');
    if (result === 'failed') return finish('failed');
    problem.jacobian(t, y, rate0, jacobian0);
    longest = problem.longestStep();
    shear.turnJacobian(jacobian0, y, rate0);
    statistics.jacobians++;
    if (result === 'jumped' && !smooth()) {
      statistics.restarts++;
      control.restart();
    } else {
      control.resume();
    }
    return undefined;
  };

  const first = jump();
  if (first !== undefined) return first;
  while (t < tEnd) {
    if (statistics.steps + statistics.rejected >= options.maxSteps) {
      return finish('exhausted', method.worst());
    }
    if ((statistics.steps & 63) === 0 && options.cancelled?.() === true) return finish('cancelled');
    const stop = Math.min(problem.nextBreak(t), tEnd);
    let toBreak = false;
    let step = Math.min(control.h, longest);
    if (t + 1.001 * step >= stop) {
      step = stop - t;
      toBreak = true;
    } else if (t + 2 * step > stop) {
      step = 0.5 * (stop - t);
    }
    const least = 1e-14 * Math.max(1, Math.abs(t));
    if (!toBreak && step < least) return finish('stuck', method.worst());

    const good = step > 0 ? lu.factor(jacobian0, 1 / (method.gamma * step)) : true;
    const raw = step <= 0 ? 0 : good ? method.attempt(t, step, y, rate0, y1) : NaN;
    const error = raw * control.strictness;
    statistics.evaluations += method.evaluations;
    if (!(error <= 1)) {
      statistics.rejected++;
      control.reject(step, error);
      if (error !== error && control.h < LEAST_STEP) return finish('diverged', broken(step));
      continue;
    }
    const tNew = toBreak ? stop : t + step;
    if (step <= 0) y1.set(y);
    problem.jacobian(tNew, y1, rate1, jacobian1);
    const longestNext = problem.longestStep();
    shear.turnJacobian(jacobian1, y1, rate1);
    statistics.jacobians++;
    const guard = problem.crossing();
    if (guard > 0 && !control.mayEnd(step, error)) {
      statistics.rejected++;
      continue;
    }
    statistics.steps++;
    control.accept(step, error, toBreak);
    output(step);
    if (guard > 0) {
      const length = cutAtGuard(step, guard);
      output(length);
      recorder.step(t, t + length, length, coefficients);
      t += length;
      y.set(y1);
      const ended = jump();
      if (ended !== undefined) return ended;
      continue;
    }
    recorder.step(t, tNew, step, coefficients);
    t = tNew;
    y.set(y1);
    const spare = jacobian0;
    jacobian0 = jacobian1;
    jacobian1 = spare;
    if (toBreak && t >= problem.nextBreak(t)) {
      const ended = jump();
      if (ended !== undefined) return ended;
    } else {
      rate0.set(rate1);
      longest = longestNext;
    }
  }
  return finish('done');
}
