/** Gas of bottles: what the solver may probe, what a charge is, what cannot be read on a gauge. */
import { describe, expect, it } from 'vitest';
import {
  ANR,
  chargeAt,
  gases,
  vesselCharge,
  vesselContent,
  vesselPressure,
} from '../../packages/core/src/medium/index.js';

const VOLUME = 1e-3;
const ROOM = 294.26;
const out = { pressure: 0, byGas: 0, byTemperature: 0 };

/** A full bottle: 3000 psi; carbon dioxide just short of liquid. */
const fullCharge = (kind: string): number => (kind === 'carbon-dioxide' ? 5.8e6 : 20.7e6);

describe('the gas catalogue', () => {
  it.each(Object.entries(gases))(
    '%s is listed under its own kind, with its source',
    (name, gas) => {
      expect(gas.kind).toBe(name);
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(gas.source.length).toBeGreaterThan(20);
    },
  );
});

describe.each(Object.keys(gases))('%s in a vessel', (kind) => {
  const gas = gases[kind];
  const full = vesselContent(gas, VOLUME, fullCharge(kind), ROOM);

  it('presses more with more of it, never less than nothing, from 60 to 600 K and to four charges', () => {
    const wrong: string[] = [];
    for (let t = 60; t <= 600; t += 4) {
      let last = -1;
      for (let i = 0; i <= 200; i++) {
        vesselPressure(gas, VOLUME, (4 * full * i) / 200, t, out);
        const { pressure, byGas, byTemperature } = out;
        const sound =
          Number.isFinite(byTemperature) && pressure > last && byGas > 0 && byTemperature >= 0;
        if (!sound) wrong.push(`${t} K, ${i / 50} charges: ${JSON.stringify(out)} after ${last}`);
        last = pressure;
      }
    }
    expect(wrong).toEqual([]);
  });

  it('holds nothing at no pressure, and an ideal amount at a low one', () => {
    vesselPressure(gas, VOLUME, 0, ROOM, out);
    expect(out.pressure).toBe(0);
    // Boyle and Charles; the second virial coefficient is worth 1e-4 here at most.
    const thin = vesselContent(gas, VOLUME, 1e3, ROOM);
    expect(thin / ((1e3 / ANR.pressure) * (ANR.temperature / ROOM) * VOLUME)).toBeCloseTo(1, 3);
  });

  it('has the content that gives the pressure back, at any temperature that is not liquid', () => {
    for (const t of [ROOM, 330, 400])
      for (const share of [1e-3, 0.1, 0.5, 1]) {
        const pressure = share * fullCharge(kind);
        vesselPressure(gas, VOLUME, vesselContent(gas, VOLUME, pressure, t), t, out);
        expect(out.pressure / pressure).toBeCloseTo(1, 10);
      }
  });

  it('shows more when warmer, and its own charge again when back', () => {
    const charge = fullCharge(kind);
    let last = 0;
    for (let t = 233.15; t <= 323.15; t += 5) {
      const shown = chargeAt(gas, charge, ROOM, t);
      expect(shown, `${t} K`).toBeGreaterThan(last);
      last = shown;
    }
    expect(chargeAt(gas, charge, ROOM, ROOM) / charge).toBeCloseTo(1, 10);
  });
});

describe('carbon dioxide at its vapour pressure', () => {
  const gas = gases['carbon-dioxide'];
  const vapour = gas.saturation!.pressure(ROOM);

  it('holds what fills the bottle with vapour, whatever more the gauge is said to show', () => {
    const most = vesselCharge(gas, VOLUME, vapour, ROOM);
    for (const said of [1.01, 1.2, 2, 6])
      expect(vesselCharge(gas, VOLUME, said * vapour, ROOM)).toBe(most);
    vesselPressure(gas, VOLUME, most, ROOM, out);
    expect(out.pressure / vapour).toBeCloseTo(1, 12);
    // Just short of it there is just less.
    const less = vesselCharge(gas, VOLUME, 0.9999 * vapour, ROOM);
    expect(less).toBeLessThan(most);
    expect(less / most).toBeGreaterThan(0.995);
  });

  // A run finds the content of a bottle again from its pressure: liquid must not get lost on the way.
  it('with liquid in the bottle has the content that gave the pressure', () => {
    const content = vesselCharge(gas, VOLUME, 0.95 * vapour, ROOM);
    for (const t of [213.15, 233.15, 253.15, 273.15]) {
      vesselPressure(gas, VOLUME, content, t, out);
      expect(out.pressure).toBeGreaterThan(gas.saturation!.pressure(t));
      expect(vesselContent(gas, VOLUME, out.pressure, t) / content).toBeCloseTo(1, 9);
    }
  });

  it('shows no more at any temperature than a bottle full of vapour would', () => {
    for (const t of [233.15, 273.15, 303.15, 313.15, 323.15])
      expect(chargeAt(gas, 3 * vapour, ROOM, t)).toBe(chargeAt(gas, vapour, ROOM, t));
  });
});
