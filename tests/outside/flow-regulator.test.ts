/**
 * Flow regulator: the flow through a pressure-compensated valve depends on its control orifice
 * alone and not on the total drop, though in practice not quite (abstract of Analysis of a
 * Pressure-Compensated Flow Control Valve, ASME J. Dyn. Sys. Meas. Control 127, 2005,
 * 10.1115/1.1870037). A band of a few per cent is usual (from memory).
 */
import { describe, expect, it } from 'vitest';
import type { Run } from '../../packages/core/src/define/index.js';
import { gear, shift, UP, when } from '../support/one-jack.js';
import { coordinate, flat } from '../support/rig.js';
import { valveFlows } from '../support/valve-flows.js';

const SET = { flow: 1e-4, least: 7e5 };
const through = (drop: number, own = {}): number =>
  valveFlows('flow-regulator', { ...SET, ...own }, [drop, 0]).through;

describe('a flow regulator', () => {
  it('passes its setting within one per cent from its least drop to thirty times that', () => {
    for (let drop = 7e5; drop < 2.1e7; drop *= 1.2)
      expect(Math.abs(through(drop) / 1e-4 - 1)).toBeLessThan(0.01);
  });

  it('is an orifice far below its least drop: twice the flow at four times the drop', () => {
    const wide = { least: 5e6 };
    expect(through(4e5, wide) / through(1e5, wide)).toBeCloseTo(2, 1);
  });

  it('is no less than that orifice back, and free where it has a check valve', () => {
    const back = (own: object): Record<string, number> =>
      valveFlows('flow-regulator', { ...SET, ...own }, [0, 3.5e5]);
    expect(-back({}).through / 1e-4).toBeCloseTo(1, 2);
    expect(back({}).back).toBeUndefined();
    expect(back({ freeBack: true }).back).toBeGreaterThan(3e-4);
  });

  it('whose compensator sticks open follows the drop like an orifice', () => {
    const stuck = (drop: number): number => through(drop, { stuckOpen: 1 });
    expect(stuck(1.4e7) / stuck(3.5e6)).toBeCloseTo(2, 2);
  });

  it('gives a jack the same time whatever it carries; an orifice does not', () => {
    const time = (load: number, part: string): number => {
      const run: Run = gear('selector-valve', {
        steps: [shift(0.5, UP)],
        duration: 25,
        tolerance: 'fine',
        up: 'leg-up',
        coordinates: { leg: coordinate({ inertia: flat(20), moment: flat(-load) }) },
        extra: {
          feed: {
            is: part,
            ports: { inlet: 'up', outlet: 'leg-up' },
            parameters: part === 'orifice' ? { bore: 1.3e-3 } : SET,
          },
        },
      });
      return when(run, 'leg', 'at high') - 0.5;
    };
    const light = time(500, 'flow-regulator');
    expect(Math.abs(time(2500, 'flow-regulator') / light - 1)).toBeLessThan(0.02);
    expect(time(2500, 'orifice') / time(500, 'orifice')).toBeGreaterThan(1.3);
    // 20 cm2 x 0.3 m at 100 cm3/s.
    const volume = 0.25 * Math.PI * 0.0505 ** 2 * 0.3;
    expect(Math.abs(light / (volume / 1e-4) - 1)).toBeLessThan(0.02);
  });
});
