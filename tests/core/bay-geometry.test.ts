/** What a drawing of the bay asks of core: where parts come nearest, a ramp's face, a brace's bars, a plunger's touch. */
import { describe, expect, it } from 'vitest';
import {
  braceBars,
  clearancesOf,
  plungerDepression,
  rampOf,
} from '../../packages/core/src/index.js';
import type { Placement, Point3 } from '../../packages/core/src/define/index.js';
import { mechanisms } from '../../packages/core/src/mechanism/index.js';
import { gap, nearest } from '../../packages/core/src/monitor/reading/gap.js';
import { panelOutline, tyreOutline } from '../../packages/core/src/monitor/reading/geometry.js';
import { aircraft } from '../support/aircraft.js';
import { swing } from '../support/evidence.js';

const DEG = Math.PI / 180;

// Tyre of radius 0.3 and width 0.2 at y = -1, z = -1, axle across: seen along x a line from
// z = -1.2 to -0.8 with shoulders of 0.1. A door hinged at y = -1.7, z = -0.5, chord 0.5.
const tyre: Placement = {
  line: [{ x: 0, y: -1, z: 0 }],
  tyre: { centre: { x: 0, y: -1, z: -1 }, axle: { x: 0, y: 1, z: 0 }, radius: 0.3, width: 0.2 },
};
const door = (angle: number): Placement => {
  const free = { y: -1.7 + 0.5 * Math.cos(angle), z: -0.5 - 0.5 * Math.sin(angle) };
  return {
    line: [-0.5, 0.5].map((x) => ({ x, y: -1.7, z: -0.5 })),
    edge: [-0.5, 0.5].map((x) => ({ x, ...free })),
  };
};

describe('where two outlines come nearest', () => {
  it('is as far apart as they are, on both of them', () => {
    for (let angle = 0; angle < 1.6; angle += 0.05) {
      const [a, b] = [tyreOutline(tyre, 'transverse')!, panelOutline(door(angle))];
      const { distance, from, to } = nearest(a, b);
      expect(distance).toBeCloseTo(gap(a, b), 12);
      expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(distance, 12);
      // On the shoulder: 0.1 from the line z = -1.2 to -0.8; on the panel: in line with hinge and edge.
      const onLine = Math.min(Math.max(from[1], -1.2), -0.8);
      expect(Math.hypot(from[0] + 1, from[1] - onLine)).toBeCloseTo(0.1, 12);
      const [u, z] = [to[0] + 1.7, to[1] + 0.5];
      expect(u * Math.sin(angle) + z * Math.cos(angle)).toBeCloseTo(0, 12);
    }
  });

  it('is where they meet when they do', () => {
    const cut = panelOutline({
      line: [-1, 1].map((x) => ({ x, y: -1.2, z: -0.9 })),
      edge: [-1, 1].map((x) => ({ x, y: -0.8, z: -0.9 })),
    });
    const found = nearest(tyreOutline(tyre, 'transverse')!, cut);
    expect(found.distance).toBeCloseTo(-0.1, 12);
    expect(found.from).toEqual(found.to);
    expect(found.from[0]).toBeCloseTo(-1, 12);
    expect(found.from[1]).toBeCloseTo(-0.9, 12);
  });

  it('is told of a whole run: the least of all, and none of what is far apart', () => {
    const e = swing((s) => {
      s.limits.clearance = 0.02;
      s.outline = (name, angle) =>
        name === 'left-leg' ? tyre : name === 'left-door' ? door(angle) : undefined;
    });
    const [found] = clearancesOf(e, 0.2);
    expect(found.between).toEqual(['left-leg', 'left-door']);
    // The free edge runs around the hinge, which is 0.7 beside and 0.3 above the top of the tyre's line.
    const far = Math.hypot(0.7, 0.3);
    expect(found.least.distance).toBeCloseTo(far - 0.5 - 0.1, 4);
    expect(found.least.to[0]).toBeCloseTo(-1.7 + (0.5 * 0.7) / far, 3);
    expect(found.least.to[1]).toBeCloseTo(-0.5 - (0.5 * 0.3) / far, 3);
    expect(found.gaps).toHaveLength(found.times.length);
    const near = found.gaps.filter((g) => g !== undefined).map((g) => g.distance);
    expect(Math.max(...near)).toBeLessThan(0.2);
    expect(Math.min(...near)).toBeGreaterThan(found.least.distance - 1e-9);
    expect(near.length).toBeLessThan(found.times.length);
  });
});

describe('a ramp', () => {
  const { scenario } = aircraft('hedgelark');
  // Without its offset along the axle, which is not quite upright there, the wheel is in the leg's line.
  const whole = { ...scenario.mechanisms['left-leg'].parameters, wheelOffset: 0 };
  const broken = { ...whole, linkShare: 0 };
  const pivot: Point3 = { x: 0, y: -1.6, z: 0 };
  const from = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.z - b.z);

  it('begins where the tyre of a long strut meets it and comes in by tan(14 deg) of its travel', () => {
    const { face } = rampOf(whole)!;
    expect(from(face[0], pivot)).toBeCloseTo(1.12 + 0.34, 9);
    const last = face.at(-1)!;
    expect(from(last, pivot)).toBeCloseTo(1.46 - 1.12 * Math.tan(14 * DEG) * 8 * DEG, 9);
  });

  it('bears only with the link broken, and the tyre then lies against its face', () => {
    expect([86, 90, 92].map((a) => rampOf(whole)!.bears(a * DEG))).toEqual([false, false, false]);
    const { bears, face } = rampOf(broken)!;
    expect([80, 83.9, 84.1, 92].map((a) => bears(a * DEG))).toEqual([false, false, true, true]);
    const [, foot] = mechanisms.leg.outline(broken).at(92 * DEG).line;
    expect(from(foot, pivot) + 0.34).toBeCloseTo(from(face.at(-1)!, pivot), 9);
  });

  it('is none for a leg that has none', () => {
    expect(rampOf(scenario.mechanisms['tail-leg'].parameters)).toBeUndefined();
  });
});

it('a brace spans what its bars reach with the knee straight', () => {
  const { scenario } = aircraft('tarnswift');
  const p = scenario.components['nose-brace'].parameters;
  const { upper, lower, structure, onLeg, upperAt } = braceBars(p);
  const across = Math.sqrt(structure ** 2 + onLeg ** 2 - 2 * structure * onLeg * Math.cos(upperAt));
  // The knee stands 4 mm past the straight line: shorter by 2 h^2 / 2 l, 0.07 mm.
  expect(across).toBeCloseTo(upper + lower, 3);
  expect(across).toBeLessThan(upper + lower);
});

it('a plunger is pushed beyond its trip, towards the end it works at, and later when rigged late', () => {
  const own = { sense: 'high', trip: 0.159, rigging: 0 };
  expect(plungerDepression(own, 0.16)).toBeCloseTo(0.001, 12);
  expect(plungerDepression({ ...own, rigging: 0.002 }, 0.16)).toBeCloseTo(-0.001, 12);
  expect(plungerDepression({ ...own, sense: 'low' }, 0.16)).toBeCloseTo(-0.001, 12);
});
