/**
 * Real gas in a bottle.
 *
 * Source of the nitrogen values: R. Span, E.W. Lemmon, R.T Jacobsen, W. Wagner, A. Yokozeki, J. Phys.
 * Chem. Ref. Data 29 (2000) 1361, evaluated with a general-purpose property library: Z by psia and
 * the pressure of a bottle filled at 70 degF, psig (atmosphere 14.696 psi). 0.3 % is what a form of
 * eleven constants for all gases can do; an ideal gas is 13 % out at -40 degC.
 */
import { describe, expect, it } from 'vitest';
import {
  anrDensity,
  chargeAt,
  compressibility,
  gases,
  vesselCharge,
  vesselContent,
  vesselPressure,
} from '../../packages/core/src/medium/index.js';

const PSI = 6894.757;
const ATMOSPHERE = 14.696;
const R = 8.314462618;
const K = (celsius: number): number => celsius + 273.15;

const Z: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  '-40': { 500: 0.9654, 1000: 0.94152, 1500: 0.9313, 2000: 0.93602, 2500: 0.95469, 3000: 0.98474 },
  '-20': { 500: 0.97839, 1000: 0.96559, 1500: 0.963, 2000: 0.97107, 2500: 0.98912, 3000: 1.0157 },
  '0': { 500: 0.9877, 1000: 0.98264, 1500: 0.98547, 2000: 0.99626, 2500: 1.01449, 3000: 1.03921 },
  '20': { 500: 0.99451, 1000: 0.995, 1500: 1.00173, 2000: 1.01461, 2500: 1.0332, 3000: 1.05686 },
  '40': { 500: 0.99958, 1000: 1.00413, 1500: 1.0137, 2000: 1.02813, 2500: 1.04707, 3000: 1.07002 },
  '50': { 500: 1.00162, 1000: 1.00779, 1500: 1.01848, 2000: 1.03352, 2500: 1.0526, 3000: 1.07527 },
};

/** psig at temperatures in degC of a bottle filled to the key at 21.111 degC. */
const BOTTLE: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
  1800: [
    [-54, 1201.1],
    [-40, 1313.7],
    [-29, 1401.9],
    [-20, 1473.8],
    [0, 1632.9],
    [10, 1712.1],
    [30, 1870.1],
    [40, 1948.9],
    [50, 2027.5],
    [71, 2192.1],
  ],
  3000: [
    [-54, 1897.5],
    [-40, 2105],
    [-29, 2267.4],
    [-20, 2399.8],
    [0, 2692.7],
    [10, 2838.5],
    [30, 3128.9],
    [40, 3273.5],
    [50, 3417.8],
    [71, 3719.8],
  ],
};

describe('nitrogen', () => {
  it('has the published compressibility within 0.3 %', () => {
    for (const [celsius, row] of Object.entries(Z))
      for (const [psia, z] of Object.entries(row)) {
        const p = Number(psia) * PSI;
        const t = K(Number(celsius));
        const content = vesselContent(gases.nitrogen, 1, p, t);
        const moles = (content * anrDensity(gases.nitrogen)) / gases.nitrogen.molarMass;
        expect(p / (moles * R * t) / z, `${celsius} degC, ${psia} psia`).toBeCloseTo(1, 2.2);
        expect(Math.abs(p / (moles * R * t) / z - 1)).toBeLessThan(3e-3);
      }
  });

  it('filled at 70 degF shows the published pressures from -54 to 71 degC within 0.3 %', () => {
    for (const [fill, rows] of Object.entries(BOTTLE))
      for (const [celsius, psig] of rows) {
        const p = chargeAt(
          gases.nitrogen,
          (Number(fill) + ATMOSPHERE) * PSI,
          K(21.111),
          K(celsius),
        );
        expect(Math.abs(p / ((psig + ATMOSPHERE) * PSI) - 1), `${fill} at ${celsius}`).toBeLessThan(
          3e-3,
        );
      }
  });

  it('as an ideal gas would be 13 % above that at -40 degC', () => {
    const ideal = { ...gases.nitrogen, criticalTemperature: 1e-3 };
    const charge = (3000 + ATMOSPHERE) * PSI;
    const real = chargeAt(gases.nitrogen, charge, K(21.111), K(-40));
    expect(chargeAt(ideal, charge, K(21.111), K(-40)) / PSI - ATMOSPHERE).toBeCloseTo(2374, -0.5);
    expect(chargeAt(ideal, charge, K(21.111), K(-40)) / real).toBeGreaterThan(1.12);
  });

  // A trade figure (common practice, no source) has 1630 psig at 20 degF: that is the ideal gas. By the
  // reference equation above, between its values at -20 and 0 degC, it is 50 psi less.
  it('1800 psig at 70 degF reads 1580 psig at 20 degF; the trade figure of 1630 is an ideal gas', () => {
    const charge = (1800 + ATMOSPHERE) * PSI;
    const cold = (20 - 32) / 1.8;
    const psig = (gas: typeof gases.nitrogen): number =>
      chargeAt(gas, charge, K(21.111), K(cold)) / PSI - ATMOSPHERE;
    const published = 1473.8 + ((cold + 20) / 20) * (1632.9 - 1473.8);
    expect(Math.abs(psig(gases.nitrogen) / published - 1)).toBeLessThan(3e-3);
    expect(Math.abs(psig({ ...gases.nitrogen, criticalTemperature: 1e-3 }) - 1630)).toBeLessThan(5);
  });
});

describe('other gases', () => {
  // Scott specialty gas catalogue: a 29.5 L cylinder at 2000 psi, 70 degF holds 144 cubic feet of air: Z = 0.998.
  it('air at 2000 psi and 70 degF has Z = 0.998 within 1 %', () => {
    const content = vesselContent(gases['dry-air'], 1, 2000 * PSI + 101_325, K(21.111));
    const z = (2000 * PSI + 101_325) / (content * ((1e5 * K(21.111)) / 293.15));
    expect(Math.abs(z / 0.998 - 1)).toBeLessThan(0.01);
  });

  // Span and Wagner 1996, table of saturation, from memory.
  it('carbon dioxide has the published vapour pressure, and presses no more with liquid in the bottle', () => {
    const gas = gases['carbon-dioxide'];
    const out = { pressure: 0, byGas: 0, byTemperature: 0 };
    for (const [celsius, published] of [
      [-40, 1.0045e6],
      [-20, 1.9696e6],
      [0, 3.4851e6],
      [20, 5.7291e6],
    ]) {
      const t = K(celsius);
      expect(Math.abs(gas.saturation!.pressure(t) / published - 1)).toBeLessThan(1e-3);
      // The trace of a rise that keeps the solver's slope from nothing is 0.1 % for each fill of vapour.
      for (const content of [150, 300]) {
        vesselPressure(gas, 1, content, t, out);
        const fills = content / vesselCharge(gas, 1, published * 1.01, t);
        if (fills < 1) continue;
        expect(out.pressure / published - 1).toBeGreaterThan(-1e-3);
        expect(out.pressure / published - 1).toBeLessThan(1e-3 * fills + 1e-3);
      }
    }
  });
});

describe('every gas', () => {
  it('presses more the more of it there is and the warmer it is, with the slopes it says', () => {
    const out = { pressure: 0, byGas: 0, byTemperature: 0 };
    const at = (kind: string, content: number, t: number): number => {
      vesselPressure(gases[kind], 1e-3, content, t, out);
      return out.pressure;
    };
    for (const kind of Object.keys(gases))
      for (const t of [70, 120, 200, 250, 293, 330, 500])
        for (const content of [1e-5, 1e-3, 0.05, 0.2, 0.4]) {
          const p = at(kind, content, t);
          const { byGas, byTemperature } = out;
          const wide = content * 1e-5;
          const slope = (at(kind, content + wide, t) - at(kind, content - wide, t)) / (2 * wide);
          expect(p).toBeGreaterThan(0);
          expect(byGas, `${kind} ${t} K ${content}`).toBeGreaterThan(0);
          expect(Math.abs(slope / byGas - 1), `${kind} ${t} K ${content}`).toBeLessThan(1e-3);
          const warmer =
            (at(kind, content, t * 1.0001) - at(kind, content, t * 0.9999)) / (2e-4 * t);
          expect(Math.abs(warmer - byTemperature)).toBeLessThan(2e-3 * Math.abs(byTemperature) + 1);
        }
  });

  it('has a compressibility of 1 when thin', () => {
    const z = { z: 0, byDensity: 0, byTemperature: 0 };
    for (const gas of Object.values(gases)) {
      compressibility(gas, 1e-6, 300, z);
      expect(z.z).toBeCloseTo(1, 9);
    }
  });
});
