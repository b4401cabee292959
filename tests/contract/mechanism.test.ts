import { describe, expect, it } from 'vitest';
import { mechanisms } from '../../packages/core/src/mechanism/index.js';
import type { Parameters, ParameterValue, Point3 } from '../../packages/core/src/define/index.js';

/** Defaults, and for the rest a share of the way through the range. */
function sample(kind: string, share: number, choice: number): Parameters {
  const p: Record<string, ParameterValue> = {};
  for (const [name, d] of Object.entries(mechanisms[kind].parameters)) {
    if (d.type === 'choice') p[name] = d.choices[choice % d.choices.length];
    else if (d.default !== undefined) p[name] = d.default;
    else if (d.type === undefined || d.type === 'number')
      p[name] = d.range[0] + share * (d.range[1] - d.range[0]);
  }
  return p;
}

const cases = Object.keys(mechanisms).flatMap((kind) =>
  [0.2, 0.5, 0.8].flatMap((share) =>
    [0, 1, 2, 3].map((choice) => [kind, share, choice, sample(kind, share, choice)] as const),
  ),
);
const far = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

describe.each(cases)('%s at %d of its ranges, choice %d', (kind, _share, _choice, p) => {
  const m = mechanisms[kind];
  const c = m.coordinate(p);

  it('covers its travel with finite samples, evenly enough for a spline', () => {
    for (const shape of [
      c.inertia,
      c.moment,
      ...(c.airload === undefined ? [] : [c.airload(0), c.airload(-0.3)]),
    ]) {
      expect(shape.x[0]).toBe(c.low);
      expect(shape.x.at(-1)).toBeCloseTo(c.high, 12);
      expect(shape.y.length).toBe(shape.x.length);
      expect(shape.y.every(Number.isFinite)).toBe(true);
      for (let i = 1; i < shape.x.length; i++) {
        expect(shape.x[i]).toBeGreaterThan(shape.x[i - 1]);
        expect(shape.x[i] - shape.x[i - 1]).toBeLessThan(0.02);
      }
    }
  });

  it('has a positive inertia and losses that are losses', () => {
    expect(Math.min(...c.inertia.y)).toBeGreaterThan(0);
    expect(c.damping).toBeGreaterThanOrEqual(0);
    expect(c.friction).toBeGreaterThanOrEqual(0);
    expect(c.staticRatio).toBeGreaterThanOrEqual(1);
    expect(c.restitution).toBeGreaterThanOrEqual(0);
    expect(c.restitution).toBeLessThan(1);
    expect(c.initial).toBeGreaterThanOrEqual(c.low);
    expect(c.initial).toBeLessThanOrEqual(c.high);
  });

  it('is drawn without a jump, its edges as long as its line', () => {
    const { at } = m.outline(p);
    const all = (angle: number): readonly Point3[] => {
      const { line, edge, tyre } = at(angle);
      if (edge !== undefined) expect(edge.length).toBe(line.length);
      return [...line, ...(edge ?? []), ...(tyre === undefined ? [] : [tyre.centre])];
    };
    let last = all(c.low);
    expect(last.length).toBeGreaterThanOrEqual(2);
    const reach = Math.max(...last.map((q) => far(q, last[0])));
    for (let i = 1; i <= 400; i++) {
      const now = all(c.low + ((c.high - c.low) * i) / 400);
      expect(now.length).toBe(last.length);
      // No part moves further in a step than twice its reach would swing.
      now.forEach((q, j) =>
        expect(far(q, last[j])).toBeLessThan((2 * reach * (c.high - c.low)) / 400 + 1e-12),
      );
      last = now;
    }
  });

  it('complains only about parameters it has', () => {
    for (const { parameter, message } of m.check?.(p) ?? []) {
      expect(Object.keys(m.parameters)).toContain(parameter);
      expect(message.length).toBeGreaterThan(10);
    }
  });
});

it('every mechanism names its two ends, and differently', () => {
  for (const { ends } of Object.values(mechanisms)) {
    expect(ends[0]).not.toBe(ends[1]);
    for (const word of ends) expect(word).toMatch(/^[a-z]+$/);
  }
});

it('impossible legs and doors are refused by name', () => {
  const leg = sample('leg', 0.3, 0);
  const doorway = sample('door', 0.3, 0);
  const names = (kind: string, p: Parameters): readonly string[] =>
    (mechanisms[kind].check?.(p) ?? []).map((x) => x.parameter);
  expect(names('leg', { ...leg, inertia: 1 })).toContain('inertia');
  expect(names('leg', { ...leg, slidingMass: 1e3 })).toContain('slidingMass');
  expect(names('leg', { ...leg, initial: 2.9 })).toContain('initial');
  expect(names('leg', { ...leg, gasArea: 0.01, shortening: { x: [0, 1], y: [0, 0.2] } })).toContain(
    'gasVolume',
  );
  expect(names('leg', { ...leg, length: 0.1, shortening: { x: [0, 1], y: [0, 0.2] } })).toContain(
    'shortening',
  );
  expect(names('door', { ...doorway, cog: 2 })).toContain('cog');
  expect(names('door', { ...doorway, inertia: 0.001 })).toContain('inertia');
  expect(names('door', { ...doorway, travel: 0.2, sealAngle: 0.3 })).toContain('sealAngle');
});
