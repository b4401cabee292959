/**
 * How faults of legs, doors, chains and switches show, each against the healthy run of the same
 * gear. Signs are trade facts, common practice, no source, unless a source is named beside the check.
 */
import { describe, expect, it } from 'vitest';
import {
  at,
  fault,
  lever,
  mean,
  oneLeg,
  passes,
  peak,
  play,
  story,
  when,
} from '../support/one-leg.js';
import type { Run } from '@wheelwell/core';

const DEG = Math.PI / 180;
const AMBIENT = 101_325;
const gear = oneLeg();
const healthy = play(gear);
const upTime = (r: Run): number => when(r, 'uplock', 'engaged');
const downTime = (r: Run): number => when(r, 'downlock', 'engaged', 8);

/** Mean gauge of a line while the leg passes from one angle to another, Pa. */
function load(
  run: Run,
  node: string,
  [low, high]: readonly [number, number],
  down = false,
): number {
  const from = down ? 8 : 0;
  const [first, last] = down ? [high, low] : [low, high];
  const begin = passes(run, 'leg.angle', first * DEG, from, down);
  return mean(run, `${node}.pressure`, begin, passes(run, 'leg.angle', last * DEG, begin, down));
}

/** A hinged fairing behind the leg: 80 degrees for its 90. */
const fairing = {
  is: 'linked-member',
  travel: '80 deg',
  swings: 'aft',
  mass: '4 kg',
  cog: '250 mm',
  inertia: '0.4 kg m^2',
  length: '500 mm',
  width: '300 mm',
  friction: '6 N m',
};

describe('a bent brace', () => {
  const run = play(gear, fault('bent-brace', 'leg'));
  const bump: [number, number] = [41, 49];

  it('raises the gauge at one angle, both ways', () => {
    expect(load(run, 'lift', bump) - load(healthy, 'lift', bump)).toBeGreaterThan(0.3e6);
    const back = load(run, 'down-line', bump, true) - load(healthy, 'down-line', bump, true);
    expect(back).toBeGreaterThan(0.3e6);
  });

  it('leaves the gauge elsewhere as it was', () => {
    for (const range of [
      [15, 30],
      [65, 80],
    ] as const)
      expect(Math.abs(load(run, 'lift', range) - load(healthy, 'lift', range))).toBeLessThan(0.1e6);
  });
});

describe('a dry pivot of a part that the leg takes along', () => {
  const whole = oneLeg({
    mechanisms: { fairing: { ...fairing, driven: { by: 'leg', expression: '0.888 * angle' } } },
  });
  const sound = play(whole);
  const middle: [number, number] = [30, 60];

  it('raises the gauge over the whole travel', () => {
    const run = play(whole, fault('dry-bearing', 'fairing'));
    expect(load(run, 'lift', middle) - load(sound, 'lift', middle)).toBeGreaterThan(5e3);
  });

  it('as a binding linkage, raises it over the stretch that binds, both ways', () => {
    const run = play(whole, fault('door-linkage-binding', 'fairing'));
    const bound: [number, number] = [45 / 0.888 - 3, 45 / 0.888 + 3];
    expect(load(run, 'lift', bound) - load(sound, 'lift', bound)).toBeGreaterThan(0.05e6);
    const back = load(run, 'down-line', bound, true) - load(sound, 'down-line', bound, true);
    expect(back).toBeGreaterThan(0.05e6);
    const free: [number, number] = [70, 85];
    expect(Math.abs(load(run, 'lift', free) - load(sound, 'lift', free))).toBeLessThan(0.03e6);
  });
});

const flap = {
  is: 'door',
  travel: '80 deg',
  mass: '6 kg',
  cog: '200 mm',
  inertia: '0.35 kg m^2',
  chord: '400 mm',
  span: '700 mm',
  'hinge-right': '1 m',
  friction: '2 N m',
  damping: '3 N m s/rad',
  'seal-moment': '20 N m',
};

/** A door that opens with DOWN and closes with UP, through an orifice on its open side. */
const doorParts = (bore: string) => ({
  mechanisms: { flap },
  components: {
    feed: { is: 'orifice', ports: { inlet: 'down-line', outlet: 'open' }, bore },
    'door-jack': {
      is: 'double-acting-actuator',
      ports: { head: 'open', 'head-chamber': 'open', rod: 'up-line', 'rod-chamber': 'up-line' },
      links: {
        rod: {
          to: 'flap',
          pivots: { fixed: '350 mm', moving: '100 mm', 'at-low': '35 deg', sense: 'opening' },
        },
      },
      bore: '25 mm',
      'rod-diameter': '12.5 mm',
      stroke: '129 mm',
    },
  },
  steps: [lever('0.5 s', 'down'), lever('6 s', 'up')],
  duration: '12 s',
});
const doored = oneLeg(doorParts('0.8 mm'));
const shut = play(doored);

describe('a door', () => {
  it('loose on its hinge: nothing on jacks, but it hangs low (silent)', () => {
    const run = play(doored, fault('door-loose', 'flap'));
    expect(story(run)).toBe(story(shut));
    const edge = (r: Run): number => r.outline('flap', 0)!.edge![0].z;
    expect(edge(shut) - edge(run)).toBeCloseTo(0.015, 9);
  });

  it('without its restraint: past its place, until its jack bottoms (NTSB report CEN17LA033)', () => {
    const run = play(doored, fault('door-restraint-out', 'flap'));
    const open = (r: Run): number => peak(r, 'flap.angle', 0, 6);
    expect(open(shut)).toBeLessThan(80.1 * DEG);
    expect(open(run)).toBeGreaterThan(83 * DEG);
    // 129 mm of stroke and half the dead volume of 5 cm3 over the rod end's 3.7 cm2: 6.8 mm.
    expect(peak(run, 'door-jack.rod', 0, 6)).toBeLessThan(0.129 + 0.0068 + 0.002);
  });

  it('with a tight seal: the gauge rises at the end of closing (NAVEDTRA 14018)', () => {
    // The door alone moves, with all the flow there is: the gauge tells its load.
    const alone = oneLeg({
      ...doorParts('2.5 mm'),
      leave: ['jack', 'restrictor', 'uplock', 'downlock'],
      unit: { actuators: ['door-jack'], doors: ['flap'] },
    });
    const [sound, run] = [play(alone), play(alone, fault('door-seal-tight', 'flap'))];
    const closing = (r: Run, from: number, to: number): number => {
      const begin = passes(r, 'flap.angle', from * DEG, 6.1, true);
      return mean(r, 'up-line.pressure', begin, passes(r, 'flap.angle', to * DEG, begin, true));
    };
    expect(closing(run, 3, 1) - closing(sound, 3, 1)).toBeGreaterThan(0.3e6);
    expect(Math.abs(closing(run, 60, 30) - closing(sound, 60, 30))).toBeLessThan(0.1e6);
  });
});

describe('a leg whose strut a link shortens', () => {
  const short = oneLeg({
    leg: {
      shortening: [
        ['0 deg', '0 mm'],
        ['90 deg', '120 mm'],
      ],
      'gas-pressure': '3 MPa',
      'gas-area': '1500 mm^2',
      'gas-volume': '500 cm^3',
      'sliding-mass': '25 kg',
    },
  });
  const sound = play(short);
  const late: [number, number] = [70, 88];
  /** From the pivot to the axle with the leg up, m. */
  const reach = (r: Run): number => {
    const [pivot, axle] = r.outline('leg', 90 * DEG)!.line;
    return Math.hypot(axle.x - pivot.x, axle.y - pivot.y, axle.z - pivot.z);
  };

  it('over-charged: heavy late in the travel (NAVEDTRA 14315)', () => {
    const run = play(short, fault('strut-overcharged', 'leg'));
    expect(load(run, 'lift', late) - load(sound, 'lift', late)).toBeGreaterThan(1e6);
    expect(upTime(run)).toBeGreaterThan(upTime(sound) + 0.02);
  });

  it('its link broken: too long when up, less load than normal late (NAVEDTRA 14315)', () => {
    const run = play(short, fault('shortening-link-broken', 'leg'));
    expect(load(sound, 'lift', late) - load(run, 'lift', late)).toBeGreaterThan(1e6);
    expect(reach(run) - reach(sound)).toBeCloseTo(0.12, 6);
  });
});

describe('a wheel out of line', () => {
  it('shows in neither time nor gauge, but lies askew (silent)', () => {
    const run = play(gear, fault('steering-misaligned', 'leg'));
    expect(story(run)).toBe(story(healthy));
    const axle = (r: Run) => r.outline('leg', 90 * DEG)!.tyre!.axle;
    const [a, b] = [axle(healthy), axle(run)];
    expect(Math.acos(a.x * b.x + a.y * b.y + a.z * b.z)).toBeCloseTo(25 * DEG, 9);
  });
});

/** Oil reaches the selector only while the squat switch says air. */
const interlocked = oneLeg({
  components: {
    squat: { is: 'squat-switch' },
    stand: {
      is: 'ground-supply',
      ports: { inlet: 'tank', outlet: 'main' },
      flow: '120 cm^3/s',
      pressure: '10 MPa',
      on: true,
    },
    gate: {
      is: 'solenoid-valve',
      ports: { inlet: 'main', outlet: 'pressure' },
      signals: { coil: 'squat.in-air' },
    },
  },
});
const allowed = play(interlocked);

describe('the interlock of the squat switch', () => {
  it('lets a healthy gear up', () => {
    expect(upTime(allowed)).toBeLessThan(6);
  });

  it.each([
    ['squat-switch-stuck', 'stuck on ground'],
    ['strut-not-extended', 'its strut not extended (NTSB report NYC06FA128)'],
  ])('%s: %s, UP is refused with healthy hydraulics', (kind) => {
    const run = play(interlocked, fault(kind, 'squat'));
    expect(peak(run, 'leg.angle', 0, 8)).toBeLessThan(0.01);
    expect(when(run, 'downlock', 'open')).toBeNaN();
    expect(peak(run, 'main.pressure', 5, 7) - AMBIENT).toBeGreaterThan(9.5e6);
  });

  it('a strut that hangs short brings the wheel up too far in (Civil Aeronautics Board report, 1941)', () => {
    const run = play(gear, fault('strut-not-extended', 'leg'));
    const wheel = (r: Run): number => r.outline('leg', 90 * DEG)!.tyre!.centre.y;
    expect(wheel(run) - wheel(healthy)).toBeCloseTo(0.06, 3);
  });
});

describe('a chain between a leg and a fairing', () => {
  const chained = oneLeg({
    mechanisms: { fairing },
    components: {
      chain: {
        is: 'chain',
        links: { driver: { to: 'leg' }, follower: { to: 'fairing' } },
        ratio: 0.888,
      },
    },
  });
  const sound = play(chained);
  const behind = (r: Run, t: number): number => -at(r, 'chain.lead', t);

  it('slack: the follower lags, up and down, and waits at the reversal', () => {
    const run = play(chained, fault('chain-slack', 'chain'));
    expect(behind(run, 3) - behind(sound, 3)).toBeGreaterThan(0.06);
    expect(-behind(run, 10.3) + behind(sound, 10.3)).toBeGreaterThan(0.06);
    const starts = (r: Run): number => when(r, 'fairing', 'rising', 0.5);
    expect(starts(run)).toBeGreaterThan(starts(sound) + 0.05);
  });

  it('a jumped tooth: out of step by that angle, both ways', () => {
    const run = play(chained, fault('chain-jumped-tooth', 'chain', 0.5));
    // One of 24 teeth: 15 degrees.
    for (const t of [2, 10]) {
      const ahead = at(run, 'fairing.angle', t) - 0.888 * at(run, 'leg.angle', t);
      expect(Math.abs(ahead - 15 * DEG)).toBeLessThan(DEG);
      const before = at(sound, 'fairing.angle', t) - 0.888 * at(sound, 'leg.angle', t);
      expect(Math.abs(before)).toBeLessThan(DEG);
    }
    // The fairing is at its end before the leg is, and the chain is pulled tight.
    expect(passes(run, 'fairing.angle', 79 * DEG)).toBeLessThan(
      passes(sound, 'fairing.angle', 79 * DEG) - 0.3,
    );
    const late: [number, number] = [80, 88];
    expect(load(run, 'lift', late) - load(sound, 'lift', late)).toBeGreaterThan(1e6);
  });

  it('two teeth: the leg does not reach its lock', () => {
    expect(upTime(sound)).toBeLessThan(6);
    expect(upTime(play(chained, fault('chain-jumped-tooth', 'chain')))).toBeNaN();
  });
});

describe('a position switch rigged late (New Zealand TAIC inquiry, 30 September 2010)', () => {
  const lit = oneLeg({
    components: {
      light: { is: 'position-switch', at: '89 deg', links: { mechanism: { to: 'leg' } } },
    },
  });

  it('shows no light with motion and lock right', () => {
    const [sound, run] = [play(lit), play(lit, fault('switch-misrigged', 'light'))];
    expect(when(sound, 'light', 'made')).toBeLessThan(upTime(sound));
    expect(when(run, 'light', 'made')).toBeNaN();
    // One event less is one restart of the solver less: the same within its tolerance.
    expect(upTime(run)).toBeCloseTo(upTime(sound), 4);
    expect(downTime(run)).toBeCloseTo(downTime(sound), 4);
  });

  it('a little late, makes late', () => {
    const [sound, run] = [play(lit), play(lit, fault('switch-misrigged', 'light', 0.1))];
    expect(when(run, 'light', 'made')).toBeGreaterThan(when(sound, 'light', 'made') + 0.01);
  });
});
