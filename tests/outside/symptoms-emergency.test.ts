/**
 * Symptoms of faults of the emergency system, on the Hedgelark's blow-down cards.
 *
 * Sources: doors before legs, dump valves that keep a fluid lock from forming, one bottle that works
 * all: NAVEDTRA 14315 fig. 13-4 and NAVEDTRA 14018 pp. 444-446 (from memory); one seized shuttle
 * defeats the blow-down for one leg while the normal system shows nothing: field report behind a
 * service difficulty summary; an emergency selector that was not reset, no motion on UP with three
 * greens and a pump that runs freely: owners' question-and-answer thread. The rest is common
 * practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { SimulatedRun } from '../../packages/core/src/machine/index.js';
import { aircraft, valueAt, when } from '../support/aircraft.js';

const PSI = 6894.757;
const { scenario, run, play } = aircraft('hedgelark');
const healthy = run('blow-down');
const faulty = (card: string, fault: string, on: string, severity = 1): SimulatedRun =>
  play(card, { faults: [{ fault, on, severity }] });
const locked = (r: SimulatedRun, unit: string): boolean =>
  r.log.some((e) => e.device === `${unit}-downlock` && e.to === 'engaged' && e.t > 0);
const units = ['left', 'right', 'tail'];
const gauge = (r: SimulatedRun, node: string, t: number): number =>
  node === 'bottle'
    ? valueAt(r, 'bottle.gauge', t)
    : valueAt(r, `${node}.pressure`, t) - scenario.ambient;
const flags = (r: SimulatedRun): string[] => r.flags.filter((f) => f.margin < 0).map((f) => f.rule);

describe('a sound blow-down', () => {
  it('opens the doors before it draws the hooks, and locks every leg', () => {
    for (const side of ['left', 'right']) {
      expect(when(healthy, `${side}-door`, 'at open')).toBeLessThan(
        when(healthy, `${side}-uplock`, 'open'),
      );
    }
    for (const unit of units) expect(locked(healthy, unit), unit).toBe(true);
  });

  it('leaves the bottle between the pressures of no heat and of all heat (P V^1.4, P V)', () => {
    // Swept: two legs and doors, the tail, and the gas lines; the bottle's 1.4 L at 1800 psi.
    const swept = 2 * 576e-6 + 2 * 115e-6 + 79e-6;
    const lines = (Math.PI / 4) * 0.0049 ** 2 * (1.5 + 2.5 + 3 + 6);
    const left = gauge(healthy, 'bottle', healthy.duration) / PSI;
    const ratio = 1.4e-3 / (1.4e-3 + swept + lines);
    expect(left).toBeGreaterThan(1815 * ratio ** 1.4 - 15);
    expect(left).toBeLessThan(1815 * ratio - 15);
  });

  it('keeps the gas out of the reservoir', () => {
    expect(flags(healthy)).not.toContain('gas-in-return');
  });
});

describe('a shuttle stuck on its normal side', () => {
  const r = faulty('blow-down', 'shuttle-stuck-normal', 'left-shuttle');
  it('leaves its leg up while the others lock', () => {
    expect(units.map((u) => locked(r, u))).toEqual([false, true, true]);
    expect(flags(r)).toContain('shuttle-not-shifted');
  });

  it('shows nothing in a normal swing', () => {
    const sound = run('healthy');
    const stuck = faulty('healthy', 'shuttle-stuck-normal', 'left-shuttle');
    const times = (x: SimulatedRun): number[] => x.timings.map((t) => t.total);
    times(stuck).forEach((t, i) => expect(Math.abs(t - times(sound)[i])).toBeLessThan(0.01));
  });
});

describe('a shuttle stuck on its emergency side', () => {
  it('keeps its leg from going up: its oil cannot leave', () => {
    const r = faulty('healthy', 'shuttle-stuck-emergency', 'left-shuttle');
    const up = r.timings.filter((t) => t.direction === 'up');
    expect(up.find((t) => t.unit === 'left')?.locked).toBeNaN();
    expect(up.find((t) => t.unit === 'right')?.locked).toBeGreaterThan(0);
  });
});

describe('a shuttle that leaks across', () => {
  it('lets gas into the normal lines', () => {
    const steps = [
      { at: 0.2, device: 'selector', input: 'lever', value: 2, text: 'down' },
      { at: 1, device: 'blow-down', input: 'handle', value: 2, text: 'open' },
    ];
    const gas = (fault: boolean): number => {
      const faults = fault
        ? [{ fault: 'shuttle-cross-leak', on: 'left-shuttle', severity: 1 }]
        : [];
      const r = play('blow-down', { steps, faults });
      return valueAt(r, 'left-down-end.gas', r.duration) + valueAt(r, 'down-tee.gas', r.duration);
    };
    expect(gas(true)).toBeGreaterThan(5 * gas(false) + 1e-4);
  });
});

describe('a dump valve that does not open', () => {
  const r = faulty('blow-down', 'dump-valve-not-venting', 'dump');
  it('stops the blow-down on all legs, with the up line under pressure', () => {
    for (const unit of units) expect(locked(r, unit), unit).toBe(false);
    expect(gauge(r, 'up-tee', 15)).toBeGreaterThan(400 * PSI);
    expect(gauge(healthy, 'up-tee', 15)).toBeLessThan(50 * PSI);
    expect(flags(r)).toContain('retract-side-not-vented');
  });

  it('shows nothing in a normal swing', () => {
    const swing = faulty('healthy', 'dump-valve-not-venting', 'dump');
    expect(swing.timings.map((t) => t.total)).toEqual(run('healthy').timings.map((t) => t.total));
  });
});

describe('a dump valve left open', () => {
  const r = faulty('bottle-valve-leaking', 'dump-valve-open', 'dump');
  const steps = scenario.cards['doors-early'].steps;
  const swing = play('healthy', {
    steps,
    faults: [{ fault: 'dump-valve-open', on: 'dump', severity: 1 }],
  });
  it('UP: nothing moves, three greens, the supply runs freely', () => {
    expect(
      swing.timings.filter((t) => t.direction === 'up').every((t) => Number.isNaN(t.locked)),
    ).toBe(true);
    for (const unit of units)
      expect(swing.log.some((e) => e.device === `${unit}-downlock` && e.to === 'open')).toBe(false);
    expect(gauge(swing, 'pressure', 10)).toBeLessThan(400 * PSI);
    expect(gauge(run('healthy'), 'pressure', 10)).toBeGreaterThan(1000 * PSI);
    expect(r.outcome.kind).toBe('done');
  });
});

describe('a bottle that is low', () => {
  it('is slow or incomplete everywhere, with a low gauge at the end', () => {
    const r = faulty('blow-down', 'bottle-low', 'bottle', 0.3);
    for (const unit of units) {
      const late =
        when(r, `${unit}-downlock`, 'engaged') - when(healthy, `${unit}-downlock`, 'engaged');
      expect(late, unit).toBeGreaterThan(0.1);
    }
    expect(gauge(r, 'bottle', 15)).toBeLessThan(0.8 * gauge(healthy, 'bottle', 15));
    const empty = faulty('blow-down', 'bottle-low', 'bottle', 0.75);
    expect(locked(empty, 'left')).toBe(false);
    expect(flags(empty)).toEqual(expect.arrayContaining(['bottle-charge', 'gas-exhausted']));
  });
});

describe('a bottle valve that leaks down', () => {
  const r = faulty('bottle-valve-leaking', 'bottle-valve-leak', 'blow-down', 0.3);
  const sound = play('bottle-valve-leaking', { faults: [] });
  it('loses charge standing, and its gas stands in the down side', () => {
    expect(gauge(r, 'bottle', 19)).toBeLessThan(gauge(sound, 'bottle', 19) - 5e4);
    expect(gauge(r, 'left-down', 19)).toBeGreaterThan(10 * PSI);
    expect(gauge(sound, 'left-down', 19)).toBeLessThan(10 * PSI);
  });

  it('resists UP', () => {
    expect(when(r, 'left-leg', 'at up', 20)).not.toBeLessThan(when(sound, 'left-leg', 'at up', 20));
  });
});

describe('a broken blow-down cable', () => {
  it('lets the handle come and nothing discharges', () => {
    const r = faulty('blow-down', 'blow-down-cable-broken', 'blow-down');
    expect(gauge(r, 'bottle', 15) / gauge(r, 'bottle', 0.5)).toBeCloseTo(1, 2);
    for (const unit of units) expect(locked(r, unit), unit).toBe(false);
    // No gas has come, so no shuttle is to blame.
    expect(flags(r)).not.toContain('shuttle-not-shifted');
  });
});
