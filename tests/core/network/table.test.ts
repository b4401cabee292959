import { describe, expect, it } from 'vitest';
import { TableBuilder } from '../../../packages/core/src/network/table.js';

/** A table over [0, 2] of a function sampled at 181 points, as mechanisms give it. */
function tableOf(f: (x: number) => number, low = 0, high = 2) {
  const x = Array.from({ length: 181 }, (_, i) => low + ((high - low) * i) / 180);
  const builder = new TableBuilder();
  builder.add({ x: [0, 1], y: [7, 7] }, 0, 1);
  const offset = builder.add({ x, y: x.map(f) }, low, high);
  const tables = builder.build();
  return (v: number) => {
    tables.at(offset, v);
    return { value: tables.value, slope: tables.slope, curvature: tables.curvature };
  };
}

describe('tables of the network', () => {
  const at = tableOf(Math.sin);

  it('meet a smooth function and its slope between the points', () => {
    for (let x = 0.005; x < 2; x += 0.0137) {
      // The end slopes come from a parabola: third-order error there, far less inside.
      expect(Math.abs(at(x).value - Math.sin(x))).toBeLessThan(x > 0.1 && x < 1.9 ? 5e-9 : 5e-7);
      expect(Math.abs(at(x).slope - Math.cos(x))).toBeLessThan(x > 0.1 && x < 1.9 ? 1e-6 : 1e-4);
    }
  });

  it('slope and curvature are the derivatives of the very same cubic', () => {
    for (let x = 0.005; x < 2; x += 0.0311) {
      const h = 1e-6;
      expect(Math.abs((at(x + h).value - at(x - h).value) / (2 * h) - at(x).slope)).toBeLessThan(
        1e-8,
      );
      expect(
        Math.abs((at(x + h).slope - at(x - h).slope) / (2 * h) - at(x).curvature),
      ).toBeLessThan(1e-4);
    }
  });

  it('go through the joints without a jump of value, slope or curvature', () => {
    const step = 2 / 128;
    for (let i = 1; i < 128; i++) {
      const left = at(i * step - 1e-12);
      const right = at(i * step + 1e-12);
      expect(Math.abs(left.value - right.value)).toBeLessThan(1e-11);
      expect(Math.abs(left.slope - right.slope)).toBeLessThan(1e-9);
      expect(Math.abs(left.curvature - right.curvature)).toBeLessThan(1e-7);
    }
  });

  it('go on beyond the ends', () => {
    expect(Math.abs(at(-0.001).value - Math.sin(-0.001))).toBeLessThan(1e-6);
    expect(Math.abs(at(2.001).value - Math.sin(2.001))).toBeLessThan(1e-6);
  });

  it('a straight line of two points is exact, and a flat one has no slope', () => {
    const builder = new TableBuilder();
    const line = builder.add({ x: [0, 2], y: [1, 5] }, 0, 2);
    const flat = builder.add({ x: [0, 1, 2], y: [3, 3, 3] }, 0, 2);
    const t = builder.build();
    t.at(line, 0.77);
    expect(Math.abs(t.value - 2.54)).toBeLessThan(1e-13);
    expect(Math.abs(t.slope - 2)).toBeLessThan(1e-11);
    t.at(flat, 1.9);
    expect([t.value, t.slope, t.curvature]).toEqual([3, 0, 0]);
  });
});
