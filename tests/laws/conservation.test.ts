/**
 * Laws of nature over generated gear systems: nothing is lost, nothing pulls a vacuum, no lock
 * holds against another. Seeded, so a failure repeats.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogues } from '../../packages/core/src/index.js';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import type { Scenario } from '../../packages/core/src/define/index.js';
import { gear, gearScenario } from '../support/generators/gear.js';

const G = 9.80665;
const systems = fc.sample(gear, { seed: 4, numRuns: 24 });
const runs = systems.map((g) => simulateWith(catalogues, gearScenario(g)));
const each = (check: (run: SimulatedRun, scenario: Scenario) => void): void => {
  runs.forEach((run, i) => {
    try {
      check(run, run.scenario);
    } catch (error) {
      throw new Error(`system ${i}: ${JSON.stringify(systems[i])}`, { cause: error });
    }
  });
};

/** Upper bound of the work that weight did and took, J: weight times arm times all angles swept. */
function turnedOver(run: SimulatedRun): number {
  let sum = 0;
  for (const [name, m] of Object.entries(run.scenario.mechanisms)) {
    const { v } = run.series(`${name}.angle`)!;
    let swept = 0;
    for (let i = 1; i < v.length; i++) swept += Math.abs(v[i] - v[i - 1]);
    sum += (m.parameters.mass as number) * G * (m.parameters.cog as number) * swept;
  }
  return sum;
}

describe('over generated gear systems', () => {
  it('every card is played to its end, and the systems do differ', () => {
    each((run) => expect(run.outcome.kind).toBe('done'));
    expect(new Set(runs.map((r) => r.log.length)).size).toBeGreaterThan(10);
    // Some finish a whole swing, some are caught half-way.
    const swung = runs.filter((r) => r.log.some((e) => e.to === 'up and closed'));
    expect(swung.length).toBeGreaterThan(3);
    expect(swung.length).toBeLessThan(runs.length);
  });

  it('oil is conserved to rounding', () => {
    each((run) => {
      const { start, end } = run.account().oil;
      expect(start).toBeGreaterThan(0);
      expect(Math.abs(end / start - 1)).toBeLessThan(1e-9);
    });
  });

  it('energy is conserved within 0.1 % of what was supplied', () => {
    each((run) => {
      const { energy } = run.account();
      expect(Math.abs(energy.gap)).toBeLessThan(1e-3 * energy.supplied);
    });
  });

  it('and within 0.005 % with the fine tolerance', () => {
    systems.slice(0, 12).forEach((g) => {
      const run = simulateWith(catalogues, gearScenario(g), { tolerance: 'fine' });
      const { energy } = run.account();
      expect(Math.abs(energy.gap)).toBeLessThan(5e-5 * (energy.supplied + turnedOver(run)));
    });
  });

  it('the draft tolerance loses no oil and pulls no vacuum either', () => {
    systems.slice(0, 12).forEach((g) => {
      const run = simulateWith(catalogues, gearScenario(g), { tolerance: 'draft' });
      const { start, end } = run.account().oil;
      expect(Math.abs(end / start - 1)).toBeLessThan(1e-9);
      for (const c of run.channels) {
        if (c.name.endsWith('.pressure'))
          expect(Math.min(...run.series(c.name)!.v)).toBeGreaterThan(0);
      }
    });
  });

  it('what is turned to heat is never negative', () => {
    each((run) => {
      const { energy } = run.account();
      for (const part of [energy.throttled, energy.rubbed, energy.struck, energy.supplied]) {
        expect(part).toBeGreaterThanOrEqual(-1e-6 * energy.supplied);
      }
    });
  });

  it('no node ever has a negative absolute pressure, or less than the oil’s vapour pressure', () => {
    each((run, scenario) => {
      const floor = catalogues.fluids[scenario.fluid.kind].vapourPressure;
      const names = run.channels.filter((c) => c.name.endsWith('.pressure')).map((c) => c.name);
      expect(names.length).toBeGreaterThan(4);
      for (const name of names) expect(Math.min(...run.series(name)!.v)).toBeGreaterThan(floor);
    });
  });

  it('the locks of a unit are never both engaged', () => {
    each((run, scenario) => {
      for (const unit of Object.values(scenario.units)) {
        const held = new Map<string, boolean>();
        for (const e of run.log) {
          if (e.device !== unit.uplock && e.device !== unit.downlock) continue;
          held.set(e.device, e.to === 'engaged');
          expect(held.get(unit.uplock!) === true && held.get(unit.downlock!) === true).toBe(false);
        }
      }
    });
  });

  it('no mechanism ever leaves its travel', () => {
    each((run, scenario) => {
      for (const [name, m] of Object.entries(scenario.mechanisms)) {
        const { v } = run.series(`${name}.angle`)!;
        // A guard ends its step just past the stop.
        expect(Math.min(...v)).toBeGreaterThan(-1e-4);
        expect(Math.max(...v)).toBeLessThan((m.parameters.travel as number) + 1e-4);
      }
    });
  });

  it('causes always lie in the past', () => {
    each((run) => {
      for (const e of run.log) {
        expect(e.by).toBeLessThan(e.index);
        if (e.by >= 0) expect(run.log[e.by].t).toBeLessThanOrEqual(e.t);
      }
    });
  });
});
