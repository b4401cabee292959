/** What wears in jacks and locks, and the lock inside a jack, in real runs. */
import { describe, expect, it } from 'vitest';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import { components } from '../../packages/core/src/component/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import { randomParameters, seeded, SURROUNDINGS } from '../support/sample-parameters.js';
import { coordinate, device, flat, rig, step } from '../support/rig.js';

const AMBIENT = 101_325;
const MPA = 1e6;

/** Holds its node at a pressure the card sets, through a wide opening. */
const gauge = device('gauge', {
  ports: {
    line: { title: 'line', volume: 1e-4 },
    drain: { title: 'drain', volume: 0, optional: true },
  },
  inputs: { pressure: { title: 'pressure', quantity: 'pressure', initial: AMBIENT } },
  flows: { through: { from: 'drain', to: 'line', source: true } },
  equations: (d) => {
    const g = 1e-9;
    d.flow(0, g * (d.input(0) - d.pressure(0)), 0, -g);
  },
});

/** Gauge pressures (MPa) of a line over time (s). */
type Steps = readonly (readonly [number, number])[];
const stepsOf = (name: string, steps: Steps) =>
  steps.map(([at, p]) => step(at, name, 'pressure', AMBIENT + p * MPA));

const modes = (run: SimulatedRun, of: string): string[] =>
  run.log.filter((e) => e.device === of && e.kind === 'mode').map((e) => e.to);
const at = (run: SimulatedRun, channel: string, time: number): number => {
  const { t, v } = run.series(channel)!;
  return v[t.findLastIndex((x) => x <= time)];
};
const since = (run: SimulatedRun, of: string, to: string): number =>
  run.log.find((e) => e.device === of && e.to === to)?.t ?? NaN;

interface Jack {
  readonly is?: string;
  readonly parameters?: Parameters;
  readonly head?: Steps;
  readonly rod?: Steps;
  readonly initial?: number;
  readonly moment?: number;
  /** Chambers behind ways of their own. */
  readonly ways?: boolean;
  readonly duration?: number;
}

/** A jack of 200 mm that extends to lower a leg from 1 rad (up) to 0 (down), one gauge at each end. */
function swing(story: Jack): SimulatedRun {
  const { is = 'double-acting-actuator', head = [], rod = [], ways = false } = story;
  const lock = is === 'locking-actuator';
  const made = rig({
    parts: {
      tank: { is: 'reservoir', ports: { outlet: 'tank' } },
      push: { is: gauge, ports: { line: 'head', drain: 'tank' } },
      pull: { is: gauge, ports: { line: 'rod', drain: 'tank' } },
      jack: {
        is,
        ports: {
          head: 'head',
          rod: 'rod',
          ...(ways ? {} : { headChamber: 'head', rodChamber: 'rod' }),
        },
        links: {
          rod: { to: 'leg', travel: { x: [0, 1], y: [0.2, 0] } },
          ...(lock && { leg: { to: 'leg' } }),
        },
        parameters: {
          bore: 0.04,
          rodDiameter: 0.02,
          stroke: 0.2,
          ...(lock && { extendedAt: 0, retractedAt: 1 }),
          ...story.parameters,
        },
      },
    },
    coordinates: {
      leg: coordinate({
        moment: flat(story.moment ?? 0),
        initial: story.initial ?? 1,
        damping: 600,
        inertia: flat(5),
      }),
    },
    steps: [...stepsOf('push', head), ...stepsOf('pull', rod)].sort((a, b) => a.at - b.at),
    duration: story.duration ?? 6,
  });
  const run = simulateWith(made.with, made.scenario);
  expect(run.outcome.kind).toBe('done');
  return run;
}

describe('an actuator with a lock inside', () => {
  const is = 'locking-actuator';
  /** Down under pressure, pressure off, then up. The load pulls the leg up throughout. */
  const cycle: Jack = { is, moment: 300, head: [[0.1, 4], [3, 0]], rod: [[4.5, 4]] }; // prettier-ignore

  it('holds the leg down without pressure, and lets go when the rod chamber reaches the release pressure', () => {
    const run = swing(cycle);
    expect(modes(run, 'jack')).toEqual(['free', 'locked extended', 'free']);
    expect(at(run, 'leg.angle', 4.4)).toBeLessThan(0.012 + 1e-9);
    const free = run.log.findLast((e) => e.device === 'jack')!.t;
    expect(free).toBeGreaterThan(4.5);
    expect(at(run, 'rod.pressure', free + 1e-9) - AMBIENT).toBeGreaterThan(1.69 * MPA);
    expect(at(run, 'leg.angle', 6)).toBe(1);
  });

  it('does not lock when worn: the leg goes as the pressure goes', () => {
    const run = swing({ ...cycle, parameters: { gap: 0.01 } });
    expect(modes(run, 'jack')).toEqual(['free']);
    expect(at(run, 'leg.angle', 3)).toBe(0);
    expect(at(run, 'leg.angle', 4.4)).toBeGreaterThan(0.2);
  });

  it('locks at both ends where both have a lock, each let go by the chamber that moves it away', () => {
    const run = swing({
      ...cycle,
      moment: 0,
      parameters: { lock: 'both' },
    });
    expect(modes(run, 'jack')).toEqual([
      'locked retracted',
      'free',
      'locked extended',
      'free',
      'locked retracted',
    ]);
    expect(since(run, 'jack', 'free')).toBeGreaterThan(0.1);
  });

  it('locks at the low end or the high end of the leg, whichever way it is fitted', () => {
    const run = swing({
      is,
      parameters: { lock: 'retracted' },
      moment: -300,
      head: [[1, 1], [2, 0], [3, 4]], // prettier-ignore
    });
    // 1 MPa is below the release pressure; 4 MPa is not.
    expect(modes(run, 'jack')).toEqual(['locked retracted', 'free']);
    expect(at(run, 'leg.angle', 2.9)).toBeGreaterThan(1 - 0.012 - 1e-9);
    expect(at(run, 'leg.angle', 6)).toBe(0);
  });

  it('tells others by wire which end is locked', () => {
    const kind = components[is];
    const p = randomParameters(kind, seeded(1));
    const frame = new FakeFrame(kind, p, SURROUNDINGS.mild);
    const words = Object.keys(kind.modes!).map((_, mode) => {
      frame.mode = mode;
      return Object.values(kind.signals!).map((signal) => signal.value(frame));
    });
    expect(words).toEqual([[0, 0], [1, 0], [0, 1]]); // prettier-ignore
  });
});

describe('a jack', () => {
  const down: Jack = { head: [[0.1, 2]] };

  it('stops at a galled place that takes more than it can push, and passes one that takes less', () => {
    // 2 MPa on 40 mm: 2.5 kN.
    const place = { galledAt: 0.1, galledWidth: 0.01 };
    const stuck = at(swing({ ...down, parameters: { ...place, galling: 6000 } }), 'jack.rod', 6);
    expect(stuck).toBeGreaterThan(0.09);
    expect(stuck).toBeLessThan(0.1);
    const free = swing(down);
    const rubbed = swing({ ...down, parameters: { ...place, galling: 1500 } });
    expect(at(rubbed, 'leg.angle', 6)).toBe(0);
    expect(since(rubbed, 'leg', 'at low')).toBeGreaterThan(since(free, 'leg', 'at low') + 0.005);
  });

  it('stops at a galled place however narrow: no step strides over it', () => {
    for (const galledWidth of [1e-3, 2e-3, 4e-3])
      for (const galledAt of [0.05, 0.08, 0.12, 0.16]) {
        const parameters = { galledAt, galledWidth, galling: 6000 };
        const stuck = at(swing({ ...down, parameters }), 'jack.rod', 6);
        expect(stuck).toBeGreaterThan(galledAt - galledWidth);
        expect(stuck).toBeLessThan(galledAt);
      }
  });

  it('that bottoms early stops short of the leg’s end by that much', () => {
    const run = swing({ ...down, parameters: { shortExtended: 0.008 } });
    const rest = at(run, 'jack.rod', 6);
    expect(Math.abs(rest - 0.192)).toBeLessThan(3e-4);
    // 2.5 kN on 30 MN/m, and half of the onset.
    expect(rest).toBeGreaterThan(0.192);
    const back = swing({ initial: 0, rod: [[0.1, 2]], parameters: { shortRetracted: 0.008 } });
    expect(Math.abs(at(back, 'jack.rod', 6) - 0.008)).toBeLessThan(3e-4);
  });

  it('keeps energy on stops of its own', () => {
    const { energy } = swing({ ...down, parameters: { shortExtended: 0.008 } }).account();
    expect(Math.abs(energy.gap)).toBeLessThan(2e-3 * energy.supplied);
  });

  it('whose way out is blocked stands still, and the other way is free', () => {
    const parameters = { blockedRod: 1, bypass: 0 };
    expect(at(swing({ ...down, ways: true, parameters }), 'jack.rod', 6)).toBeLessThan(2e-3);
    const up = swing({ initial: 0, ways: true, rod: [[0.1, 2]], parameters });
    expect(at(up, 'leg.angle', 6)).toBe(1);
  });

  it('with half its way out blocked is slower', () => {
    const run = (blockedRod: number) =>
      since(
        swing({ ...down, ways: true, parameters: { blockedRod, portBore: 0.002 } }),
        'leg',
        'at low',
      );
    expect(run(0.5)).toBeGreaterThan(1.2 * run(0));
  });

  it('springs back further on a pocket of air behind a shut way', () => {
    // Half way, both ways out shut by the blocked parameter, the load comes on: the oil gives.
    const give = (air: number): number =>
      0.1 -
      at(
        swing({
          initial: 0.5,
          moment: 100,
          ways: true,
          parameters: { blockedHead: 1, bypass: 0, airHead: air, seals: 0 },
          duration: 2,
        }),
        'jack.rod',
        2,
      );
    expect(give(5e-6)).toBeGreaterThan(give(0) + 1e-3);
  });
});

interface Lock {
  readonly is: 'uplock' | 'downlock';
  readonly moment: number;
  readonly initial?: number;
  readonly parameters?: Parameters;
  readonly steps?: Steps;
  readonly cable?: number;
  readonly cold?: number;
}

/** A leg under a constant moment, a lock at one end of it, and the pressure at its port. */
function hold({ is, moment, parameters = {}, steps = [], ...story }: Lock): SimulatedRun {
  const made = rig({
    parts: {
      tank: { is: 'reservoir', ports: { outlet: 'tank' } },
      gauge: { is: gauge, ports: { line: 'line', drain: 'tank' } },
      lock: {
        is,
        ports: { release: 'line' },
        links: { leg: { to: 'leg' } },
        parameters: { at: is === 'uplock' ? 1 : 0, ...parameters },
      },
    },
    coordinates: {
      leg: coordinate({
        moment: flat(moment),
        initial: story.initial ?? (is === 'uplock' ? 1 : 0),
        damping: 5,
      }),
    },
    steps: [
      ...stepsOf('gauge', steps),
      ...(story.cable === undefined ? [] : [step(story.cable, 'lock', 'cable', 1)]),
    ].sort((a, b) => a.at - b.at),
    duration: 6,
  });
  const scenario = {
    ...made.scenario,
    fluid: { ...made.scenario.fluid, temperature: story.cold ?? 293.15 },
  };
  return simulateWith(made.with, scenario);
}

describe.each([
  ['uplock', -1, 1],
  ['downlock', 1, 0],
] as const)('%s', (is, away, home) => {
  /** Load away from the lock; towards it, from the other end. */
  const hung = { is, moment: 3 * away };
  const coming = { is, moment: -2 * away, initial: 1 - home };
  const end = (run: SimulatedRun): number => at(run, 'leg.angle', 6);

  it('misses a leg whose gap is wider than its window', () => {
    expect(modes(hold({ ...hung, parameters: { gap: 0.007 } }), 'lock')).toContain('engaged');
    const missed = hold({ ...hung, parameters: { gap: 0.009 } });
    expect(modes(missed, 'lock')).toEqual(['open']);
    expect(end(missed)).toBe(1 - home);
  });

  it('with a seized roller needs more pressure while the leg hangs on it, not when it is pressed home', () => {
    const steps: Steps = [[2, 2.5]];
    const parameters = { rollerDrag: 1.5 * MPA };
    expect(modes(hold({ ...hung, steps }), 'lock')).toContain('open');
    const stuck = hold({ ...hung, steps, parameters });
    expect(modes(stuck, 'lock')).toEqual(['engaged']);
    expect(Math.abs(end(stuck) - home)).toBeLessThan(0.012 + 1e-9);
    expect(modes(hold({ ...hung, moment: -3 * away, steps, parameters }), 'lock')).toContain(
      'open',
    );
    expect(modes(hold({ ...hung, steps: [[2, 3.5]], parameters }), 'lock')).toContain('open');
  });

  it('is not drawn by a cable whose slack takes up the pull', () => {
    const released = (cableSlack: number): boolean =>
      modes(hold({ ...hung, cable: 2, parameters: { cableSlack } }), 'lock').includes('open');
    expect(released(0)).toBe(true);
    expect(released(0.5)).toBe(true);
    expect(released(0.8)).toBe(false);
  });

  it('drops in late by its delay, and by its cold delay in the cold', () => {
    const prompt = since(hold(coming), 'lock', 'engaged');
    const late = hold({ ...coming, parameters: { delay: 0.5 } });
    expect(modes(late, 'lock')).toEqual(['open', 'dropping in', 'engaged']);
    expect(Math.abs(since(late, 'lock', 'engaged') - prompt - 0.5)).toBeLessThan(2e-3);
    const parameters = { coldDelay: 1 };
    expect(modes(hold({ ...coming, parameters }), 'lock')).toEqual(['open', 'engaged']);
    const cold = hold({ ...coming, parameters, cold: 273.15 });
    expect(
      Math.abs(since(cold, 'lock', 'engaged') - since(cold, 'lock', 'dropping in') - 0.5),
    ).toBeLessThan(1e-6);
  });

  it('does not drop in when the leg leaves before its delay is over', () => {
    const run = hold({ ...hung, parameters: { delay: 2 } });
    expect(modes(run, 'lock')).toEqual(['dropping in', 'open']);
    expect(end(run)).toBe(1 - home);
  });

  it('with a broken spring is shaken off, catches nothing until the leg has left, and then again', () => {
    const pressed = hold({ ...hung, moment: -3 * away, parameters: { holdsFor: 2 } });
    expect(modes(pressed, 'lock')).toEqual(['engaged', 'shaken off']);
    expect(Math.abs(since(pressed, 'lock', 'shaken off') - 2)).toBeLessThan(1e-6);
    const fallen = hold({ ...hung, parameters: { holdsFor: 2 } });
    expect(modes(fallen, 'lock')).toEqual(['engaged', 'shaken off', 'open']);
    expect(end(fallen)).toBe(1 - home);
  });
});
