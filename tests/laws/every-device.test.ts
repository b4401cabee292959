/**
 * Laws of nature for every device of the catalogue, one by one, in a circuit built around it from
 * its declaration: oil and energy are kept, nothing pulls a vacuum, locks do not hold against each
 * other. A new kind is tested on arrival; one that cannot be placed fails with its name.
 */
import { describe, expect, it } from 'vitest';
import { catalogues } from '../../packages/core/src/index.js';
import type { DeviceDefinition } from '../../packages/core/src/define/index.js';
import type { SimulatedRun } from '../../packages/core/src/machine/index.js';
import { outsideWork, playDevice, SUBJECT } from '../support/generators/every-device.js';

/** `LAWS` multiplies how many circuits are built of each kind. */
const SEEDS = Array.from({ length: 3 * Number(process.env.LAWS ?? 1) }, (_, i) => i + 1);
/** Figures of what the rig's own oil is made of (tests/support/rig.ts). */
const VAPOUR = 100;

const kinds = Object.keys(catalogues.components);

/** Energy that came in: what the bounds are shares of, J. */
const turnedOver = (run: SimulatedRun): number => {
  const { energy } = run.account();
  return energy.supplied + Math.abs(energy.weight) + Math.abs(outsideWork(run));
};
const gap = (run: SimulatedRun): number => run.account().energy.gap + outsideWork(run);

function everyValue(run: SimulatedRun, check: (name: string, v: Float64Array) => void): void {
  for (const { name } of run.channels) check(name, run.series(name)!.v);
}

/** That the circuit did something to the device: its modes, its travels, its flows, or pressure at its ports. */
function worked(run: SimulatedRun): boolean {
  if (run.log.some((e) => e.device === SUBJECT && e.kind === 'mode' && e.t > 0)) return true;
  let moved = false;
  everyValue(run, (name, v) => {
    if (name.startsWith(SUBJECT)) moved ||= v.some((value) => value !== v[0]);
  });
  return moved;
}

function checkLocks(run: SimulatedRun): void {
  const { unit } = run.scenario.units;
  if (unit === undefined) return;
  const held = new Set<string>();
  for (const e of run.log) {
    if (e.device !== unit.uplock && e.device !== unit.downlock) continue;
    if (e.to === 'engaged') held.add(e.device);
    else held.delete(e.device);
    expect(held.size, `at ${e.t} s`).toBeLessThan(2);
  }
}

describe.each(kinds)('%s', (kind) => {
  const runs: { seed: number; fine: SimulatedRun; normal: SimulatedRun }[] = [];

  it('can be placed; its circuit works it and is played to the end', () => {
    for (const seed of SEEDS)
      runs.push({
        seed,
        fine: playDevice(kind, seed, { tolerance: 'fine' }),
        normal: playDevice(kind, seed, { tolerance: 'normal' }),
      });
    for (const { seed, fine, normal } of runs) {
      expect(fine.outcome.kind, `seed ${seed}`).toBe('done');
      expect(normal.outcome.kind, `seed ${seed}`).toBe('done');
    }
    expect(runs.some(({ fine }) => worked(fine))).toBe(true);
  });

  it('keeps oil to rounding', () => {
    expect(runs.length).toBe(SEEDS.length);
    for (const { seed, ...both } of runs)
      for (const [name, run] of Object.entries(both)) {
        const { start, end } = run.account().oil;
        expect(start).toBeGreaterThan(0);
        expect(Math.abs(end / start - 1), `seed ${seed}, ${name}`).toBeLessThan(1e-9);
      }
  });

  it('keeps energy as closely as the steps are short', () => {
    expect(runs.length).toBe(SEEDS.length);
    for (const { seed, fine, normal } of runs) {
      expect(Math.abs(gap(fine)), `seed ${seed}`).toBeLessThan(1e-3 * turnedOver(fine));
      // Lines are let go in a few steps here and little work is done: ten times as wide as at `fine`,
      // whose tolerance is two hundred times as small.
      expect(Math.abs(gap(normal)), `seed ${seed}`).toBeLessThan(1e-2 * turnedOver(normal));
    }
    // What is left is the method's error, not a hole in the account: it closes with the tolerance.
    const close = playDevice(kind, SEEDS[0], { tolerance: 'fine', relativeTolerance: 1e-6 });
    expect(Math.abs(gap(close))).toBeLessThan(1e-4 * turnedOver(close));
  });

  it('gives figures only, no pressure below that of vapour, no two locks against each other', () => {
    expect(runs.length).toBe(SEEDS.length);
    for (const { seed, fine, normal } of runs)
      for (const run of [fine, normal]) {
        everyValue(run, (name, v) => {
          expect(v.every(Number.isFinite), `seed ${seed}, ${name}`).toBe(true);
          if (name.endsWith('.pressure'))
            expect(Math.min(...v), `seed ${seed}, ${name}`).toBeGreaterThan(VAPOUR);
        });
        checkLocks(run);
      }
  });
});

describe('the law can fail: it finds what a device hides', () => {
  const without = (kind: string, change: (d: DeviceDefinition) => DeviceDefinition): boolean =>
    SEEDS.some((seed) => {
      const run = playDevice(kind, seed, { tolerance: 'fine' }, change);
      return Math.abs(gap(run)) > 1e-3 * turnedOver(run);
    });

  // Those that end a run under load; what stops, chains and door edges hold is too little to be missed.
  it.each(['sequence-valve', 'single-acting-actuator', 'over-centre-brace', 'bungee'])(
    'the energy in the spring of a %s',
    (kind) => {
      expect(catalogues.components[kind].energy).toBeDefined();
      expect(without(kind, (d) => ({ ...d, energy: undefined }))).toBe(true);
    },
  );

  it('a force nobody pays for', () => {
    const lazy = (d: DeviceDefinition): DeviceDefinition => ({
      ...d,
      equations: (frame) => {
        d.equations?.(frame);
        // Pushes whatever way it goes, and says nothing of it.
        frame.force(0, frame.travelRate(0) * 1e3);
      },
    });
    expect(without('bungee', lazy)).toBe(true);
  });
});
