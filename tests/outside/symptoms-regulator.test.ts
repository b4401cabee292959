/**
 * Faults of unloader, accumulator and thermal relief valve as they show, each against the healthy run
 * of the same circuit. Sources beside each; amounts and margins: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { at, gauge, PSI } from '../support/one-jack.js';
import { lever, swing, type SmallSwing, type Written } from '../support/small-swing.js';
import { begins, enginePump, turning } from '../support/engine-supply.js';
import { run, time } from '../support/symptom.js';

/** An engine's pump behind an unloader; two litres of accumulator; services that use a little. */
const regulated = (name: string, use: string, steps: readonly Written[]): SmallSwing =>
  swing(name, {
    parts: {
      supply: enginePump,
      accumulator: {
        is: 'accumulator',
        ports: { oil: 'pressure' },
        volume: '2 L',
        precharge: '500 psi',
      },
      use: { is: 'orifice', ports: { inlet: 'pressure', outlet: 'tank' }, bore: use },
      tank: { is: 'reservoir', ports: { outlet: 'tank' }, capacity: '10 L', level: '8 L' },
    },
    between: {
      delivery: {
        is: 'unloader',
        ports: { return: 'tank' },
        'cut-out': '1100 psi',
        'cut-in': '900 psi',
      },
    },
    steps,
    duration: 40,
  });

const ticking = regulated('regulator at work', '0.5 mm', [turning(0.05)]);
const UNLOADER = 'in-delivery';

/** First whole cut-in and cut-out times, s: from cut-out to cut-in, and from there to cut-out. */
function clock(r: Run): { readonly cutIn: number; readonly cutOut: number } {
  const [first, second] = begins(r, UNLOADER, 'unloaded');
  const back = begins(r, UNLOADER, 'loading').find((t) => t > first)!;
  return { cutIn: back - first, cutOut: second - back };
}
const sound = run(ticking);
const healthy = clock(sound);

describe('the two times of a regulator (NAVEDTRA 14329, troubleshooting of the pressure regulator)', () => {
  it('by-pass leaking: cut-out time long, cut-in time normal', () => {
    const r = clock(run(ticking, 'unloader-bypass-leak', UNLOADER, 0.7));
    expect(r.cutOut).toBeGreaterThan(1.3 * healthy.cutOut);
    expect(r.cutIn / healthy.cutIn).toBeCloseTo(1, 1);
  });
  it('check valve leaking: cut-out time normal, cut-in too soon', () => {
    const r = clock(run(ticking, 'unloader-check-leak', UNLOADER));
    expect(r.cutOut / healthy.cutOut).toBeCloseTo(1, 1);
    expect(r.cutIn).toBeLessThan(0.5 * healthy.cutIn);
  });
  it('a leak of the working system: cut-out long and cut-in soon (reasoning on the same page)', () => {
    const r = clock(run(ticking, 'working-system-leak', 'accumulator'));
    expect(r.cutOut).toBeGreaterThan(1.15 * healthy.cutOut);
    expect(r.cutIn).toBeLessThan(0.5 * healthy.cutIn);
  });
});

/** The pump stops at 5 s and nothing is used but by a small bleed. */
const stopped = regulated('pump stopped', '0.1 mm', [turning(0.05), turning(5, 0)]);
/** The same with a bleed wide enough to empty the accumulator. */
const bled = regulated('bled slowly', '0.7 mm', [turning(0.05), turning(5, 0)]);

describe('check valve of the unloader leaks, pump off (NAVEDTRA 14329)', () => {
  it('the pressure drops', () => {
    const r = run(stopped, 'unloader-check-leak', UNLOADER);
    const fall = (of: Run): number => gauge(of, 'pressure', 5.5) - gauge(of, 'pressure', 12);
    expect(fall(r)).toBeGreaterThan(fall(run(stopped)) + 100 * PSI);
  });
});

describe('accumulator precharge gone (public A&P study questions)', () => {
  it('rapid cut-in and cut-out', () => {
    const r = run(ticking, 'accumulator-precharge-low', 'accumulator');
    expect(begins(r, UNLOADER, 'unloaded').length).toBeGreaterThan(
      4 * begins(sound, UNLOADER, 'unloaded').length,
    );
  });
  it('pressure gone at shut-off', () => {
    const r = run(bled, 'accumulator-precharge-low', 'accumulator');
    expect(gauge(run(bled), 'pressure', 8)).toBeGreaterThan(700 * PSI);
    expect(gauge(r, 'pressure', 8)).toBeLessThan(300 * PSI);
  });
});

/** Pressure at which the accumulator has run empty while it is bled: the needle drops from there. */
function drops(r: Run): number {
  const stored = r.series('accumulator.stored')!;
  const full = at(r, 'accumulator.stored', 5);
  const i = stored.t.findIndex((t, k) => t > 5 && stored.v[k] < 0.03 * full);
  return gauge(r, 'accumulator.cushion', stored.t[i]);
}

describe('accumulator precharge too high (NAVEDTRA 14018, 14315; amounts common practice, no source)', () => {
  const [a, b] = [run(bled), run(bled, 'accumulator-precharge-high', 'accumulator', 0.4)];
  it('little oil stored', () => {
    expect(at(b, 'accumulator.stored', 5)).toBeLessThan(0.5 * at(a, 'accumulator.stored', 5));
  });
  it('the needle drops from a high value, from the precharge', () => {
    expect(Math.abs(drops(a) / (500 * PSI) - 1)).toBeLessThan(0.08);
    expect(Math.abs(drops(b) / (800 * PSI) - 1)).toBeLessThan(0.08);
  });
});

describe('oil in the gas side of the accumulator (NAVEDTRA 14018, 14315)', () => {
  const [a, b] = [run(bled), run(bled, 'accumulator-seal-leak', 'accumulator')];
  it('the precharge is not what it was, and little oil is stored', () => {
    expect(at(b, 'accumulator.stored', 5)).toBeLessThan(0.5 * at(a, 'accumulator.stored', 5));
    expect(drops(b)).toBeLessThan(0.7 * drops(a));
  });
  it('the unloader cuts in and out more often', () => {
    const r = run(ticking, 'accumulator-seal-leak', 'accumulator');
    expect(clock(r).cutIn).toBeLessThan(0.5 * healthy.cutIn);
  });
});

/** A selector with tight seats: the lands of a spool would let what is trapped out in seconds. */
const tight = {
  is: 'selector-valve',
  ports: {
    pressure: 'pressure',
    return: 'selector-return',
    up: 'selector-up',
    down: 'selector-down',
  },
  bore: '6 mm',
  leak: '1e-17 m^3/(s Pa)',
};

/** A thermal relief valve on a line; warm oil, and a small stand. */
const guarded = (
  on: string,
  own: { fluid?: Written; steps?: readonly Written[] } = {},
): SmallSwing =>
  swing(`thermal relief valve, ${on} line`, {
    parts: {
      selector: tight,
      guard: {
        is: 'thermal-relief',
        ports: { inlet: on, outlet: 'tank' },
        crack: '1500 psi',
        full: '1650 psi',
      },
      supply: {
        is: 'ground-supply',
        ports: { inlet: 'suction', outlet: 'stand' },
        flow: '1 gal/min',
        pressure: '1000 psi',
        on: true,
      },
    },
    fluid: { temperature: '40 degC' },
    steps: [lever(0.2, 'up'), lever(20, 'down')],
    duration: 30,
    ...own,
  });

describe('thermal relief valve stuck open (NTSB report WPR14LA059)', () => {
  const host = guarded('up');
  const [a, b] = [run(host), run(host, 'thermal-relief-stuck-open', 'guard')];
  it('only that side is weak: slow and low at stall, the other way normal', () => {
    expect(time(b, 'up')).toBeGreaterThan(1.2 * time(a, 'up'));
    expect(gauge(b, 'up', 19)).toBeLessThan(0.8 * gauge(a, 'up', 19));
    expect(time(b, 'down') / time(a, 'down')).toBeCloseTo(1, 1);
    expect(gauge(b, 'down', 29) / gauge(a, 'down', 29)).toBeCloseTo(1, 2);
  });
  it('what oil holds sags on that side', () => {
    const steps = [lever(0.2, 'up'), lever(5, 'neutral')];
    const half = guarded('up', { steps });
    const sag = (r: Run): number => at(r, 'leg.angle', 5.3) - at(r, 'leg.angle', 8);
    expect(at(run(half), 'leg.angle', 5.3)).toBeGreaterThan(0.6);
    expect(sag(run(half, 'thermal-relief-stuck-open', 'guard'))).toBeGreaterThan(
      sag(run(half)) + 0.05,
    );
  });
});

describe('thermal relief valve set high (expansion x modulus; common practice, no source)', () => {
  it('the pressure of a shut-off line climbs with warmth past where the valve should let it off', () => {
    const host = guarded('down', {
      fluid: { temperature: '40 degC', 'warmed-by': '30 K' },
      steps: [],
    });
    const [a, b] = [run(host), run(host, 'thermal-relief-set-high', 'guard')];
    expect(gauge(a, 'down', 29)).toBeLessThan(1650 * PSI);
    expect(gauge(b, 'down', 29)).toBeGreaterThan(gauge(a, 'down', 29) + 500 * PSI);
  });
});
