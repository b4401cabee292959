/** Aircraft from the scatter of healthy ones. */
import { describe, expect, it } from 'vitest';
import {
  drawnAircraft,
  unknownsOf,
} from '../../../packages/core/src/analysis/diagnosis/unknown.js';
import { catalogues } from '../../../packages/core/src/index.js';
import { aircraft } from '../../support/aircraft.js';

const { scenario: gear } = aircraft('hedgelark');
const DRAWS = Array.from({ length: 8 }, (_, draw) => draw);

/** By how much each figure is off, as a share; only those that are. */
function off(draw: number): Map<string, number> {
  const drawn = drawnAircraft(catalogues, gear, draw);
  const out = new Map<string, number>();
  for (const section of ['mechanisms', 'components'] as const)
    for (const [name, { parameters }] of Object.entries(gear[section]))
      for (const [key, value] of Object.entries(parameters)) {
        const other = drawn[section][name].parameters[key];
        if (other !== value) out.set(`${name} ${key}`, Number(other) / Number(value) - 1);
      }
  out.set('air', drawn.fluid.freeAir / gear.fluid.freeAir - 1);
  out.set('temperature', (drawn.fluid.temperature - gear.fluid.temperature) / 2);
  return out;
}

describe('an aircraft that is drawn', () => {
  it('is one standard deviation off in all that nobody knows, the other way in every second one', () => {
    const [first, second] = [off(0), off(1)];
    expect(first.size).toBeGreaterThanOrEqual(unknownsOf(catalogues, gear).length);
    expect([...second.keys()]).toEqual([...first.keys()]);
    for (const [name, share] of first) expect(second.get(name), name).toBeCloseTo(-share, 9);
    expect(Math.abs(first.get('temperature')!)).toBeCloseTo(1, 9);
    expect(Math.abs(first.get('air')!)).toBeCloseTo(0.3, 9);
  });

  it('is the same for the same number, and another for another', () => {
    expect(off(3)).toEqual(off(3));
    const signs = DRAWS.map((draw) => [...off(draw).values()].map(Math.sign).join());
    expect(new Set(signs).size).toBe(DRAWS.length);
  });

  it('is as often up as down in every figure', () => {
    for (const name of off(0).keys()) {
      const ups = DRAWS.filter((draw) => off(draw).get(name)! > 0);
      expect(ups.length, name).toBe(DRAWS.length / 2);
    }
  });
});
