/**
 * The whole integration against a method that shares nothing with it: ODEX, an explicit
 * extrapolation method (Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I,
 * section II.9), as the general-purpose library `odex`. Same right-hand side, no events.
 */
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { integrate, rodas3, rodas4, type Problem } from '../../packages/core/src/solver/index.js';
import { Network } from '../../packages/core/src/network/index.js';
import { gearUnits } from '../support/gear-units.js';
import { probe, type Probe } from '../support/probe.js';
import { rig } from '../support/rig.js';

interface Odex {
  absoluteTolerance: number[];
  relativeTolerance: number[];
  maxSteps: number;
  initialStepSize: number;
  solve(
    f: (t: number, y: number[]) => number[],
    t: number,
    y: number[],
    end: number,
  ): { y: number[]; outcome: number };
}
// Its own type declarations are TypeScript source that does not pass a strict check.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => Odex };

const AGREE = 1e-6;

/** The end state by ODEX. */
function independent(network: Network, t: number, y: Float64Array, end: number): Float64Array {
  const solver = new Solver(network.size);
  solver.absoluteTolerance = Array.from(network.scale, (s) => 1e-10 * s);
  solver.relativeTolerance = Array.from(network.scale, () => 1e-14);
  solver.maxSteps = 1e6;
  solver.initialStepSize = 1e-7;
  const rate = new Float64Array(network.size);
  const result = solver.solve(
    (at, state) => {
      network.derivatives(at, Float64Array.from(state), rate);
      return Array.from(rate);
    },
    t,
    Array.from(y),
    end,
  );
  expect(result.outcome).toBe(0);
  return Float64Array.from(result.y);
}

/** The end state by the engine's own integrator, on the bare right-hand side. */
function own(
  network: Network,
  t: number,
  y: Float64Array,
  end: number,
  method = rodas4,
  tolerance = 1e-8,
): Float64Array {
  const problem: Problem = {
    size: network.size,
    pattern: network.pattern,
    scale: network.scale,
    fast: network.fast,
    derivatives: (at, s, r) => network.derivatives(at, s, r),
    jacobian: (at, s, r, v) => network.jacobian(at, s, r, v),
    look: () => undefined,
    crossing: () => -1,
    mark: () => undefined,
    marked: () => -1,
    longestStep: () => Infinity,
    nextBreak: () => Infinity,
    jump: () => 'unchanged',
    nameOf: (i) => network.wiring.stateNames[i],
  };
  const state = y.slice();
  const options = { method, tolerance, maxSteps: 1e6, eventWidth: 1e-9 };
  const result = integrate(problem, t, end, state, options, { step: () => undefined });
  expect(result.end).toBe('done');
  return state;
}

/** Largest difference of two states, each in its own size. */
function apart(network: Network, a: Float64Array, b: Float64Array): number {
  return Math.max(...a.map((v, i) => Math.abs(v - b[i]) / network.scale[i]));
}

/** First recorded step after `t` from which `span` seconds are free of events; its start. */
function quiet(p: Probe, t: number, span: number): { t: number; y: Float64Array } {
  for (let k = 0; k < p.record.count; k++) {
    const from = p.record.start(k);
    if (from < t || p.machine.epochs.some((e) => e.t > from && e.t <= from + span)) continue;
    return p.at(k, 0);
  }
  throw new Error('no such span');
}

describe('gear units', () => {
  const p = probe(gearUnits({ units: 1, duration: 4, down: 3.9 }), { tolerance: 1e-4 });

  it.each([
    ['ringing as the selector opens and the leg breaks away', 0.1, 0.01],
    ['on their way up', 1, 0.05],
  ])('%s: the same end state to a millionth of each state’s size', (_, after, span) => {
    const { t, y } = quiet(p, after, span);
    const end = t + span;
    const a = own(p.network, t, y, end);
    const b = independent(p.network, t, y, end);
    // Something happens: the comparison is not of two states that stand still.
    expect(apart(p.network, y, b)).toBeGreaterThan(0.01);
    expect(apart(p.network, a, b)).toBeLessThan(AGREE);
  });

  it('struck by a sudden pressure, the legs ring: the same again, and with third order too', () => {
    const { t, y } = quiet(p, 1, 0.03);
    const hit = y.slice();
    const node = p.network.plan.nodeOf.get('u0-lift')!;
    // Half a per cent more oil: some 80 bar.
    hit[p.network.wiring.contentState[node]] *= 1.005;
    const end = t + 0.03;
    const b = independent(p.network, t, hit, end);
    expect(apart(p.network, own(p.network, t, hit, end), b)).toBeLessThan(AGREE);
    expect(apart(p.network, own(p.network, t, hit, end, rodas3, 1e-7), b)).toBeLessThan(10 * AGREE);
  });
});

describe('two vessels with air under their lids, filled by a supply and drained through holes', () => {
  const made = rig({
    parts: {
      tank: { is: 'reservoir', ports: { outlet: 'tank' } },
      supply: {
        is: 'ground-supply',
        ports: { inlet: 'tank', outlet: 'first' },
        parameters: { flow: 2e-4, pressure: 1e7, on: true },
      },
      between: {
        is: 'orifice',
        ports: { inlet: 'first', outlet: 'second' },
        parameters: { bore: 0.002 },
      },
      drain: {
        is: 'orifice',
        ports: { inlet: 'second', outlet: 'tank' },
        parameters: { bore: 0.0022 },
      },
    },
    nodes: { first: { volume: 5e-4, air: 1e-4 }, second: { volume: 8e-4, air: 2e-4 } },
    oil: { freeAir: 0.01 },
  });

  it('fill to the same state half-way and at rest', () => {
    for (const end of [0.2, 3]) {
      const network = new Network(made.scenario, made.with);
      network.frames.forEach((f, i) => {
        Object.values(f.definition.inputs ?? {}).forEach((_, k) => {
          network.workspace.inputs[network.wiring.inputOffset[i] + k] = 1;
        });
      });
      const y = network.initial();
      const a = own(network, 0, y, end);
      const b = independent(network, 0, y, end);
      expect(apart(network, y, b)).toBeGreaterThan(0.1);
      expect(apart(network, a, b)).toBeLessThan(AGREE);
    }
  });
});
