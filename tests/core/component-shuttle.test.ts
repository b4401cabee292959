/** Shuttle valve at work, between a stand and a bottle. */
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import type { Parameters } from '../../packages/core/src/define/index.js';
import type { SimulatedRun } from '../../packages/core/src/machine/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import {
  around,
  gasBench,
  handle,
  stand,
  tank,
  vent,
  CLOSED,
  OPEN,
  type GasBench,
} from '../support/gas-bench.js';
import { at, gauge, last, told, when } from '../support/one-jack.js';
import { step } from '../support/rig.js';
import { SURROUNDINGS } from '../support/sample-parameters.js';

const SHIFT = 3e5;

/** Oil from a stand at `oil`, gas at `gas`, a way to the tank behind the outlet. */
function shuttled(parameters: Parameters, own: GasBench, stands: Parameters): SimulatedRun {
  return gasBench({
    ...own,
    extra: {
      tank,
      stand: stand('oil', stands),
      // Lets the normal line down when its stand is off, as a selector at rest does.
      rest: { is: 'orifice', ports: { inlet: 'oil', outlet: 'tank' }, parameters: { bore: 7e-4 } },
      bleed: vent('gas'),
      shuttle: {
        is: 'shuttle-valve',
        ports: { normal: 'oil', emergency: 'gas', outlet: 'down' },
        parameters: { shift: SHIFT, ...parameters },
      },
      load: { is: 'orifice', ports: { inlet: 'down', outlet: 'tank' }, parameters: { bore: 7e-4 } },
      ...own.extra,
    },
  });
}
const pull = [handle(0.2, OPEN)];
const over = (run: SimulatedRun, t: number): readonly [number, number] => {
  const [gasBefore, gasAfter] = around(run, 'gas.pressure', t);
  const [oilBefore, oilAfter] = around(run, 'oil.pressure', t);
  return [gasBefore - oilBefore, gasAfter - oilAfter];
};

describe('a shuttle valve', () => {
  it('shifts where the emergency side is above the normal side by its shift pressure', () => {
    for (const on of [false, true]) {
      const run = shuttled({ shiftTime: 0.05 }, { steps: pull }, { on });
      expect(told(run, 'shuttle')).toEqual(['shifting', 'emergency']);
      const t = when(run, 'shuttle', 'shifting');
      const [before, after] = over(run, t);
      expect(before).toBeLessThan(SHIFT);
      expect(after).toBeGreaterThan(SHIFT);
      expect(when(run, 'shuttle', 'emergency') - t).toBeCloseTo(0.05, 4);
      // Oil at 5 MPa holds it until the gas is well above; without oil it goes at once.
      expect(gauge(run, 'gas', t) > 4e6).toBe(on);
    }
  });

  it('in the middle leaves both ways half open, on a seat only one', () => {
    const device = components['shuttle-valve'];
    const p = Object.fromEntries(
      Object.entries(device.parameters).map(([name, d]) => [name, d.default!]),
    );
    const frame = new FakeFrame(device, p, SURROUNDINGS.mild);
    const openings = (position: number): number[] => {
      frame.states[0] = position;
      frame.run(device);
      return [...frame.openings];
    };
    expect(openings(0)).toEqual([1, 0]);
    expect(openings(0.5)).toEqual([0.5, 0.5]);
    expect(openings(1)).toEqual([0, 1]);
  });

  it('stays where it is when both sides have fallen, and goes back for oil above by as much', () => {
    const steps = [handle(0.2, OPEN), handle(0.7, CLOSED), step(30, 'stand', 'on', 1)];
    const bottle = { volume: 2e-4, charge: 4e6 };
    const run = shuttled({}, { steps, bottle, duration: 33 }, { on: false });
    expect(gauge(run, 'gas', 29.9)).toBeLessThan(0.2 * SHIFT);
    expect(at(run, 'shuttle.position', 29.9)).toBe(1);
    expect(told(run, 'shuttle')).toEqual(['shifting', 'emergency', 'returning', 'normal']);
    const t = when(run, 'shuttle', 'returning');
    expect(t).toBeGreaterThan(30);
    const [before, after] = over(run, t);
    expect(before).toBeGreaterThan(-SHIFT);
    expect(after).toBeLessThan(-SHIFT);
    expect(last(run, 'shuttle.oil')).toBeGreaterThan(1e-5);
  });

  it('turns back half way when the difference turns', () => {
    const steps = [...pull, step(0.6, 'stand', 'on', 1)];
    const run = shuttled(
      { shiftTime: 1 },
      { steps, bottle: { charge: 1e6 } },
      { on: false, flow: 3e-4, pressure: 8e6 },
    );
    expect(told(run, 'shuttle')).toEqual(['shifting', 'returning', 'normal']);
  });

  it('stuck on its normal seat keeps the gas out, and passes oil as ever', () => {
    const run = shuttled({ stuck: 'normal' }, { steps: pull }, {});
    const sound = shuttled({}, {}, {});
    expect(told(run, 'shuttle')).toEqual([]);
    expect(gauge(run, 'gas', 1)).toBeGreaterThan(5e6);
    expect(last(run, 'down.gas')).toBe(0);
    expect(last(run, 'shuttle.oil')).toBeCloseTo(last(sound, 'shuttle.oil'), 9);
  });

  it('stuck on its emergency seat keeps the oil out from the start', () => {
    const run = shuttled({ stuck: 'emergency' }, {}, {});
    expect(told(run, 'shuttle')).toEqual([]);
    expect(gauge(run, 'oil', 2)).toBeGreaterThan(1e6);
    // The tank's own head is all that is left behind it.
    expect(gauge(run, 'down', 2)).toBeLessThan(gauge(run, 'tank', 2));
    expect(last(run, 'shuttle.oil')).toBe(0);
    expect(run.log.find((e) => e.device === 'shuttle')?.to).toBe('emergency');
  });

  it('lets gas into the normal line only where it leaks across', () => {
    // After it has shifted; what comes over while it is in the middle does so in any.
    const crossed = (leak: number): number => {
      const run = shuttled({ leak }, { steps: pull, duration: 2 }, { on: false });
      const { t, v } = run.series('shuttle.oil-gas')!;
      return -v.reduce((sum, q, i) => (i > 0 && t[i] > 0.6 ? sum + q * (t[i] - t[i - 1]) : sum), 0);
    };
    expect(crossed(0)).toBeLessThan(1e-12);
    expect(crossed(1e-11)).toBeGreaterThan(1e-6);
  });
});
