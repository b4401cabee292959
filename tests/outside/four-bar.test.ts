import { expect, test } from 'vitest';
import { turnRocker, type FourBar } from '../../packages/core/src/scenario/linkage.js';

const DEG = Math.PI / 180;

function turned(bars: FourBar, low: number, high: number): { x: number[]; y: number[] } {
  const result = turnRocker(bars, low, high);
  if ('stuckAt' in result) throw new Error(`stuck at ${result.stuckAt / DEG} deg`);
  return { x: [...result.shape.x], y: [...result.shape.y] };
}

/** Where the ends of the bars are, from their lengths alone: the rocker's angle by bisection on the coupler's length. */
function byBisection(bars: FourBar, crank: number, from: number, to: number): number {
  const { ground, crank: c, coupler, rocker } = bars;
  const gap = (angle: number): number =>
    Math.hypot(
      ground + rocker * Math.cos(angle) - c * Math.cos(crank),
      rocker * Math.sin(angle) - c * Math.sin(crank),
    ) - coupler;
  let [a, b] = [from, to];
  if (gap(a) * gap(b) > 0) throw new Error('no sign change');
  for (let i = 0; i < 80; i++) {
    const middle = (a + b) / 2;
    if (gap(a) * gap(middle) <= 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

const DOOR: FourBar = {
  ground: 0.3,
  crank: 0.08,
  coupler: 0.28,
  rocker: 0.09,
  crankAtLow: 40 * DEG,
  crossed: false,
};

test('a parallelogram turns its rocker as its crank turns', () => {
  // Opposite sides of a parallelogram stay parallel (Euclid I.33).
  for (const crankAtLow of [30 * DEG, -100 * DEG]) {
    const bars = { ...DOOR, crank: 0.1, rocker: 0.1, coupler: 0.3, crankAtLow };
    const { x, y } = turned(bars, 0.2, 1.4);
    x.forEach((angle, i) => expect(y[i]).toBeCloseTo(angle - 0.2, 9));
  }
});

test.each([false, true])('every angle obeys Freudenstein’s equation (crossed: %s)', (crossed) => {
  // F. Freudenstein, "An analytical approach to the design of four-link mechanisms" (1954), from memory:
  // K1 cos(rocker) - K2 cos(crank) + K3 = cos(crank - rocker), lengths a (crank), b (coupler), c (rocker), d (ground).
  const bars = { ...DOOR, crossed };
  const { ground: d, crank: a, coupler: b, rocker: c } = bars;
  const [k1, k2, k3] = [d / a, d / c, (a * a - b * b + c * c + d * d) / (2 * a * c)];
  // Only the start is taken from elsewhere: the upper or the lower circle crossing.
  const start = crossed
    ? byBisection(bars, bars.crankAtLow, 200 * DEG, 330 * DEG)
    : byBisection(bars, bars.crankAtLow, 60 * DEG, 150 * DEG);
  const { x, y } = turned(bars, 0, 80 * DEG);
  expect(x).toHaveLength(181);
  x.forEach((angle, i) => {
    const crank = bars.crankAtLow + angle;
    const rocker = start + y[i];
    expect(k1 * Math.cos(rocker) - k2 * Math.cos(crank) + k3).toBeCloseTo(
      Math.cos(crank - rocker),
      9,
    );
  });
  // Mirrored and unmirrored assemblies turn differently: the test can tell them apart.
  expect(y[180]).not.toBeCloseTo(turned({ ...DOOR, crossed: !crossed }, 0, 80 * DEG).y[180], 2);
});

test('the rocker turns on without a jump where its angle passes a half turn', () => {
  const bars = { ...DOOR, crank: 0.1, rocker: 0.1, coupler: 0.3, crankAtLow: 100 * DEG };
  const { y } = turned(bars, 0, 75 * DEG);
  y.forEach((angle, i) => i > 0 && expect(Math.abs(angle - y[i - 1])).toBeLessThan(2 * DEG));
  const mirrored = turned({ ...bars, crankAtLow: -100 * DEG }, 0, 75 * DEG);
  expect(mirrored.y[180]).toBeCloseTo(75 * DEG, 9);
});

test('bars that cannot close say at which angle of the driver', () => {
  // The crank's end and the rocker's pivot may be at most coupler + rocker apart: by the law of cosines
  // (Euclid II.12) that is reached at cos(crank) = (c2 + g2 - (p + r)2) / (2 c g).
  const bars = { ...DOOR, coupler: 0.24 };
  const { ground: g, crank: c, coupler: p, rocker: r } = bars;
  const limit = Math.acos((c * c + g * g - (p + r) ** 2) / (2 * c * g));
  const result = turnRocker(bars, 5 * DEG, 85 * DEG);
  expect('stuckAt' in result && result.stuckAt).toBeCloseTo(limit - bars.crankAtLow + 5 * DEG, 4);
  expect(turnRocker({ ...DOOR, coupler: 2 }, 5 * DEG, 85 * DEG)).toEqual({ stuckAt: 5 * DEG });
});
