/**
 * Seal work and airload against closed forms: the integral of a moment over an angle is the kinetic
 * energy it leaves (engineering mechanics textbooks); drag D = q Cd S at its arm, and only the part
 * of the wind square to a slender leg loads it (cross-flow principle), a flat plate square to the wind
 * has a force coefficient of 1.17 (both Hoerner, Fluid-Dynamic Drag, from memory); hinge moment H = C_h q S c (aerodynamics textbooks); q = rho V^2 / 2 with 1.225 kg/m3
 * at sea level (ISO 2533).
 */
import { describe, expect, it } from 'vitest';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { catalogues } from '../../packages/core/src/index.js';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { rig } from '../support/rig.js';

const DEG = Math.PI / 180;
const G = 9.80665;
/** 90 knots. */
const SPEED = (90 * 1852) / 3600;
const DYNAMIC = 0.5 * 1.225 * SPEED * SPEED;

/** One mechanism of the catalogue alone, with its own defaults where nothing is given. */
function alone(kind: 'leg' | 'door', own: Parameters, airspeed = 0, duration = 0.01, sideslip = 0) {
  const made = rig({ parts: {}, duration });
  const defaults = Object.entries(catalogues.mechanisms[kind].parameters).flatMap(([n, d]) =>
    d.default === undefined ? [] : [[n, d.default] as const],
  );
  const parameters: Parameters = { ...Object.fromEntries(defaults), ...own };
  const scenario = {
    ...made.scenario,
    airspeed,
    sideslip,
    mechanisms: { part: { is: kind, note: '', parameters } },
  };
  return simulateWith({ ...made.with, mechanisms: catalogues.mechanisms }, scenario, {
    tolerance: 'fine',
  });
}
const moment = (run: ReturnType<typeof alone>): number => run.series('part.moment')!.v[0];

const DOOR: Parameters = {
  travel: 90 * DEG,
  mass: 8,
  cog: 0.35,
  inertia: 1.4,
  chord: 0.7,
  span: 1.1,
  sealMoment: 90,
  sealAngle: 6 * DEG,
  friction: 0,
  damping: 0,
};

describe('a door seal', () => {
  it('gives back moment x angle / 4 when the door is let go, beside the weight’s work', () => {
    const run = alone('door', DOOR, 0, 0.6);
    const angle = run.series('part.angle')!;
    const speed = run.series('part.speed')!;
    const clear = angle.v.findIndex((q) => q > 6 * DEG);
    const q = angle.v[clear];
    const work = 0.25 * 90 * 6 * DEG + 8 * G * 0.35 * Math.sin(q);
    expect(Math.abs((0.5 * 1.4 * speed.v[clear] ** 2) / work - 1)).toBeLessThan(1e-5);
  });

  it('must be squeezed: its moment is what the jack holds against, falling with the cube of the gap', () => {
    const held = (share: number): number =>
      moment(alone('door', { ...DOOR, initial: share * 6 * DEG, friction: 900 })) -
      8 * G * 0.35 * Math.cos(share * 6 * DEG);
    // Tables are kept to 1e-7 of their span.
    expect(held(0)).toBeCloseTo(90, 4);
    for (const share of [0.25, 0.5, 0.75])
      expect(held(share)).toBeCloseTo(90 * (1 - share) ** 3, 4);
    expect(held(1.2)).toBeCloseTo(0, 4);
  });
});

const LEG: Parameters = {
  travel: 100 * DEG,
  mass: 100,
  cog: 0.8,
  inertia: 80,
  length: 1.1,
  tyreRadius: 0.3,
  tyreWidth: 0.2,
  dragArea: 0.25,
  dragArm: 0.9,
  friction: 5000,
};

describe('airload', () => {
  const wind = (kind: 'leg' | 'door', own: Parameters, sideslip = 0): number =>
    moment(alone(kind, own, SPEED, 0.01, sideslip)) - moment(alone(kind, own));

  it('on a plumb leg is drag x arm, towards aft: helps one that retracts aft, hinders one that retracts forward', () => {
    const load = DYNAMIC * 0.25 * 0.9;
    expect(load).toBeCloseTo(295.4, 1);
    expect(wind('leg', { ...LEG, retract: 'aft' })).toBeCloseTo(load, 3);
    expect(wind('leg', { ...LEG, retract: 'forward' })).toBeCloseTo(-load, 3);
  });

  it('on a leg at an angle falls with the square of its cosine, and does nothing across a sideways hinge', () => {
    for (const degrees of [20, 45, 80])
      expect(wind('leg', { ...LEG, retract: 'aft', initial: degrees * DEG })).toBeCloseTo(
        DYNAMIC * 0.25 * 0.9 * Math.cos(degrees * DEG) ** 2,
        3,
      );
    expect(wind('leg', { ...LEG, retract: 'inboard', initial: 45 * DEG })).toBeCloseTo(0, 6);
  });

  it('past level it brings the leg back: a slender body wants to trail', () => {
    const past = wind('leg', { ...LEG, retract: 'aft', initial: 95 * DEG });
    expect(past).toBeCloseTo(-DYNAMIC * 0.25 * 0.9 * Math.cos(95 * DEG) ** 2, 3);
  });

  it('in a sideslip presses a plumb leg that folds inwards across its hinge: with the wind from the right, the left one outwards', () => {
    const load = DYNAMIC * 0.25 * 0.9 * Math.sin(10 * DEG);
    const left = { ...LEG, retract: 'inboard', pivotRight: -1.2 };
    const right = { ...LEG, retract: 'inboard', pivotRight: 1.2 };
    expect(wind('leg', left, 10 * DEG)).toBeCloseTo(-load, 3);
    expect(wind('leg', right, 10 * DEG)).toBeCloseTo(load, 3);
    expect(wind('leg', left, -10 * DEG)).toBeCloseTo(load, 3);
    // What comes from ahead is the less by the cosine.
    const along = DYNAMIC * 0.25 * 0.9 * Math.cos(10 * DEG);
    expect(wind('leg', { ...LEG, retract: 'aft' }, 10 * DEG)).toBeCloseTo(along, 3);
  });

  it('in a sideslip presses an open door as a flat plate: shut on one side, open on the other', () => {
    const open = { ...DOOR, sealMoment: 0, friction: 900, initial: 90 * DEG, travel: 120 * DEG };
    const load = 0.5 * 1.17 * DYNAMIC * Math.sin(10 * DEG) ** 2 * 0.7 ** 2 * 1.1;
    // The panel hangs plumb; its free edge moves on outwards for one that closes inwards.
    expect(wind('door', { ...open, hingeRight: 1 }, 10 * DEG)).toBeCloseTo(-load, 3);
    expect(wind('door', { ...open, hingeRight: -1 }, 10 * DEG)).toBeCloseTo(load, 3);
  });

  it('on a door fully open is C_h q S c, towards closed when C_h is positive', () => {
    const open = { ...DOOR, sealMoment: 0, friction: 900, initial: 90 * DEG, hingeMoment: 0.3 };
    const load = 0.3 * DYNAMIC * 0.7 * 1.1 * 0.7;
    expect(wind('door', open)).toBeCloseTo(-load, 3);
    expect(wind('door', { ...open, hingeMoment: -0.3 })).toBeCloseTo(load, 3);
    expect(wind('door', { ...open, initial: 0 })).toBeCloseTo(0, 3);
  });
});
