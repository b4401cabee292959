import { describe, expect, it } from 'vitest';
import { simulateWith, type SimulatedRun } from '../../../packages/core/src/machine/index.js';
import { coordinate, device, flat, rig, step } from '../../support/rig.js';

const PSI = 6894.757;

/** Holds its node at a pressure the card sets, through a wide opening. */
const gauge = device('gauge', {
  ports: {
    line: { title: 'line', volume: 1e-4 },
    drain: { title: 'drain', volume: 0, optional: true },
  },
  inputs: { pressure: { title: 'pressure', quantity: 'pressure', initial: 101_325 } },
  flows: { through: { from: 'drain', to: 'line', source: true } },
  equations: (d) => {
    const g = 1e-10;
    d.flow(0, g * (d.input(0) - d.pressure(0)), 0, -g);
  },
});

interface Story {
  readonly moment: number;
  readonly initial: number;
  readonly steps: readonly (readonly [number, number])[];
  readonly kind?: 'uplock' | 'downlock';
  readonly cable?: readonly [number, number];
  readonly tolerance?: 'normal' | 'fine';
}

/** A leg under a constant moment, a lock at its end, and the pressure at the lock's port over time. */
function tell({
  moment,
  initial,
  steps,
  kind = 'uplock',
  cable,
  tolerance = 'normal',
}: Story): SimulatedRun {
  const made = rig({
    parts: {
      gauge: { is: gauge, ports: { line: 'line', drain: 'tank' } },
      tank: { is: 'reservoir', ports: { outlet: 'tank' } },
      lock: {
        is: kind,
        ports: { release: 'line' },
        links: { leg: { to: 'leg' } },
        parameters: { at: kind === 'uplock' ? 1 : 0, release: 250 * PSI },
      },
    },
    coordinates: { leg: coordinate({ moment: flat(moment), initial, damping: 5 }) },
    steps: [
      ...steps.map(([at, psi]) => step(at, 'gauge', 'pressure', 101_325 + psi * PSI)),
      ...(cable === undefined ? [] : [step(cable[0], 'lock', 'cable', cable[1])]),
    ].sort((a, b) => a.at - b.at),
    duration: 6,
  });
  return simulateWith(made.with, made.scenario, { tolerance });
}
const modes = (run: SimulatedRun): string[] =>
  run.log.filter((e) => e.device === 'lock' && e.kind === 'mode').map((e) => e.to);
const endAngle = (run: SimulatedRun): number => run.series('leg.angle')!.v.at(-1)!;

describe('a lock', () => {
  it('engages when the leg comes home, and says why', () => {
    const run = tell({ moment: 2, initial: 0, steps: [] });
    expect(modes(run)).toEqual(['open', 'engaged']);
    const entry = run.log.find((e) => e.device === 'lock' && e.to === 'engaged')!;
    const at = run.series('leg.angle')!;
    const k = at.t.indexOf(entry.t);
    // The window of 0.008 rad before the locked angle.
    expect(Math.abs(at.v[k] - (1 - 0.008))).toBeLessThan(1e-5);
    // angle = 0.4 t - 0.08 (1 - exp(-5 t)) reaches it at 2.6800 s: within the 1 ms of `normal`.
    expect(Math.abs(entry.t - 2.68)).toBeLessThan(1e-3);
  });

  it('holds the leg against its load within the play', () => {
    // Engaged at the start (the leg stands in the window), then the weight pulls away from the lock.
    const run = tell({ moment: -3, initial: 1, steps: [] });
    expect(modes(run)).toEqual(['engaged']);
    expect(endAngle(run)).toBeGreaterThan(1 - 0.012 - 1e-6);
    expect(endAngle(run)).toBeLessThan(1);
  });

  it('lets go at its release pressure, and the leg falls away', () => {
    const run = tell({ moment: -3, initial: 1, steps: [[1, 300]], tolerance: 'fine' });
    expect(modes(run)).toEqual(['engaged', 'open']);
    expect(endAngle(run)).toBe(0);
    const open = run.log.find((e) => e.device === 'lock' && e.to === 'open')!;
    const p = run.series('line.pressure')!;
    expect(Math.abs(p.v[p.t.indexOf(open.t)] / (101_325 + 250 * PSI) - 1)).toBeLessThan(1e-3);
  });

  it('stays engaged just below its release pressure', () => {
    expect(modes(tell({ moment: -3, initial: 1, steps: [[1, 249]] }))).toEqual(['engaged']);
  });

  it('release dominates: a leg home under release pressure is not locked until the pressure has gone', () => {
    const run = tell({
      moment: 2,
      initial: 0,
      steps: [
        [0, 300],
        [4, 0],
      ],
    });
    expect(modes(run)).toEqual(['open', 'engaged']);
    const home = run.log.find((e) => e.device === 'leg' && e.to === 'at high')!;
    const locked = run.log.find((e) => e.device === 'lock' && e.to === 'engaged')!;
    expect(home.t).toBeLessThan(4);
    expect(locked.t).toBeGreaterThan(4);
    // At 0.7 of the release pressure, not above.
    const p = run.series('line.pressure')!;
    expect(p.v[p.t.indexOf(locked.t)]).toBeLessThan(101_325 + 0.7 * 250 * PSI + 1);
  });

  it('between reset and release pressure it keeps what it was: no chatter', () => {
    const run = tell({
      moment: 2,
      initial: 0,
      steps: [
        [0, 300],
        [3, 200],
        [5, 260],
      ],
    });
    expect(modes(run)).toEqual(['open']);
    expect(run.outcome.kind).toBe('done');
  });

  it('the cable opens it without pressure', () => {
    const run = tell({ moment: -3, initial: 1, steps: [], cable: [2, 1] });
    expect(modes(run)).toEqual(['engaged', 'open']);
    expect(run.log.find((e) => e.to === 'open' && e.device === 'lock')!.t).toBe(2);
  });

  it('a downlock holds the low end in the same way', () => {
    const run = tell({ kind: 'downlock', moment: -2, initial: 1, steps: [[4, 300]] });
    expect(modes(run)).toEqual(['open', 'engaged', 'open']);
    const held = tell({ kind: 'downlock', moment: 3, initial: 0, steps: [] });
    expect(modes(held)).toEqual(['engaged']);
    expect(endAngle(held)).toBeLessThan(0.012 + 1e-6);
  });

  it('an engaged lock never pushes the leg', () => {
    const run = tell({ moment: 2, initial: 0, steps: [] });
    const { v } = run.series('leg.angle')!;
    for (let i = 1; i < v.length; i++) expect(v[i]).toBeGreaterThanOrEqual(v[i - 1] - 1e-6);
  });
});
