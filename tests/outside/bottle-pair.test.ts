/**
 * Two vessels of ideal gas joined by a nozzle, played by the engine, against the first law as in
 * any thermodynamics textbook (two rigid tanks, one adiabatic boundary around both):
 *   U = p V / (k - 1) is kept, so p = (p1 V1 + p2 V2) / (V1 + V2) at the end, whether or not heat
 *   passes between gas and walls that stand at the first temperature;
 *   what stays in the emptying one expands reversibly: T / T0 = (p / p0)^((k - 1) / k);
 *   the temperature of the other follows from the mass.
 */
import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../packages/core/src/machine/simulate.js';
import { gases, orificeConstant } from '../../packages/core/src/medium/index.js';
import { device, rig } from '../support/rig.js';

const FULL = 10e6;
const T0 = 293.15;
const VOLUMES = [1e-3, 3e-3] as const;
const ideal = { ...gases.nitrogen, kind: 'ideal', criticalTemperature: 1e-3 };

/** Pressures (Pa), temperatures (K) and gas (m3 at ANR) of both, at the start and at the end. */
function joined(other: number, exchange: number) {
  const vessel = (volume: number, pressure: number) => ({
    title: 'vessel',
    volume: 0,
    dry: true,
    optional: true,
    vessel: () => ({ gas: 'ideal', volume, pressure, temperature: T0, exchange }),
  });
  const made = rig({
    parts: {
      pair: {
        is: device('pair', {
          ports: { one: vessel(VOLUMES[0], FULL), two: vessel(VOLUMES[1], other) },
          flows: {
            hole: {
              from: 'one',
              to: 'two',
              law: (_, s) => ({
                constant: orificeConstant(0.85, 1e-6, s.density),
                transition: 1e4,
                open: 1,
                leak: 0,
              }),
            },
          },
        }),
      },
    },
    duration: 60,
    temperature: T0,
  });
  const run = simulateWith({ ...made.with, gases: { ideal } }, made.scenario, {
    tolerance: 'fine',
  });
  const both = (name: string, at: number): readonly [number, number] => [
    run.series(`pair.one.${name}`)!.v.at(at)!,
    run.series(`pair.two.${name}`)!.v.at(at)!,
  ];
  return {
    pressure: both('pressure', -1),
    temperature: both('temperature', -1),
    gas: both('gas', -1),
    first: both('gas', 0),
  };
}

const mixed = (other: number): number =>
  (FULL * VOLUMES[0] + other * VOLUMES[1]) / (VOLUMES[0] + VOLUMES[1]);

describe('two vessels joined', () => {
  it.each([2e6, 101_325])('at 10 MPa and %d Pa end at the pressure of the first law', (other) => {
    for (const exchange of [1e9, 5, 1e-2]) {
      const { pressure, gas, first } = joined(other, exchange);
      for (const p of pressure) expect(Math.abs(p / mixed(other) - 1)).toBeLessThan(1e-4);
      expect((gas[0] + gas[1]) / (first[0] + first[1])).toBeCloseTo(1, 9);
    }
  });

  it.each([2e6, 101_325])('without heat are as cold and as warm as it says (%d Pa)', (other) => {
    const { temperature } = joined(other, 1e9);
    const end = mixed(other);
    const cold = T0 * (end / FULL) ** (0.4 / 1.4);
    // p V / T counts the gas: what is not in the one is in the other.
    const whole = (FULL * VOLUMES[0] + other * VOLUMES[1]) / T0;
    const warm = (end * VOLUMES[1]) / (whole - (end * VOLUMES[0]) / cold);
    expect(Math.abs(temperature[0] / cold - 1)).toBeLessThan(1e-4);
    expect(Math.abs(temperature[1] / warm - 1)).toBeLessThan(2e-4);
  });

  it('with heat end at the temperature of their walls', () => {
    for (const t of joined(2e6, 1e-2).temperature) expect(t).toBeCloseTo(T0, 3);
  });
});
