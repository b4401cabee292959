/**
 * Force, volume and speed of an actuator: US Army TM 1-1500-204-23-2 section 2 (volume, force),
 * a cylinder maker's formula sheet (rod speed, power).
 */
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import { SURROUNDINGS } from '../support/sample-parameters.js';

const INCH = 0.0254;
const PSI = 6894.757;
const LBF = 4.4482216;
const GPM = (231 * INCH ** 3) / 60;
const jack = components['double-acting-actuator'];
const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);

function parametersOf(given: Parameters): Parameters {
  const usual = Object.entries(jack.parameters).flatMap(([name, p]) =>
    'default' in p && p.default !== undefined ? [[name, p.default] as const] : [],
  );
  return { ...Object.fromEntries(usual), ...given };
}

/** Bore 2 in, rod 1 in, stroke 12 in: areas 3.142 and 2.356 in2. */
const p = parametersOf({ bore: 2 * INCH, rodDiameter: INCH, stroke: 12 * INCH });
const head = jack.chambers!.find((c) => c.port === 'headChamber')!.area(p);
const rod = -jack.chambers!.find((c) => c.port === 'rodChamber')!.area(p);

function push(headGauge: number, rodGauge: number): number {
  const { ambient } = SURROUNDINGS.mild;
  const frame = new FakeFrame(jack, p, SURROUNDINGS.mild);
  frame.pressures.fill(ambient);
  frame.pressures[2] = ambient + headGauge;
  frame.pressures[3] = ambient + rodGauge;
  frame.run(jack);
  return frame.forces[0].value;
}

describe('TM 1-1500-204-23-2, F = p A', () => {
  it('1000 psi pushes with 3142 lbf and pulls with 2356 lbf on a 2 in bore with a 1 in rod', () => {
    expect(relative(push(1000 * PSI, 0) / LBF, 3142)).toBeLessThan(2e-4);
    expect(relative(-push(0, 1000 * PSI) / LBF, 2356)).toBeLessThan(2e-4);
  });

  it('ambient pressure all round does nothing', () => {
    expect(Math.abs(push(0, 0))).toBeLessThan(1e-6);
  });

  it('8 in2 moved by 10 in is 80 in3', () => {
    const bore = Math.sqrt((4 * 8) / Math.PI) * INCH;
    const area = jack.chambers![0].area(parametersOf({ bore, rodDiameter: 0.01, stroke: 0.3 }));
    expect(relative((area * 10 * INCH) / INCH ** 3, 80)).toBeLessThan(1e-12);
  });
});

describe("cylinder maker's formula sheet", () => {
  it('rod speed in ft/s is 0.3208 times gpm over in2, both ways', () => {
    for (const area of [head, rod])
      expect(relative((4 * GPM) / area / 0.3048, (0.3208 * 4) / (area / INCH ** 2))).toBeLessThan(
        2e-4,
      );
  });

  it('power in hp is psi times gpm over 1714: force times speed', () => {
    const hp = (push(1000 * PSI, 0) * ((4 * GPM) / head)) / 745.69987;
    expect(relative(hp, (1000 * 4) / 1714)).toBeLessThan(5e-4);
  });
});

describe('chambers', () => {
  it('the rod chamber holds its annulus times the stroke when retracted', () => {
    const volume = jack.ports.rodChamber.volume;
    const held = typeof volume === 'function' ? volume(p) : volume;
    expect(relative(held - (p.deadVolume as number), rod * 12 * INCH)).toBeLessThan(1e-12);
  });
});
