import { describe, expect, it } from 'vitest';
import { mechanisms } from '../../packages/core/src/mechanism/index.js';
import type { Parameters, ParameterValue, Point3 } from '../../packages/core/src/define/index.js';

const DEG = Math.PI / 180;
/** Standard gravity, ISO 80000-3. */
const G = 9.80665;
const dist = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

describe('a linked member', () => {
  const p: Parameters = {
    ...Object.fromEntries(
      Object.entries(mechanisms['linked-member'].parameters).flatMap(([n, d]) =>
        d.default === undefined ? [] : [[n, d.default]],
      ),
    ),
    travel: 70 * DEG,
    swings: 'aft',
    mass: 4,
    cog: 0.3,
    inertia: 0.5,
    length: 0.6,
    width: 0.4,
    lean: 20 * DEG,
    pitch: 5 * DEG,
    pivotRight: 0.2,
  };
  const tip = (own: Record<string, ParameterValue>, q: number): Point3 => {
    const { line, edge } = mechanisms['linked-member'].outline({ ...p, ...own }).at(q);
    const middle = (a: Point3, b: Point3): Point3 => ({
      x: (a.x + b.x) / 2,
      y: (a.y + b.y) / 2,
      z: (a.z + b.z) / 2,
    });
    const [from, to] = [middle(line[0], line[1]), middle(edge![0], edge![1])];
    return { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
  };

  it.each(['aft', 'forward', 'inboard', 'outboard', 'level'])(
    'keeps energy: the moment is minus the slope of its weight’s height (%s)',
    (swings) => {
      const { moment } = mechanisms['linked-member'].coordinate({ ...p, swings });
      const height = (q: number): number => {
        const t = tip({ swings }, q);
        // Halfway out to the tip lies the centre of gravity; weight is 5 degrees off, aft.
        return 0.5 * (t.z * Math.cos(5 * DEG) - t.x * Math.sin(5 * DEG));
      };
      moment.x.forEach((q, i) => {
        if (i % 30 !== 15) return;
        const slope = (height(q + 1e-5) - height(q - 1e-5)) / 2e-5;
        expect(moment.y[i]).toBeCloseTo(-4 * G * slope, 6);
      });
    },
  );

  it('hangs plumb without a moment, and level ones have none on a level aircraft', () => {
    const still = { pitch: 0, lean: 0 };
    expect(mechanisms['linked-member'].coordinate({ ...p, ...still }).moment.y[0]).toBeCloseTo(
      0,
      12,
    );
    const { y } = mechanisms['linked-member'].coordinate({
      ...p,
      ...still,
      swings: 'level',
    }).moment;
    expect(y.every((m) => Math.abs(m) < 1e-12)).toBe(true);
    expect(Math.min(...y.map((_, i) => tip({ swings: 'level' }, i / 200).x))).toBeGreaterThan(0);
  });

  it('has its size: tip at its length, hinge as wide as given', () => {
    for (const q of [0, 0.5, 1.2])
      expect(dist(tip({}, q), { x: 0, y: 0, z: 0 })).toBeCloseTo(0.6, 12);
    const { line } = mechanisms['linked-member'].outline(p).at(0);
    expect(dist(line[0], line[1])).toBeCloseTo(0.4, 12);
  });
});
