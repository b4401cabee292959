/**
 * Faults as they show in a swing of the demo aircraft. How each shows is a trade fact: common
 * practice, no source, unless one is named beside the check.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogues, readScenario, simulate } from '@wheelwell/core';
import type { Run, Scenario } from '@wheelwell/core';

const file = new URL('../../scenarios/hedgelark/hedgelark.yaml', import.meta.url);
const { scenario: read, issues } = readScenario(readFileSync(file, 'utf8'), { file: 'hedgelark' });
if (read === undefined) throw new Error(issues.map((i) => `${i.path}: ${i.message}`).join('\n'));
const demo: Scenario = read;

/** Up at 1 s, down at 20 s, whatever happens in between, so that a stalled gear is lowered too. */
const patient: Scenario = {
  ...demo,
  cards: Object.fromEntries(
    ['healthy', 'engine-pump'].map((name) => {
      const card = demo.cards[name];
      const steps = card.steps.map((s) =>
        s.text === 'down' ? { ...s, after: undefined, at: 20 } : s,
      );
      return [name, { ...card, steps, duration: 45 }];
    }),
  ),
};

function swing(fault?: string, on = '', severity = 1): Run {
  const card = fault === 'pump-worn' ? 'engine-pump' : 'healthy';
  return simulate(patient, {
    card,
    tolerance: 'draft',
    faults: fault === undefined ? [] : [{ fault, on, severity }],
  });
}

/** Time of a unit, s; Infinity when it did not finish. */
function time(run: Run, unit: string, direction: 'up' | 'down'): number {
  const total = run.timings.find((t) => t.unit === unit && t.direction === direction)?.total;
  return total === undefined || Number.isNaN(total) ? Infinity : total;
}

const healthy = swing();

describe('a healthy swing of the demo', () => {
  it('takes 7 to 9 s up and 6 to 8 s down, doors 1 to 2 s, left and right not quite alike', () => {
    for (const unit of ['left', 'right']) {
      expect(time(healthy, unit, 'up')).toBeGreaterThan(7);
      expect(time(healthy, unit, 'up')).toBeLessThan(9);
      expect(time(healthy, unit, 'down')).toBeGreaterThan(6);
      expect(time(healthy, unit, 'down')).toBeLessThan(8);
      const up = healthy.timings.find((t) => t.unit === unit && t.direction === 'up');
      expect((up?.doors ?? 0) - (up?.locked ?? 0)).toBeGreaterThan(1);
      expect((up?.doors ?? 0) - (up?.locked ?? 0)).toBeLessThan(2);
    }
    expect(time(healthy, 'left', 'up')).not.toBeCloseTo(time(healthy, 'right', 'up'), 2);
  });

  it('agrees with the hand calculation: time = volume / flow (handbook formula)', () => {
    // Two leg jacks of 2.0 in bore and 352 mm stroke, the tail's of 1.25 in and 133 mm, 4 gal/min.
    const circle = (d: number): number => (Math.PI / 4) * d * d;
    const volume = 2 * circle(0.0508) * 0.3517 + circle(0.03175) * 0.1327;
    const flow = (4 * 3.785411784e-3) / 60;
    const locked = Math.max(
      ...healthy.timings.filter((t) => t.direction === 'up').map((t) => t.locked - t.start),
    );
    // The lever's travel, compression and the last fraction of a degree: some 0.2 s.
    expect(Math.abs(locked - volume / flow)).toBeLessThan(0.25);
  });
});

describe('every card', () => {
  it.each(Object.keys(demo.cards))(
    '%s raises the flags it is meant to raise, and no other',
    (name) => {
      const run = simulate(demo, { card: name });
      expect(run.outcome.kind).toBe('done');
      const raised = new Set(run.flags.filter((f) => f.severity !== 'note').map((f) => f.rule));
      expect([...raised].sort()).toEqual([...demo.cards[name].expect].sort());
    },
  );
});

/** Faults that say what they slow, each on the first device of the demo they can befall that carries the swing. */
const slowing = Object.values(catalogues.faults).flatMap((fault) => {
  if (fault.slows === undefined) return [];
  const parts = { ...demo.components, ...demo.mechanisms };
  const on = Object.keys(parts).find((name) => fault.befalls.includes(parts[name].is));
  return on === undefined ? [] : [[fault.kind, on, fault] as const];
});

it.each(slowing)('%s on %s slows what it says, the more the worse it is', (kind, on, fault) => {
  const unit = /^(left|right|tail)/.exec(on)?.[0] ?? 'right';
  const ways =
    fault.slows === 'both' ? (['up', 'down'] as const) : ([fault.slows ?? 'up'] as const);
  const runs = [0.35, 0.7].map((s) => swing(kind, on, s));
  const start = kind === 'pump-worn' ? swing('pump-worn', on, 1e-6) : healthy;
  for (const way of ways) {
    const [none, some, much] = [start, ...runs].map((r) => time(r, unit, way));
    // Draft tolerance: events within some hundredths of a second.
    expect(some).toBeGreaterThanOrEqual(none - 0.05);
    expect(much).toBeGreaterThanOrEqual(some - 0.05);
  }
});

describe('a fault shows as the trade knows it', () => {
  it('a leaking piston makes up longer for all, and down no longer for its leg', () => {
    const run = swing('piston-seal-bypass', 'left-leg-jack', 0.5);
    expect(time(run, 'left', 'up')).toBeGreaterThan(time(healthy, 'left', 'up') + 0.15);
    expect(time(run, 'right', 'up')).toBeGreaterThan(time(healthy, 'right', 'up') + 0.1);
    expect(time(run, 'left', 'down')).toBeLessThan(time(healthy, 'left', 'down') + 0.05);
  });

  it('a dry bearing sends its leg last and the other earlier, the total hardly changed', () => {
    const run = swing('dry-bearing', 'left-leg', 1);
    expect(time(run, 'left', 'up')).toBeGreaterThan(time(run, 'right', 'up') + 0.4);
    expect(time(run, 'right', 'up')).toBeLessThan(time(healthy, 'right', 'up') - 0.2);
    const last = (r: Run): number => Math.max(time(r, 'left', 'up'), time(r, 'right', 'up'));
    expect(last(run) - last(healthy)).toBeLessThan(0.5);
  });

  it('a blocked restrictor slows its leg down, not up', () => {
    const run = swing('restrictor-blocked', 'left-leg-restrictor', 0.5);
    expect(time(run, 'left', 'up')).toBeCloseTo(time(healthy, 'left', 'up'), 1);
    expect(time(run, 'left', 'down')).toBeGreaterThan(time(healthy, 'left', 'down') + 2);
  });

  it('a reversed restrictor sends its leg up last and down first', () => {
    const run = swing('restrictor-reversed', 'right-leg-restrictor', 1);
    expect(time(run, 'right', 'up')).toBeGreaterThan(time(run, 'left', 'up') + 1);
    expect(time(run, 'right', 'down')).toBeLessThan(time(run, 'left', 'down') - 1);
  });

  it('a low relief valve lets the gear start as ever and stalls it at the heavy end', () => {
    const run = swing('relief-set-low', 'relief', 0.9);
    const left = run.timings.find((t) => t.unit === 'left' && t.direction === 'up');
    const before = healthy.timings.find((t) => t.unit === 'left' && t.direction === 'up');
    expect((left?.moving ?? 0) - (left?.start ?? 0)).toBeCloseTo(
      (before?.moving ?? 0) - (before?.start ?? 0),
      1,
    );
    expect(time(run, 'left', 'up')).toBe(Infinity);
  });

  it('a worn seal weeping outside leaves the times alone', () => {
    const run = swing('rod-seal-leak', 'left-leg-jack', 1);
    expect(time(run, 'left', 'up')).toBeCloseTo(time(healthy, 'left', 'up'), 1);
    expect(time(run, 'left', 'down')).toBeCloseTo(time(healthy, 'left', 'down'), 1);
  });
});
