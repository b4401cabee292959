/**
 * Over-centre brace against plane statics (engineering mechanics textbooks, from memory): the knee
 * lies where two circles meet; virtual work gives spring moment times d(knee)/d(leg); a strut
 * loaded by N whose knee stands h past the line of its ends presses it on its stop with N h.
 */
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import type { CardStep, Parameters } from '../../packages/core/src/define/index.js';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import { coordinate, device, flat, rig, step } from '../support/rig.js';
import { SURROUNDINGS } from '../support/sample-parameters.js';

const DEG = Math.PI / 180;
const brace = components['over-centre-brace'];
const UPPER = 0.38;
const LOWER = 0.34;
const STRUCTURE = 0.5;
const ON_LEG = 0.45;
const PAST = 0.005;
const SPRING = 300;
const ARM = 0.04;
const AMBIENT = 101_325;

const given = (own: Parameters = {}): Parameters => ({
  ...(Object.fromEntries(
    Object.entries(brace.parameters).flatMap(([n, d]) =>
      d.default === undefined ? [] : [[n, d.default]],
    ),
  ) as Parameters),
  upper: UPPER,
  lower: LOWER,
  structure: STRUCTURE,
  onLeg: ON_LEG,
  overCentre: PAST,
  spring: SPRING,
  arm: ARM,
  friction: 3,
  ...own,
});

interface Point {
  readonly x: number;
  readonly y: number;
}
const gap = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The ends of the brace with the leg at `q`, leg pivot at the origin; down, the ends are as far apart as the knee past centre lets them. */
function ends(q: number): readonly [Point, Point] {
  const c = Math.sqrt(UPPER ** 2 - PAST ** 2) + Math.sqrt(LOWER ** 2 - PAST ** 2);
  const down = Math.acos((STRUCTURE ** 2 + ON_LEG ** 2 - c * c) / (2 * STRUCTURE * ON_LEG));
  const at = down - q;
  return [
    { x: STRUCTURE, y: 0 },
    { x: ON_LEG * Math.cos(at), y: ON_LEG * Math.sin(at) },
  ];
}

/** Where circles about the ends meet. */
function knee(q: number): Point {
  const [s, l] = ends(q);
  const c = gap(s, l);
  const along = (UPPER ** 2 - LOWER ** 2 + c * c) / (2 * c);
  const off = Math.sqrt(UPPER ** 2 - along ** 2);
  const u = { x: (l.x - s.x) / c, y: (l.y - s.y) / c };
  return { x: s.x + along * u.x - off * u.y, y: s.y + along * u.y + off * u.x };
}

/** Angle by which the lower link is turned out of the line of the upper one. */
function folded(q: number): number {
  const [s, l] = ends(q);
  const k = knee(q);
  const [ax, ay, bx, by] = [k.x - s.x, k.y - s.y, l.x - k.x, l.y - k.y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}

function frameAt(q: number, own: Parameters = {}): FakeFrame {
  const frame = new FakeFrame(brace, given(own), { ...SURROUNDINGS.mild, ambient: AMBIENT });
  frame.travels[0] = q;
  frame.run(brace);
  return frame;
}

const guard = (frame: FakeFrame, mode: string, to: string): number =>
  Math.max(
    ...(brace.modes?.[mode].guards ?? []).filter((g) => g.to === to).map((g) => g.when(frame)),
  );

describe('the toggle of an over-centre brace', () => {
  it.each([1, 3, 10, 30, 60, 85])('has the lever of two bars at %d degrees', (degrees) => {
    const q = degrees * DEG;
    const h = 1e-6;
    const lever = (folded(q + h) - folded(q - h)) / (2 * h);
    const { forces } = frameAt(q);
    expect(forces[0].value / (-SPRING * ARM * lever)).toBeCloseTo(1, 6);
    expect(forces[0].friction / (3 * lever)).toBeCloseTo(1, 6);
  });

  it('reads how far the knee stands off the line of its ends', () => {
    const value = brace.readings!.overCentre.value;
    for (const degrees of [0, 2, 20, 70]) {
      const [s, l] = ends(degrees * DEG);
      const k = knee(degrees * DEG);
      const off = Math.abs((l.x - s.x) * (k.y - s.y) - (l.y - s.y) * (k.x - s.x)) / gap(s, l);
      expect(value(frameAt(degrees * DEG))).toBeCloseTo(-off, 9);
    }
    const engaged = frameAt(0);
    engaged.mode = 1;
    expect(value(engaged)).toBe(PAST);
  });

  it('has a potential: its moment is minus the slope of the energy, inside the window too', () => {
    const energy = (q: number): number => brace.energy!(frameAt(q));
    for (const q of [0, 0.002, 0.006, 0.0079, 0.0081, 0.1, 1, 1.5]) {
      const slope = (energy(q + 1e-6) - energy(q - 1e-6)) / 2e-6;
      expect(frameAt(q).forces[0].value).toBeCloseTo(-slope, 4);
    }
  });

  it('keeps its lever bounded where two bars have none: at most half as much again as at the window', () => {
    const most = Math.abs(frameAt(0.008).forces[0].value);
    for (const q of [0, 0.001, 0.004]) {
      const moment = Math.abs(frameAt(q).forces[0].value);
      expect(moment).toBeGreaterThan(most);
      expect(moment).toBeLessThan(1.51 * most);
    }
  });
});

describe('the lock of an over-centre brace', () => {
  const released = frameAt(0);
  released.pressures[0] = AMBIENT + 2e6;

  it('goes over centre when its spring beats the knee’s friction: S > F', () => {
    for (const strength of [0.2, 0.249, 0.251, 0.5, 1])
      expect(guard(frameAt(0, { strength }), 'open', 'engaged') > 0).toBe(
        strength * SPRING * ARM > 3,
      );
    expect(guard(frameAt(0.02), 'open', 'engaged')).toBeLessThan(0);
  });

  it('is helped over by pressure at the push port: S + p A r > F', () => {
    const area = (Math.PI / 4) * 0.016 ** 2;
    const wanted = 3 / (area * ARM);
    for (const share of [0.9, 0.99, 1.01, 2]) {
      const frame = frameAt(0, { strength: 0 });
      frame.pressures[1] = AMBIENT + share * wanted;
      expect(guard(frame, 'open', 'engaged') > 0).toBe(share > 1);
    }
  });

  it('lets go on pressure at the release port, and by the cable', () => {
    expect(guard(released, 'engaged', 'open')).toBeGreaterThan(0);
    expect(guard(released, 'open', 'engaged')).toBeLessThan(0);
    const cable = frameAt(0);
    expect(guard(cable, 'engaged', 'open')).toBeLessThan(0);
    cable.inputs[0] = 1;
    expect(guard(cable, 'engaged', 'open')).toBeGreaterThan(0);
  });

  it('past centre no side load folds it; short of centre it folds at N h = S + F', () => {
    for (const h of [0.005, 0, -0.005]) {
      const [s, l] = ends(0);
      // The brace's arm about the leg's pivot: distance of the origin from the line of its ends.
      const arm = Math.abs(s.x * l.y - s.y * l.x) / gap(s, l);
      const critical = ((SPRING * ARM + 3) * arm) / 0.005;
      for (const share of [0.99, 1.01, 50]) {
        const frame = frameAt(0, { overCentre: h });
        frame.inputs[1] = share * critical;
        expect(guard(frame, 'engaged', 'open') > 0, `${h} at ${share}`).toBe(h < 0 && share > 1);
        // Folded it does not lock again while the load is on.
        expect(guard(frame, 'open', 'engaged') > 0).toBe(!(h < 0 && share > 1));
      }
    }
  });
});

/** Pressure of so many Pa gauge, whatever flows. */
const main = (gauge: number) =>
  device('main', {
    ports: { out: { title: 'out', volume: 0 } },
    vented: { ports: ['out'], pressure: (_, s) => s.ambient + gauge, content: () => 1e-3 },
  });

/** A leg of 30 kg m2 that falls with a constant moment, its brace open. */
function fall(own: Parameters, push = 0, steps: readonly CardStep[] = []) {
  const made = rig({
    parts: {
      brace: {
        is: 'over-centre-brace',
        parameters: given(own),
        ports: push > 0 ? { push: 'down-line' } : {},
        links: { leg: { to: 'leg' } },
      },
      ...(push > 0 ? { main: { is: main(push), ports: { out: 'down-line' } } } : {}),
    },
    coordinates: {
      leg: coordinate({
        high: 85 * DEG,
        inertia: flat(30),
        moment: flat(-120),
        initial: 60 * DEG,
      }),
    },
    duration: 4,
    steps,
  });
  return simulateWith(made.with, made.scenario, { tolerance: 'fine' });
}
const locked = (run: ReturnType<typeof fall>): boolean =>
  run.log.some((e) => e.device === 'brace' && e.to === 'engaged');
const down = (run: ReturnType<typeof fall>): boolean =>
  run.log.some((e) => e.device === 'leg' && e.to === 'at low');

describe('a leg that comes down on its brace', () => {
  it('locks by the spring', () => {
    const run = fall({});
    expect(down(run)).toBe(true);
    expect(locked(run)).toBe(true);
  });

  it('arrives but does not lock in a free fall with a weak spring; pressure locks it', () => {
    const weak = fall({ strength: 0.2 });
    expect(down(weak)).toBe(true);
    expect(locked(weak)).toBe(false);
    expect(locked(fall({ strength: 0.2 }, 7e6))).toBe(true);
  });

  it('arrives with the energy of weight and spring: I w^2 / 2 = M angle + S fold', () => {
    const arrival = fall({ friction: 0 }).log.find((e) => e.device === 'leg' && e.speed > 0)!;
    // From 60 degrees to the window in closed form, inside it by the parabola's own energy.
    const spring = brace.energy!(frameAt(60 * DEG)) - brace.energy!(frameAt(0));
    const closed = SPRING * ARM * (folded(60 * DEG) - folded(0.008));
    expect(brace.energy!(frameAt(60 * DEG)) - brace.energy!(frameAt(0.008))).toBeCloseTo(closed, 6);
    const speed = Math.sqrt((2 * (120 * 60 * DEG + spring)) / 30);
    expect(Math.abs(arrival.speed / speed - 1)).toBeLessThan(1e-5);
  });

  it('keeps the energy account closed', () => {
    const { energy } = fall({}).account();
    expect(Math.abs(energy.gap)).toBeLessThan(1e-4 * energy.weight);
    expect(energy.rubbed).toBeGreaterThan(3);
  });

  it('folds under side load when it stands short of centre, and not before', () => {
    const push = [step(3, 'brace', 'sideLoad', 2000)];
    const folds = (run: ReturnType<typeof fall>): boolean =>
      run.log.some((e) => e.device === 'brace' && e.to === 'open' && e.t > 2.9);
    expect(folds(fall({ overCentre: -0.005 }))).toBe(false);
    expect(folds(fall({ overCentre: -0.005 }, 0, push))).toBe(true);
    expect(folds(fall({}, 0, push))).toBe(false);
  });
});
