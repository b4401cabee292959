/**
 * Faults of selectors as they show, each against the healthy run of the same circuit. Sources
 * beside each; amounts and margins: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { at, gauge, PSI } from '../support/one-jack.js';
import { lever, swing, type SwingOptions, type Written } from '../support/small-swing.js';
import { degrees, first, run, time } from '../support/symptom.js';

const ports = {
  pressure: 'pressure',
  return: 'selector-return',
  up: 'selector-up',
  down: 'selector-down',
};
/** The plain swing with a selector of its own. */
const selecting = (selector: Written, own: SwingOptions = {}) =>
  swing('selector', {
    ...own,
    parts: { ...own.parts, selector: { is: 'selector-valve', ports, bore: '6 mm', ...selector } },
  });
const openCentre = { is: 'open-centre-selector', ports, bore: '6 mm', 'kick-out': '900 psi' };
/** Raised and lowered by coils that a controller drives as a lever would. */
const byWire = (own: SwingOptions = {}) =>
  swing('by wire', {
    ...own,
    parts: {
      relays: {
        is: 'controller',
        lever: 'neutral',
        table: {
          rest: { next: [{ if: ['lever up'], to: 'raise' }] },
          raise: { drive: ['up'], next: [{ if: ['lever down'], to: 'lower' }] },
          lower: { drive: ['down'], next: [{ if: ['lever up'], to: 'raise' }] },
        },
      },
      selector: {
        is: 'solenoid-selector',
        ports,
        bore: '6 mm',
        signals: { up: 'relays.up', down: 'relays.down' },
      },
    },
    steps: [
      { at: '0.2 s', device: 'relays', input: 'lever', value: 'up' },
      { at: '7 s', device: 'relays', input: 'lever', value: 'down' },
    ],
  });

/** Flow that the stand still gives with the leg home, m3/s (test T4). */
const stall = (r: Run, t = 6.5): number => at(r, 'supply.delivery', t);

describe('leaks inside, whatever kind of selector (FAA-H-8083-31, function of the part; signs: common practice, no source)', () => {
  it.each([
    ['a lever and an open centre', selecting({ ...openCentre, returns: false })],
    ['coils', byWire()],
  ])('%s: slower up, much flow at stall', (_, host) => {
    const [sound, leaking] = [run(host), run(host, 'selector-leak', 'selector')];
    expect(time(leaking, 'up')).toBeGreaterThan(1.03 * time(sound, 'up'));
    expect(time(leaking, 'up')).toBeLessThan(Infinity);
    expect(stall(leaking)).toBeGreaterThan(stall(sound) + 3e-5);
  });
});

describe('leaks from the up line to return (common practice, no source)', () => {
  // No uplock: oil alone holds the leg up.
  const host = selecting(
    {},
    { parts: { uplock: undefined }, steps: [lever(0.2, 'up'), lever(5, 'neutral')] },
  );
  const [sound, leaking] = [run(host), run(host, 'selector-return-leak', 'selector')];
  it('in neutral what oil holds up sags, and the up gauge falls', () => {
    expect(degrees(sound, 'leg', 13.9)).toBeGreaterThan(89);
    expect(degrees(leaking, 'leg', 13.9)).toBeLessThan(80);
    expect(gauge(leaking, 'up', 6)).toBeLessThan(gauge(sound, 'up', 6) - 50 * PSI);
  });
  it('powered it is home as before', () => {
    expect(degrees(leaking, 'leg', 4.9)).toBeGreaterThan(89.5);
    expect(gauge(leaking, 'up', 4.9)).toBeGreaterThan(0.95 * gauge(sound, 'up', 4.9));
  });
});

describe('feeds the up line in neutral (common practice, no source)', () => {
  // Idle lines drain: what a sound valve feeds into the up line its way to return takes off again,
  // and the oil that a rising leg pushes out of the down line finds a way home.
  const idle = {
    leak: '1e-14 m^3/(s Pa)',
    'leak-return-up': '1e-12 m^3/(s Pa)',
    'leak-return-down': '1e-11 m^3/(s Pa)',
  };
  const host = selecting(idle, { steps: [], duration: 12 });
  const [sound, feeding] = [run(host), run(host, 'selector-feed-leak', 'selector')];
  it('pressure appears in the idle line', () => {
    expect(gauge(sound, 'up', 11)).toBeLessThan(30 * PSI);
    expect(gauge(feeding, 'up', 11)).toBeGreaterThan(250 * PSI);
  });
  it('the leg leaves its lock and creeps up by itself', () => {
    expect(first(sound, 'downlock', 'open')).toBe(Infinity);
    expect(first(feeding, 'downlock', 'open')).toBeLessThan(2);
    expect(degrees(sound, 'leg', 11.9)).toBeLessThan(1);
    expect(degrees(feeding, 'leg', 11.9)).toBeGreaterThan(20);
  });
  it('with the supply off, nothing', () => {
    const off = {
      supply: {
        is: 'ground-supply',
        ports: { inlet: 'suction', outlet: 'stand' },
        flow: '3 gal/min',
        pressure: '1000 psi',
        on: false,
      },
    };
    const still = run(
      selecting(idle, { parts: off, steps: [], duration: 4 }),
      'selector-feed-leak',
      'selector',
    );
    expect(degrees(still, 'leg', 3.9)).toBeLessThan(1);
  });
});

describe('short of its detent', () => {
  it('the pump runs on at no pressure and the gear does not go (a home builders’ public archive)', () => {
    const host = selecting(openCentre);
    const [sound, short] = [run(host), run(host, 'selector-not-in-detent', 'selector')];
    const most = (r: Run): number => Math.max(...r.series('pressure.pressure')!.v);
    expect(time(sound, 'up')).toBeLessThan(4);
    expect(most(sound)).toBeGreaterThan(800 * PSI);
    expect(time(short, 'up')).toBe(Infinity);
    expect(most(short)).toBeLessThan(0.3 * most(sound));
    expect(stall(short)).toBeGreaterThan(0.95 * 1.89e-4);
    // The lever looks selected all the while.
    expect(first(short, 'selector', 'up')).toBeLessThan(0.5);
  });
  it('in part: slow, and the gear in transit when a sound one is home (common practice, no source)', () => {
    const host = selecting({});
    const [sound, short] = [run(host), run(host, 'selector-not-in-detent', 'selector', 0.7)];
    const home = first(sound, 'uplock', 'engaged');
    expect(home).toBeLessThan(4);
    expect(degrees(short, 'leg', home)).toBeLessThan(60);
    expect(degrees(short, 'leg', home)).toBeGreaterThan(5);
  });
});

describe('its linkage detached (NTSB report LAX90IA305)', () => {
  it.each([
    ['selector-valve', {}],
    ['open-centre-selector', { ...openCentre, returns: false }],
  ])('%s: stays in its last selection, whatever is asked', (_, kind) => {
    const host = selecting({ ...kind, start: 'down' });
    const [sound, off] = [run(host), run(host, 'selector-linkage-detached', 'selector')];
    expect(time(sound, 'up')).toBeLessThan(5);
    expect(degrees(off, 'leg', 6.5)).toBeLessThan(0.1);
    expect(first(off, 'downlock', 'open')).toBe(Infinity);
    expect(gauge(off, 'down', 6)).toBeGreaterThan(900 * PSI);
    expect(gauge(sound, 'down', 6)).toBeLessThan(50 * PSI);
  });
});

describe('its two lines transposed (NTSB report NYC00IA150)', () => {
  it.each([
    ['a lever', selecting({})],
    ['coils', byWire()],
  ])('%s: with UP nothing but the down gauge, with DOWN the gear goes up', (_, host) => {
    const [sound, crossed] = [run(host), run(host, 'lines-transposed', 'selector')];
    expect(degrees(sound, 'leg', 6.9)).toBeGreaterThan(89);
    expect(degrees(crossed, 'leg', 6.9)).toBeLessThan(1);
    expect(gauge(crossed, 'down', 6)).toBeGreaterThan(900 * PSI);
    expect(degrees(sound, 'leg', 13.5)).toBeLessThan(1);
    expect(degrees(crossed, 'leg', 13.5)).toBeGreaterThan(45);
  });
});
