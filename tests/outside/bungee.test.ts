/**
 * Bungee against statics and the simple oscillator (engineering mechanics textbooks, from memory):
 * a pull F at a lever arm r gives the moment F r; a spring of rate c at arm r on inertia I swings
 * about its balance with the period 2 pi sqrt(I / (c r^2)); the arm of a cord between two pivots at
 * distances f and m from the leg's pivot, at angle phi, is f m sin(phi) / L, L by the law of cosines.
 */
import { describe, expect, it } from 'vitest';
import type { Parameters, Shape } from '../../packages/core/src/define/index.js';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { coordinate, flat, rig } from '../support/rig.js';
import type { CoordinateData } from '../../packages/core/src/define/index.js';

const DEG = Math.PI / 180;
const PRELOAD = 400;
const RATE = 3000;

function run(travel: Shape, own: Partial<CoordinateData>, parameters: Parameters, duration = 0.01) {
  const made = rig({
    parts: {
      cord: {
        is: 'bungee',
        links: { end: { to: 'leg', travel } },
        parameters: { preload: PRELOAD, rate: RATE, ...parameters },
      },
    },
    coordinates: { leg: coordinate({ high: 90 * DEG, ...own }) },
    duration,
  });
  return simulateWith(made.with, made.scenario, { tolerance: 'fine' });
}

/** Cord from a structure pivot 0.7 m above the leg's to 0.3 m out on the leg, along the leg at 25 deg. */
const F = 0.7;
const M = 0.3;
const phi = (q: number): number => 25 * DEG + q;
const cord = (q: number): number => Math.sqrt(F * F + M * M - 2 * F * M * Math.cos(phi(q)));
const pivots: Shape = (() => {
  const x = Array.from({ length: 181 }, (_, i) => (i / 180) * 90 * DEG);
  return { x, y: x.map((q) => cord(q) - cord(0)) };
})();

describe('a bungee', () => {
  it.each([1, 30, 60, 89])('pulls with F f m sin(phi) / L at %d degrees', (degrees) => {
    const q = degrees * DEG;
    const held = run(pivots, { friction: 1e5, initial: q }, {});
    const arm = (F * M * Math.sin(phi(q))) / cord(q);
    const pull = PRELOAD + RATE * (cord(q) - cord(0));
    // The network keeps travels to 1e-7 of their span: their slopes to some 1e-6.
    expect(held.series('leg.moment')!.v[0] / (-pull * arm)).toBeCloseTo(1, 5);
    expect(held.series('cord.pull')!.v[0]).toBeCloseTo(pull, 4);
  });

  it('pulls with the share of its strength that is left', () => {
    const q = 40 * DEG;
    const moment = (strength: number): number =>
      run(pivots, { friction: 1e5, initial: q }, { strength }).series('leg.moment')!.v[0];
    expect(moment(0.5) / moment(1)).toBeCloseTo(0.5, 12);
    expect(moment(0)).toBeCloseTo(0, 12);
  });

  it('swings about its balance with the period 2 pi sqrt(I / (c r^2))', () => {
    const r = 0.2;
    const inertia = 6;
    const stiffness = RATE * r * r;
    const balance = 45 * DEG;
    const swing = run(
      { x: [0, 90 * DEG], y: [0, r * 90 * DEG] },
      {
        inertia: flat(inertia),
        moment: flat(PRELOAD * r + stiffness * balance),
        initial: balance - 10 * DEG,
      },
      {},
      8,
    );
    const turns = swing.log.filter((e) => e.kind === 'motion' && e.t > 0).map((e) => e.t);
    expect(turns.length).toBeGreaterThan(4);
    const half = Math.PI * Math.sqrt(inertia / stiffness);
    turns.forEach((t, i) => expect(Math.abs(t / ((i + 1) * half) - 1)).toBeLessThan(1e-4));
  });

  it('gives back all it has taken, but for the loss of rubber: friction of that share of its pull', () => {
    // Let go fully stretched, against the stop at no stretch: work preload x + c x^2 / 2.
    const x = 0.2 * 90 * DEG;
    const work = PRELOAD * x + (RATE * x * x) / 2;
    const drum: Shape = { x: [0, 90 * DEG], y: [0, x] };
    for (const loss of [0, 0.1]) {
      const freed = run(drum, { inertia: flat(5), initial: 90 * DEG }, { loss }, 3);
      const arrival = freed.log.find((e) => e.device === 'leg' && e.speed > 0)!;
      const speed = Math.sqrt((2 * work * (1 - loss)) / 5);
      expect(Math.abs(arrival.speed / speed - 1)).toBeLessThan(1e-5);
      const { energy } = freed.account();
      expect(Math.abs(energy.gap)).toBeLessThan(1e-4 * work);
    }
  });
});
