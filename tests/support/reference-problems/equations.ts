import {
  patternFrom,
  type Bends,
  type JumpResult,
  type Problem,
  type Recorder,
} from '../../../packages/core/src/solver/index.js';

/** Bare equations for the solver: what a reference problem has to say, the rest has defaults. */
export interface Equations {
  readonly names: readonly string[];
  /** Size of each state, for error control; 1 where absent. */
  readonly scale?: readonly number[];
  readonly fast?: readonly number[];
  readonly rate: (t: number, y: Float64Array, rate: Float64Array) => void;
  /** Full matrix of partial derivatives, row by row. */
  readonly partials: (t: number, y: Float64Array) => readonly (readonly number[])[];
  readonly guards?: readonly ((t: number, y: Float64Array) => number)[];
  readonly breaks?: readonly number[];
  readonly bends?: Bends;
  /** Told at the start (`first`), at breaks and where a guard fired. */
  readonly jump?: (t: number, y: Float64Array, first: boolean) => JumpResult;
}

/** A solver problem with a full pattern. */
export function problemOf(e: Equations): Problem {
  const size = e.names.length;
  const all = e.names.flatMap((_, i) => e.names.map((__, j) => [i, j] as const));
  let at = 0;
  let seen = new Float64Array(size);
  let first = true;
  let left = [...(e.breaks ?? [])];
  const guards = e.guards ?? [];
  let noted = guards;
  const look = (t: number, y: Float64Array): void => {
    at = t;
    seen = Float64Array.from(y);
  };
  return {
    size,
    pattern: patternFrom(size, all),
    scale: Float64Array.from(e.names, (_, i) => e.scale?.[i] ?? 1),
    fast: Uint8Array.from(e.names, (_, i) => e.fast?.[i] ?? 0),
    ...(e.bends === undefined ? {} : { bends: e.bends }),
    look,
    derivatives(t, y, rate) {
      look(t, y);
      e.rate(t, y, rate);
    },
    jacobian(t, y, rate, values) {
      look(t, y);
      e.rate(t, y, rate);
      values.set(e.partials(t, y).flat());
    },
    crossing: () => Math.max(-Infinity, ...guards.map((g) => g(at, seen))),
    mark: () => (noted = guards.filter((g) => g(at, seen) > 0)),
    marked: () => Math.max(-Infinity, ...noted.map((g) => g(at, seen))),
    longestStep: () => Infinity,
    nextBreak: () => left[0] ?? Infinity,
    jump(t, y) {
      left = left.filter((b) => b > t);
      const result = e.jump?.(t, y, first) ?? 'unchanged';
      first = false;
      return result;
    },
    nameOf: (state) => e.names[state],
  };
}

export interface KeptStep {
  readonly t0: number;
  readonly t1: number;
  readonly h: number;
  readonly coefficients: Float64Array;
}

/** A recorder that keeps everything. */
export function keeper(): Recorder & { readonly steps: KeptStep[] } {
  const steps: KeptStep[] = [];
  return {
    steps,
    step: (t0, t1, h, c) => void steps.push({ t0, t1, h, coefficients: Float64Array.from(c) }),
  };
}
