/**
 * Pressure losses of lines: Hagen-Poiseuille, Colebrook-White, Swamee-Jain; worked examples of
 * White, Fluid Mechanics, and of Crane TP 410.
 */
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import {
  colebrook,
  frictionFactor,
  laminarConductance,
  lineDrop,
  lineFlow,
  reynoldsOf,
  swameeJain,
  turbulentFlow,
} from '../../packages/core/src/medium/index.js';
import type { LineLoss } from '../../packages/core/src/medium/index.js';
import { FakeFrame } from '../support/fake-frame.js';

const INCH = 0.0254;
const FOOT = 0.3048;
const GALLON = 231 * INCH ** 3;
const G = 9.80665;
const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);
const line = (rest: Partial<LineLoss>): LineLoss => ({
  bore: 0.01,
  length: 1,
  roughness: 0,
  fittings: 0,
  density: 860,
  viscosity: 14e-6,
  ...rest,
});

describe('Colebrook-White points, iterated from the equation', () => {
  it.each([
    [4e3, 0, 0.03991],
    [1e4, 0, 0.03088],
    [1e5, 0, 0.01799],
    [1e6, 0, 0.01165],
    [1e5, 1e-3, 0.02218],
    [1e6, 1e-3, 0.01994],
    [1e4, 1e-2, 0.04313],
    [1e5, 1e-2, 0.0385],
  ])('Re %d, eps/d %d: f %d, and Swamee-Jain within its 3 %%', (re, rough, f) => {
    expect(Math.abs(colebrook(re, rough) - f)).toBeLessThan(6e-6);
    expect(relative(swameeJain(re, rough), f)).toBeLessThan(0.03);
  });

  it('Re 1e5, eps/d 1e-4: Swamee-Jain 0.0184524 (a general formula library), Colebrook 0.0185139', () => {
    expect(relative(swameeJain(1e5, 1e-4), 0.018452424431901808)).toBeLessThan(2e-6);
    expect(relative(colebrook(1e5, 1e-4), 0.01851387)).toBeLessThan(1e-6);
  });
});

describe('White, Fluid Mechanics', () => {
  it('example 6.7: oil, 0.2 m3/s in 500 m of 200 mm, eps 0.26 mm (f read, head and drop from memory)', () => {
    const pipe = line({
      bore: 0.2,
      length: 500,
      roughness: 0.26e-3,
      density: 900,
      viscosity: 1e-5,
    });
    const re = reynoldsOf(0.2, pipe);
    const drop = lineDrop(0.2, pipe);
    expect(relative(re, 128_000)).toBeLessThan(0.01);
    expect(relative(frictionFactor(re, 0.0013), 0.0225)).toBeLessThan(0.02);
    expect(relative(drop / (900 * G), 117)).toBeLessThan(0.01);
    // The pipe falls by 10 degrees, which gives back rho g 500 sin 10.
    const fall = 900 * G * 500 * Math.sin((10 * Math.PI) / 180);
    expect(relative(drop - fall, 265_000)).toBeLessThan(0.03);
  });

  it("example 6.6, Moody's own: water 6 ft/s in 200 ft of 6 in asphalted iron, 4.5 ft and 280 lbf/ft2", () => {
    const pipe = line({
      bore: 0.5 * FOOT,
      length: 200 * FOOT,
      roughness: 0.0008 * 0.5 * FOOT,
      density: 998.4,
      viscosity: 1.1e-5 * FOOT ** 2,
    });
    const flow = 6 * FOOT * 0.25 * Math.PI * pipe.bore ** 2;
    const drop = lineDrop(flow, pipe);
    expect(relative(drop / (998.4 * G) / FOOT, 4.5)).toBeLessThan(0.025);
    expect(relative(drop / 47.880259, 280)).toBeLessThan(0.025);
  });

  it('problem P6.19: 0.071 m3/h through 5 mm at 375 kPa/m is an oil of 0.2917 Pa s (recomputed)', () => {
    const tube = line({ bore: 0.005, density: 900, viscosity: 0.29167 / 900 });
    expect(relative(lineDrop(0.071 / 3600, tube), 375_000)).toBeLessThan(0.001);
    expect(relative(lineFlow(375_000, tube), 0.071 / 3600)).toBeLessThan(0.001);
  });
});

describe('laminar flow', () => {
  it('examination problem: Re 800 in 100 mm at 0.01 m3/s has f 0.08 and loses 66.1 m per km', () => {
    const viscosity = (4 * 0.01) / (Math.PI * 0.1 * 800);
    const pipe = line({ bore: 0.1, length: 1000, density: 1000, viscosity });
    expect(frictionFactor(800, 0)).toBeCloseTo(0.08, 12);
    expect(relative(lineDrop(0.01, pipe) / (1000 * G), 66.1)).toBeLessThan(0.005);
  });
});

describe('Crane TP 410', () => {
  it('example 7-13: fuel oil, 100 ft of 2 in schedule 40, 2 gal/s: f 0.0230, 66 500 Pa', () => {
    const pipe = line({
      bore: 2.067 * INCH,
      length: 100 * FOOT,
      roughness: 0.0018 * INCH,
      density: 815,
      viscosity: 2.7e-6,
    });
    const re = reynoldsOf(2 * GALLON, pipe);
    expect(relative(frictionFactor(re, pipe.roughness / pipe.bore), 0.023)).toBeLessThan(0.02);
    expect(relative(lineDrop(2 * GALLON, pipe), 66_500)).toBeLessThan(0.02);
  });

  it('example 7.1 (metric): smooth pipe at Re 100 600 has f 0.0179', () => {
    expect(relative(frictionFactor(100_600, 0), 0.0179)).toBeLessThan(0.015);
  });
});

describe('flow from drop', () => {
  it('inverts drop from flow in every regime, with and without fittings', () => {
    for (const fittings of [0, 6])
      for (const roughness of [0, 1e-4])
        for (let drop = 1; drop < 3e7; drop *= 1.7) {
          const tube = line({ fittings, roughness });
          expect(relative(lineDrop(lineFlow(drop, tube), tube), drop)).toBeLessThan(1e-10);
        }
  });

  it('is explicit in turbulent flow, as Re sqrt(f) depends on the drop alone', () => {
    const tube = line({ roughness: 1e-5 });
    const flow = turbulentFlow(2e6, tube);
    expect(reynoldsOf(flow, tube)).toBeGreaterThan(4000);
    expect(relative(lineDrop(flow, tube), 2e6)).toBeLessThan(1e-10);
  });

  it('rises all the way from laminar to turbulent', () => {
    const tube = line({ roughness: 2e-4 });
    let before = 0;
    for (let drop = 100; drop < 1e6; drop *= 1.02) {
      const flow = lineFlow(drop, tube);
      expect(flow).toBeGreaterThan(before);
      before = flow;
    }
  });
});

describe('the line device, which reads a table', () => {
  const surroundings = {
    density: 860,
    viscosity: 14e-6,
    bulkModulus: 1.8e9,
    ambient: 101325,
    temperature: 313,
  };
  const parameters = {
    bore: 0.0064,
    length: 3,
    roughness: 1.5e-6,
    fittings: 4,
    wall: 9e-4,
    modulus: 7e10,
  };
  const frame = new FakeFrame(components.line, parameters, surroundings);
  const tube = line({ ...parameters });
  const at = (drop: number): { q: number; from: number } => {
    frame.pressures.set([1e5 + drop, 1e5]);
    components.line.equations!(frame);
    return frame.flows[0];
  };

  it('keeps to Colebrook-White within 0.02 % and to Hagen-Poiseuille at zero', () => {
    for (let drop = 0.1; drop < 3.9e7; drop *= 1.37)
      expect(relative(at(drop).q, lineFlow(1e5 + drop - 1e5, tube)), `${drop} Pa`).toBeLessThan(
        2e-4,
      );
    expect(relative(at(0).from, laminarConductance(tube))).toBeLessThan(1e-12);
  });

  it('keeps to it from short fat lines in hot oil to long thin ones in cold oil', () => {
    for (const bore of [0.002, 0.0064, 0.02])
      for (const length of [0.1, 3, 30])
        for (const fittings of [0, 4, 100])
          for (const viscosity of [3e-6, 14e-6, 500e-6])
            for (const roughness of [0, 1e-4]) {
              const given = { ...parameters, bore, length, fittings, roughness };
              const one = new FakeFrame(components.line, given, { ...surroundings, viscosity });
              for (let drop = 1; drop < 3.9e7; drop *= 7.3) {
                one.pressures.set([drop, 0]);
                components.line.equations!(one);
                const expected = lineFlow(drop, line({ ...given, viscosity }));
                // Speeds that no system has: the table may be coarse there.
                if (reynoldsOf(expected, line({ ...given, viscosity })) > 1e6) break;
                expect(relative(one.flows[0].q, expected)).toBeLessThan(2e-3);
              }
            }
  });

  it('goes on smoothly beyond its table', () => {
    const below = { ...at(4e7 * (1 - 1e-9)) };
    const above = { ...at(4e7 * (1 + 1e-9)) };
    expect(relative(above.q, below.q)).toBeLessThan(1e-8);
    expect(relative(above.from, below.from)).toBeLessThan(1e-6);
    expect(relative(at(8e7).q, lineFlow(8e7, tube))).toBeLessThan(0.01);
  });

  it('is odd in the drop', () => {
    for (const drop of [1, 1e3, 1e5, 9e4]) expect(at(-drop).q + at(drop).q).toBeCloseTo(0, 12);
  });
});
