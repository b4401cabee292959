/**
 * Symptoms of faults of the emergency system, on the Hedgelark's blow-down cards and, where one
 * fault is to be seen alone, in a small circuit.
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
import type { Run } from '../../packages/core/src/define/index.js';
import { aircraft, valueAt, when } from '../support/aircraft.js';
import { emergency, handle, PULL, type EmergencyOptions } from '../support/emergency.js';
import { lever } from '../support/small-swing.js';
import { degrees, first, run as runSmall, time } from '../support/symptom.js';

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
const flags = (r: Run): string[] => r.flags.filter((f) => f.margin < 0).map((f) => f.rule);

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

/** Both legs hang on their hooks, all lines shut in, and the handle is pulled. */
const blown = (o: Partial<EmergencyOptions> = {}) =>
  emergency({ up: true, steps: [lever(0.1, 'neutral'), handle], duration: 12, ...o });
/** Up and down by oil. */
const swung = emergency({ steps: [lever(0.2, 'up'), lever(9, 'down')], duration: 18 });
/** Down by oil, from the hooks. */
const lowered = emergency({ up: true, steps: [lever(PULL, 'down')], duration: 8 });
const sides = ['left', 'right'] as const;
/** From the handle to the lock of each leg, s. */
const taken = (r: Run): number[] =>
  sides.map((s) => first(r, `${s}-downlock`, 'engaged', PULL) - PULL);
const psi = (r: Run, node: string, t = r.duration): number => {
  const { t: times, v } = r.series(`${node}.pressure`)!;
  const i = times.findIndex((x) => x >= t);
  return (v[i < 0 ? v.length - 1 : i] - r.scenario.ambient) / PSI;
};
const inMode = (r: Run, device: string, t: number): string | undefined =>
  r.log.findLast((e) => e.device === device && e.kind === 'mode' && e.t <= t)?.to;
const last = (r: Run, channel: string): number => r.series(channel)!.v.at(-1)!;
const both = (way: 'up' | 'down', r: Run): number[] => sides.map((s) => time(r, way, s));
/** Up and down by oil as without the fault, within 20 ms. */
function normalIsFine(fault: string, on: string): void {
  const [a, b] = [runSmall(swung, fault, on), runSmall(swung)];
  for (const way of ['up', 'down'] as const)
    both(way, a).forEach((t, i) => expect(Math.abs(t - both(way, b)[i])).toBeLessThan(0.02));
}

describe('in a small circuit', () => {
  const sound = runSmall(blown());

  it('a sound system locks both legs and raises no flag of the emergency rules', () => {
    for (const t of taken(sound)) expect(t).toBeLessThan(6);
    expect(flags(sound).filter((rule) => rule !== 'cavitation')).toEqual([]);
  });

  it('DOWN selected after the handle is the same lowering, not another one', () => {
    const late = [lever(0.1, 'neutral'), handle, lever(0.8, 'down')];
    const r = runSmall(blown({ steps: late }));
    expect(flags(r).filter((rule) => rule !== 'cavitation')).toEqual([]);
    expect(r.flags.some((f) => f.rule === 'blow-down-time' && f.margin > 0)).toBe(true);
  });

  // Field report: the other leg locks, this one stays on its hook, no normal swing shows it.
  it('a shuttle stuck on its normal side: that leg does nothing, the other locks', () => {
    const r = runSmall(blown(), 'shuttle-stuck-normal', 'left-shuttle');
    expect(degrees(r, 'left-leg', r.duration)).toBeGreaterThan(88);
    expect(taken(r)[1]).toBeLessThan(6);
    expect(flags(r)).toEqual(
      expect.arrayContaining(['leg-not-locked', 'shuttle-not-shifted', 'blow-down-spread']),
    );
    normalIsFine('shuttle-stuck-normal', 'left-shuttle');
  });

  // Common practice, no source: its oil cannot leave, or it has no power down.
  it('a shuttle stuck on its emergency side: that leg does not go up, and has no power down', () => {
    const up = runSmall(swung, 'shuttle-stuck-emergency', 'left-shuttle');
    expect(first(up, 'left-uplock', 'engaged', 0.2)).toBe(Infinity);
    expect(first(up, 'right-leg', 'at up', 0.2)).toBeLessThan(9);
    const down = runSmall(lowered, 'shuttle-stuck-emergency', 'left-shuttle');
    expect(time(down, 'down', 'left')).toBe(Infinity);
    expect(time(down, 'down', 'right')).toBeLessThan(4);
    expect(time(runSmall(lowered), 'down', 'left')).toBeLessThan(4);
    // It stands where gas needs it: no shuttle is to blame in a blow-down.
    const blow = runSmall(blown(), 'shuttle-stuck-emergency', 'left-shuttle');
    expect(flags(blow)).not.toContain('shuttle-not-shifted');
    for (const t of taken(blow)) expect(t).toBeLessThan(6);
  });

  // Common practice, no source: the bottle loses, and what it loses foams in the reservoir.
  it('a shuttle that leaks across: foam in the reservoir, and less left in the bottle', () => {
    const circuit = blown({ parts: { selector: { centre: 'lines-to-return' } } });
    const tight = runSmall(circuit);
    const r = runSmall(circuit, 'shuttle-cross-leak', 'left-shuttle');
    expect(last(r, 'tank.gas')).toBeGreaterThan(last(tight, 'tank.gas') + 1e-3);
    expect(last(r, 'bottle.gauge')).toBeLessThan(last(tight, 'bottle.gauge') - 15 * PSI);
    expect([flags(r), flags(tight)].map((f) => f.includes('gas-in-return'))).toEqual([true, false]);
  });

  // Common practice, no source: slow or stopped on all legs, the up line stays under pressure.
  it('a dump valve that opens a little makes both legs slow, one that is shut stops both', () => {
    const slow = runSmall(blown(), 'dump-valve-not-venting', 'dump', 0.9);
    taken(slow).forEach((t, i) => expect(t).toBeGreaterThan(taken(sound)[i] + 2));
    const shut = runSmall(blown(), 'dump-valve-not-venting', 'dump');
    expect(taken(shut)).toEqual([Infinity, Infinity]);
    expect(psi(shut, 'up')).toBeGreaterThan(1000);
    expect(psi(sound, 'up')).toBeLessThan(20);
    normalIsFine('dump-valve-not-venting', 'dump');
  });

  // Owners' thread: nothing moves on UP, three greens, the pump runs freely; DOWN is fine.
  it('a dump valve left open: no UP, and DOWN as ever', () => {
    const up = runSmall(swung, 'dump-valve-open', 'dump');
    for (const s of sides) {
      // The oil that stood under pressure kicks the locks for a moment when the lever is moved.
      expect(inMode(up, `${s}-downlock`, 8)).toBe('engaged');
      expect(degrees(up, `${s}-leg`, 8)).toBeLessThan(1);
      expect(inMode(runSmall(swung), `${s}-downlock`, 8)).toBe('open');
    }
    expect(psi(up, 'pressure', 8)).toBeLessThan(300);
    expect(psi(runSmall(swung), 'pressure', 8)).toBeGreaterThan(900);
    const down = both('down', runSmall(lowered, 'dump-valve-open', 'dump'));
    both('down', runSmall(lowered)).forEach((t, i) =>
      expect(Math.abs(t - down[i])).toBeLessThan(0.05),
    );
  });

  // The same, leaking: what is lost is missing on the way up.
  it('a dump valve that leaks makes UP slow', () => {
    const r = both('up', runSmall(swung, 'dump-valve-open', 'dump', 0.03));
    both('up', runSmall(swung)).forEach((t, i) => expect(r[i]).toBeGreaterThan(t + 0.1));
  });

  // Common practice, no source: slow everywhere, then incomplete everywhere; only the gauge tells before.
  it('a bottle that is low: both legs slow, then neither, and only its gauge tells before', () => {
    const slow = runSmall(blown(), 'bottle-low', 'bottle', 0.5);
    taken(slow).forEach((t, i) => expect(t).toBeGreaterThan(taken(sound)[i] + 0.3));
    const none = runSmall(blown(), 'bottle-low', 'bottle', 0.65);
    expect(taken(none)).toEqual([Infinity, Infinity]);
    expect(flags(none)).toEqual(expect.arrayContaining(['gas-exhausted', 'bottle-charge']));
    normalIsFine('bottle-low', 'bottle');
    expect(flags(runSmall(swung, 'bottle-low', 'bottle'))).toContain('bottle-charge');
  });

  // Common practice, no source: charge lost standing, gas in the down side, which resists UP.
  it('a bottle valve that leaks down: charge lost, gas pressure in the down side, no UP', () => {
    const r = runSmall(swung, 'bottle-valve-leak', 'blow-down', 0.5);
    const tight = runSmall(swung);
    expect(last(r, 'bottle.gauge')).toBeLessThan(last(tight, 'bottle.gauge') - 30 * PSI);
    // More than the 29 psi that shift a shuttle: from then on gas stands in the down side.
    expect(psi(r, 'left-pushed', 8.9)).toBeGreaterThan(psi(tight, 'left-pushed', 8.9) + 29);
    for (const s of sides) {
      expect(first(r, `${s}-shuttle`, 'emergency')).toBeLessThan(9);
      expect(first(r, `${s}-uplock`, 'engaged', 0.2)).toBe(Infinity);
      expect(first(tight, `${s}-uplock`, 'engaged', 0.2)).toBeLessThan(9);
    }
  });

  // Common practice, no source: the handle comes, nothing discharges; nothing else is to blame.
  it('a broken blow-down cable: nothing discharges', () => {
    const r = runSmall(blown(), 'blow-down-cable-broken', 'blow-down');
    expect(taken(r)).toEqual([Infinity, Infinity]);
    expect(psi(r, 'gas')).toBeLessThan(5);
    expect(last(r, 'bottle.gauge')).toBeGreaterThan(1450 * PSI);
    for (const rule of ['retract-side-not-vented', 'shuttle-not-shifted', 'gas-exhausted'])
      expect(flags(r)).not.toContain(rule);
  });

  // Common practice, no source: the gas goes into the bay, nothing moves.
  it('a bottle line that has parted: the bottle empties, neither leg moves', () => {
    const parted = { 'gas-tube': { ports: { inlet: 'gas-feed', outlet: 'outside' } } };
    const nodes = { outside: { note: 'the bay' } };
    const r = runSmall(blown({ parts: parted, nodes, duration: 30 }));
    for (const s of sides) expect(degrees(r, `${s}-leg`, r.duration)).toBeGreaterThan(88);
    expect(last(r, 'bottle.gauge')).toBeLessThan(75 * PSI);
    const [flag] = r.flags.filter((f) => f.rule === 'gas-exhausted');
    expect(flag.devices).toEqual(['bottle', 'left-leg', 'right-leg']);
    expect(flag.explanation).toContain('empty');
    expect(flags(r)).not.toContain('retract-side-not-vented');
  });

  // Common practice, no source: a way out that is blocked at one leg, behind a dump valve that works.
  it('a restrictor blocked on the way out of one up side holds that leg, and is found there', () => {
    const r = runSmall(blown(), 'restrictor-blocked', 'left-restrictor');
    expect(taken(r)[0]).toBe(Infinity);
    expect(psi(r, 'up')).toBeLessThan(20);
    const [flag] = r.flags.filter((f) => f.rule === 'retract-side-not-vented' && f.margin < 0);
    expect(flag.devices).toEqual(['left-jack', 'left-lift', 'left-leg']);
  });
});
