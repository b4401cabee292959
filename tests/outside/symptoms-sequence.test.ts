/**
 * Faults of sequence and priority valves as they show, each against the healthy run of the same
 * gear: a door that closes behind its leg and opens before it. Sources beside each; amounts and
 * margins: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { at, gauge, PSI } from '../support/one-jack.js';
import { door } from '../support/fault-hosts.js';
import { leg, lever, swing, type SwingOptions, type Written } from '../support/small-swing.js';
import { degrees, first, run, time } from '../support/symptom.js';

/** The gear with a door, with parts of a test's own. */
const doored = (parts: Readonly<Record<string, Written>> = {}, own: SwingOptions = {}) =>
  swing('door', { ...door, ...own, parts: { ...door.parts, ...parts, ...own.parts } });

/** A valve worked by pressure, drained to the tank, in the place of the one that closes the door. */
const byPressure = {
  'close-valve': {
    is: 'pressure-sequence-valve',
    ports: { inlet: 'up', outlet: 'door-close', outside: 'tank' },
    crack: '800 psi',
    full: '900 psi',
    bore: '1.2 mm',
  },
};
/** As a priority valve: the leg first, the door only with pressure in hand. */
const byPriority = {
  'close-valve': {
    is: 'priority-valve',
    ports: { inlet: 'selector-up', priority: 'up', secondary: 'door-close', outside: 'tank' },
    crack: '800 psi',
    full: '900 psi',
    bore: '1.2 mm',
  },
  // A priority valve lets nothing back.
  'way-back': { is: 'check-valve', ports: { inlet: 'door-close', outlet: 'selector-up' } },
};

/** A priority valve is none of a unit’s sequence valves. */
const noOrder = { unit: { doors: ['door'], sequence: ['lower-valve'] } };

const legHome = (r: Run): number => first(r, 'uplock', 'engaged');
const doorGoes = (r: Run): number => first(r, 'door', 'falling');
const doorHome = (r: Run): number => first(r, 'door', 'at closed');

const plain = doored();
const sound = run(plain);

it('a sound gear closes its door when the leg is home', () => {
  expect(doorGoes(sound)).toBeGreaterThan(legHome(sound) - 0.1);
  expect(time(sound, 'up')).toBeLessThan(5);
});

describe('striker worn (a US Navy maintenance magazine)', () => {
  // A striker with little leverage; the stream holds the door short of where it would come on jacks.
  const host = doored(
    {
      'lower-valve': {
        is: 'sequence-valve',
        ports: { inlet: 'down', outlet: 'let-down' },
        links: { plunger: { to: 'door', expression: '0.03 * angle' } },
        trip: '42.64 mm',
      },
    },
    { mechanisms: { door: { ...door.mechanisms.door, 'hinge-moment': 1 } } },
  );
  const inStream = { scenario: { ...host.scenario, airspeed: 59 } };
  it('passes on jacks', () => {
    const [well, worn] = [run(host), run(host, 'striker-worn', 'lower-valve')];
    expect(time(worn, 'down')).toBeLessThan(1.2 * time(well, 'down'));
    // A little late all the same, as it needs more of the door’s travel.
    expect(first(worn, 'lower-valve', 'opening', 7)).toBeGreaterThan(
      first(well, 'lower-valve', 'opening', 7) + 0.02,
    );
  });
  it('fails in the air, where a sound one works', () => {
    const [well, worn] = [run(inStream), run(inStream, 'striker-worn', 'lower-valve')];
    expect(first(well, 'uplock', 'open', 7)).toBeLessThan(10);
    expect(first(worn, 'uplock', 'open', 7)).toBe(Infinity);
    expect(first(worn, 'lower-valve', 'opening', 7)).toBe(Infinity);
  });
});

describe('plunger load too high for its linkage (a home builders’ public archive)', () => {
  // A heavier leg beside this one sets the pressure of the moment.
  const host = doored(
    {
      'other-jack': {
        is: 'double-acting-actuator',
        ports: { head: 'lift', 'head-chamber': 'lift', rod: 'let-down', 'rod-chamber': 'let-down' },
        links: {
          rod: {
            to: 'other',
            pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '40 deg', sense: 'opening' },
          },
        },
        bore: '44.5 mm',
        'rod-diameter': '22.2 mm',
        stroke: '290 mm',
      },
      'close-valve': {
        is: 'sequence-valve',
        ports: { inlet: 'up', outlet: 'door-close' },
        links: { plunger: { to: 'leg', expression: '0.2 * angle' } },
        trip: '309.68 mm',
        bore: '1.2 mm',
      },
    },
    {
      mechanisms: {
        ...door.mechanisms,
        leg: { ...leg, mass: '50 kg', inertia: '18 kg m^2' },
        other: { ...leg, mass: '80 kg', inertia: '30 kg m^2' },
      },
      steps: [lever(0.2, 'up')],
      duration: 10,
    },
  );
  const [well, stiff] = [run(host), run(host, 'plunger-load-high', 'close-valve')];
  const otherHome = (r: Run): number => first(r, 'other', 'at up');
  it('the leg stops short where it meets the valve, and goes on when pressure rises', () => {
    expect(legHome(well)).toBeLessThan(otherHome(well) - 0.3);
    expect(legHome(stiff)).toBeGreaterThan(otherHome(stiff));
    expect(legHome(stiff)).toBeLessThan(otherHome(stiff) + 0.5);
    // Contact is 1.3 degrees before the end.
    const there = degrees(stiff, 'leg', otherHome(stiff) - 0.1);
    expect(there).toBeGreaterThan(88);
    expect(there).toBeLessThan(89.6);
  });
});

describe('leaks when shut (a home builders’ public archive)', () => {
  it.each([
    ['plunger operated', doored(), 'close-valve'],
    ['worked by pressure', doored(byPressure), 'close-valve'],
    ['a priority valve', doored(byPriority, noOrder), 'close-valve'],
  ])('%s: the door starts with the leg and creeps', (_, host, valve) => {
    const [well, leaking] = [run(host), run(host, 'sequence-valve-leak', valve)];
    expect(doorGoes(well)).toBeGreaterThan(1.5);
    expect(doorGoes(leaking)).toBeLessThan(0.5);
    const late = legHome(well) - 0.1;
    expect(degrees(well, 'door', late)).toBeGreaterThan(89.5);
    expect(degrees(leaking, 'door', late)).toBeLessThan(85);
  });
  it('a weep only creeps, the order stays right for the eye', () => {
    const weeping = run(plain, 'sequence-valve-leak', 'close-valve', 0.1);
    const crept = 90 - degrees(weeping, 'door', legHome(weeping) - 0.1);
    expect(crept).toBeGreaterThan(0.1);
    expect(crept).toBeLessThan(5);
  });
});

describe('sticks open (common practice, no source)', () => {
  it.each([
    ['plunger operated', doored()],
    ['worked by pressure', doored(byPressure)],
    ['a priority valve', doored(byPriority, noOrder)],
  ])('%s: the second part starts with the first', (_, host) => {
    const [well, stuck] = [run(host), run(host, 'sticking-sequence-valve', 'close-valve')];
    expect(doorGoes(stuck)).toBeLessThan(doorGoes(well) - 1);
    expect(doorHome(stuck)).toBeLessThan(doorHome(well) - 0.3);
  });
});

describe('sticks shut (common practice, no source)', () => {
  it.each([
    ['plunger operated', doored()],
    ['worked by pressure', doored(byPressure)],
    ['a priority valve', doored(byPriority, noOrder)],
  ])('%s: the second part is slow or misses the cycle, with the gauge at its limit', (_, host) => {
    const [well, stuck] = [run(host), run(host, 'sequence-valve-stuck-shut', 'close-valve')];
    expect(doorHome(well)).toBeLessThan(6);
    expect(doorHome(stuck)).toBeGreaterThan(doorHome(well) + 1);
    expect(legHome(stuck)).toBeLessThan(legHome(well) + 0.1);
    expect(gauge(stuck, 'up', legHome(stuck) + 0.7)).toBeGreaterThan(950 * PSI);
    expect(degrees(stuck, 'door', legHome(stuck) + 0.7)).toBeGreaterThan(70);
  });
});

describe('air across a valve that is not tight (a home builders’ public archive)', () => {
  it('wrong order in the first cycle after a fill', () => {
    const airy = run(plain, 'air-across-sequence-valve', 'close-valve');
    expect(doorGoes(airy)).toBeLessThan(legHome(airy) - 1);
    expect(doorGoes(sound)).toBeGreaterThan(legHome(sound) - 0.1);
  });
  it('soft: pressure beyond the valve builds slower than with a leak alone', () => {
    const passes = (r: Run, psi: number): number => {
      const { t, v } = r.series('door-close.pressure')!;
      return t[v.findIndex((p) => p > 101_325 + psi * PSI)];
    };
    // The same leak: a quarter of one gallon.
    const hold = doored(
      {},
      { mechanisms: { door: { ...door.mechanisms.door, friction: '400 N m' } } },
    );
    const [airy, tight] = [
      run(hold, 'air-across-sequence-valve', 'close-valve', 0.25),
      run(hold, 'sequence-valve-leak', 'close-valve'),
    ];
    expect(passes(airy, 100)).toBeGreaterThan(passes(tight, 100) + 0.2);
  });
});

describe.each([
  ['pressure-operated sequence valve', doored(byPressure)],
  ['priority valve', doored(byPriority, noOrder)],
])('%s', (_, host) => {
  const well = run(host);
  it('sound: the leg first, the door at its setting', () => {
    expect(doorGoes(well)).toBeGreaterThan(legHome(well) - 0.05);
    expect(time(well, 'up')).toBeLessThan(6);
  });
  it('set low: the second part starts early (common practice, no source)', () => {
    const low = run(host, 'pressure-sequence-valve-set-low', 'close-valve');
    expect(doorGoes(low)).toBeLessThan(legHome(low) - 1);
  });
  it('set a little high: a pause and a peak at the change-over (common practice, no source)', () => {
    const high = run(host, 'pressure-sequence-valve-set-high', 'close-valve', 0.2);
    expect(doorGoes(high)).toBeGreaterThan(doorGoes(well));
    expect(gauge(high, 'up', doorGoes(high))).toBeGreaterThan(
      gauge(well, 'up', doorGoes(well)) + 60 * PSI,
    );
    expect(doorHome(high)).toBeGreaterThan(doorHome(well) + 0.05);
  });
  it('above the supply’s limit: that unit never gets home (NTSB report 20091029X63056)', () => {
    const never = run(host, 'pressure-sequence-valve-set-high', 'close-valve');
    expect(doorHome(never)).toBe(Infinity);
    expect(at(never, 'up.pressure', 6) - 101_325).toBeGreaterThan(950 * PSI);
  });
});
