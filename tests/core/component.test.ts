/** What each device does, on a frame without a network. */
import { lockParameters } from '../../packages/core/src/component/shared/lock-parameters.js';
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import { tailored } from '../../packages/core/src/define/index.js';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import { SURROUNDINGS } from '../support/sample-parameters.js';

const OIL = SURROUNDINGS.mild;
const PA = OIL.ambient;

/** One device on the bench: gauge pressures in, flows by path out. */
function bench(kind: string, given: Parameters = {}, oil = OIL) {
  const usual = Object.entries(components[kind].parameters).flatMap(([name, p]) =>
    'default' in p && p.default !== undefined ? [[name, p.default] as const] : [],
  );
  const parameters = { ...Object.fromEntries(usual), ...given };
  const device = tailored(components[kind], parameters);
  const frame = new FakeFrame(device, parameters, oil);
  const ports = Object.keys(device.ports);
  const modes = Object.keys(device.modes ?? {});
  return {
    frame,
    flows(gauge: Readonly<Record<string, number>>): Record<string, number> {
      for (const [port, p] of Object.entries(gauge)) frame.pressures[ports.indexOf(port)] = PA + p;
      frame.run(device);
      return Object.fromEntries(
        Object.keys(device.flows ?? {}).map((f, i) => [f, frame.flows[i].q]),
      );
    },
    mode: (name: string) => void (frame.mode = modes.indexOf(name)),
    /** The mode after all guards that fire at the present values have fired. */
    settled(): string {
      for (let i = 0; i < 10; i++) {
        const mode = device.modes![modes[frame.mode]];
        const guard = mode.guards?.find((g) => g.when(frame) > 0);
        if (!guard) break;
        frame.mode = modes.indexOf(guard.to);
        device.modes![guard.to].enter?.(frame, frame.states);
      }
      return modes[frame.mode];
    },
    bounds: () => device.modes![modes[frame.mode]].bounds,
    reading: (name: string) => device.readings![name].value(frame),
  };
}

describe('check valve', () => {
  it('passes the orifice flow forward and only its leak backward', () => {
    const valve = bench('check-valve', { bore: 0.006 });
    const forward = valve.flows({ inlet: 4e5, outlet: 0 }).through;
    const turbulent = 0.611 * 0.25 * Math.PI * 0.006 ** 2 * Math.sqrt((2 * 4e5) / OIL.density);
    expect(forward / turbulent).toBeCloseTo(1, 2);
    const back = valve.flows({ inlet: 0, outlet: 1e7 }).through;
    expect(back).toBeLessThan(0);
    expect(-back).toBeLessThan(1e-7);
    expect(valve.flows({ inlet: 10_000, outlet: 0 }).through).toBeLessThan(1e-9);
  });
});

describe('one-way restrictor', () => {
  it('is free one way, restricted the other, and the other way round when reversed', () => {
    const right = bench('one-way-restrictor');
    const wrong = bench('one-way-restrictor', { reversed: true });
    const free = right.flows({ inlet: 1e6, outlet: 0 }).through;
    const held = -right.flows({ inlet: 0, outlet: 1e6 }).through;
    expect(free / held).toBeGreaterThan(10);
    expect(wrong.flows({ inlet: 1e6, outlet: 0 }).through).toBeCloseTo(held, 12);
    expect(-wrong.flows({ inlet: 0, outlet: 1e6 }).through).toBeCloseTo(free, 12);
  });
});

describe('relief valve', () => {
  const setting = { crack: 10e6, full: 11e6, flow: 3e-4, leak: 0 };

  it('is shut below crack and passes its rated flow at the full-flow setting', () => {
    const valve = bench('relief-valve', setting);
    expect(valve.flows({ inlet: 9.99e6, outlet: 0 }).through).toBe(0);
    expect(valve.flows({ inlet: 11e6, outlet: 0 }).through / 3e-4).toBeCloseTo(1, 6);
  });

  it('says that it flows, and that it has closed', () => {
    const valve = bench('relief-valve', setting);
    valve.flows({ inlet: 10.5e6, outlet: 0 });
    expect(valve.settled()).toBe('flowing');
    valve.flows({ inlet: 9.9e6, outlet: 0 });
    expect(valve.settled()).toBe('closed');
  });

  it('with reseat below one stays open below crack until the pressure has fallen to it', () => {
    const valve = bench('relief-valve', { ...setting, reseat: 0.8 });
    expect(valve.flows({ inlet: 9e6, outlet: 0 }).through).toBe(0);
    valve.flows({ inlet: 10.01e6, outlet: 0 });
    expect(valve.settled()).toBe('flowing');
    expect(valve.flows({ inlet: 9e6, outlet: 0 }).through).toBeGreaterThan(1e-5);
    expect(valve.settled()).toBe('flowing');
    valve.flows({ inlet: 7.9e6, outlet: 0 });
    expect(valve.settled()).toBe('closed');
  });
});

describe('filter', () => {
  it('has its rated drop at its rated flow and viscosity, and less flow when loaded or cold', () => {
    const rated = { ...OIL, viscosity: 14e-6 };
    expect(
      bench('filter', {}, rated).flows({ inlet: 35_000, outlet: 0 }).element / 3e-4,
    ).toBeCloseTo(1, 9);
    const loaded = bench('filter', { loading: 0.9 }, rated).flows({ inlet: 35_000, outlet: 0 });
    expect(loaded.element / 3e-4).toBeCloseTo(0.1, 2);
    const cold = bench('filter', {}, SURROUNDINGS.cold).flows({ inlet: 35_000, outlet: 0 });
    expect(cold.element / 3e-4).toBeCloseTo(14 / 490, 6);
  });

  it('goes round its element above the by-pass setting, and says so', () => {
    const filter = bench('filter', { loading: 1 });
    expect(filter.flows({ inlet: 300_000, outlet: 0 }).bypass).toBe(0);
    expect(filter.settled()).toBe('filtering');
    expect(filter.flows({ inlet: 500_000, outlet: 0 }).bypass).toBeGreaterThan(1e-4);
    expect(filter.settled()).toBe('by-passing');
  });
});

describe('ground supply', () => {
  const stand = () => bench('ground-supply', { flow: 2.5e-4, pressure: 10e6, band: 0.1, on: true });

  it('gives its flow up to its band and none at its limit', () => {
    expect(stand().flows({ inlet: 0, outlet: 8.9e6 }).delivery).toBeCloseTo(2.5e-4, 12);
    const half = stand().flows({ inlet: 0, outlet: 9.5e6 }).delivery;
    expect(half).toBeCloseTo(1.25e-4, 9);
    expect(stand().flows({ inlet: 0, outlet: 10e6 }).delivery).toBe(0);
  });

  it('fails as its inlet runs dry', () => {
    const dry = stand();
    dry.frame.contents[0] = 0;
    expect(dry.flows({ inlet: 0, outlet: 0 }).delivery).toBe(0);
    expect(stand().flows({ inlet: 1000 - PA, outlet: 0 }).delivery).toBeLessThan(1e-6);
  });
});

describe('engine pump', () => {
  it('has its rated volumetric efficiency at its rating, and loses more in thinner oil', () => {
    const pump = { displacement: 1e-6, speed: 251, efficiency: 0.9 };
    const efficiency = (viscosity: number): number => {
      const { delivery, slip } = bench('engine-pump', pump, { ...OIL, viscosity }).flows({
        inlet: 0,
        outlet: 6.9e6,
      });
      return (delivery - slip) / delivery;
    };
    expect(efficiency(14e-6)).toBeCloseTo(0.9, 9);
    expect(efficiency(7e-6)).toBeCloseTo(0.8, 9);
  });
});

describe('hand pump', () => {
  it('delivers its stroke volume in a working stroke', () => {
    const pump = bench('hand-pump', { strokeVolume: 1e-5, strokeTime: 0.5 });
    pump.mode('delivering');
    expect(pump.flows({ inlet: 0, outlet: 1e6 }).delivery * 0.5).toBeCloseTo(1e-5, 12);
    pump.mode('refilling');
    expect(pump.flows({ inlet: 0, outlet: 1e6 }).delivery).toBe(0);
  });

  it('stalls where the handle force is all the operator has', () => {
    const pump = bench('hand-pump', { strokeVolume: 1e-5, handleTravel: 0.4, force: 250 });
    pump.mode('delivering');
    // 250 N x 0.4 m over 10 cm3 is 10 MPa.
    expect(pump.flows({ inlet: 0, outlet: 8e6 }).delivery).toBeGreaterThan(0);
    expect(pump.flows({ inlet: 0, outlet: 10e6 }).delivery).toBe(0);
    expect(pump.reading('effort')).toBeCloseTo(250, 9);
  });

  it('goes stroke by stroke while the operator pumps, and stops when told', () => {
    const pump = bench('hand-pump');
    expect(pump.settled()).toBe('idle');
    pump.frame.inputs[0] = 1;
    expect(pump.settled()).toBe('delivering');
    pump.frame.states[0] = 1.0001;
    expect(pump.settled()).toBe('refilling');
    pump.frame.states[0] = -0.0001;
    expect(pump.settled()).toBe('delivering');
    pump.frame.inputs[0] = 0;
    expect(pump.settled()).toBe('idle');
  });
});

describe('selector valve', () => {
  const pressures = { pressure: 5e6, return: 0, up: 2e6, down: 1e6 };
  const at = (spool: number, given: Parameters = {}) => {
    const valve = bench('selector-valve', { leak: 0, ...given });
    valve.frame.states[0] = spool;
    return valve.flows(pressures);
  };

  it('feeds the up line and empties the down line when up, and the other way round', () => {
    const up = at(1);
    expect(up.feedUp).toBeGreaterThan(1e-4);
    expect(up.returnDown).toBeGreaterThan(1e-4);
    expect([up.feedDown, up.returnUp]).toEqual([0, 0]);
    const down = at(-1);
    expect(down.feedDown).toBeGreaterThan(1e-4);
    expect(down.returnUp).toBeGreaterThan(1e-4);
    expect([down.feedUp, down.returnDown]).toEqual([0, 0]);
  });

  it('in neutral blocks, unloads or lets the lines go to return, as its centre is', () => {
    expect(Object.values(at(0))).toEqual([0, 0, 0, 0]);
    expect(Object.values(at(0, { centre: 'open' })).every((q) => q > 0)).toBe(true);
    const float = at(0, { centre: 'lines-to-return' });
    expect([float.feedUp, float.feedDown]).toEqual([0, 0]);
    expect(float.returnUp).toBeGreaterThan(0);
  });

  it('shifts from either side to neutral and from end to end', () => {
    const valve = bench('selector-valve');
    const shift = (lever: number, spool: number): string => {
      valve.frame.inputs[0] = lever;
      expect(valve.settled()).toBe('shifting');
      valve.frame.states[0] = spool;
      return valve.settled();
    };
    expect(shift(0, 1.001)).toBe('up');
    expect(valve.frame.states[0]).toBe(1);
    expect(shift(1, -0.001)).toBe('neutral');
    expect(valve.frame.states[0]).toBe(0);
    expect(shift(2, -1.001)).toBe('down');
    expect(shift(0, 0.5)).toBe('shifting');
    valve.frame.states[0] = 1.001;
    expect(valve.settled()).toBe('up');
  });

  it('moves its spool at a constant rate', () => {
    const valve = bench('selector-valve', { shiftTime: 0.2 });
    valve.frame.inputs[0] = 2;
    valve.settled();
    valve.flows(pressures);
    expect(valve.frame.stateRates[0].value).toBeCloseTo(-5, 12);
  });
});

describe('sequence valve', () => {
  const rig = { trip: 0.1, lap: 0.001, stroke: 0.004, leak: 0 };
  const through = (travel: number, given: Parameters = {}): number => {
    const valve = bench('sequence-valve', { ...rig, ...given });
    valve.frame.travels[0] = travel;
    return valve.flows({ inlet: 1e6, outlet: 0 }).through;
  };

  it('is shut until its plunger is pushed past the lap, full at the end of its stroke', () => {
    expect(through(0.1009)).toBe(0);
    expect(through(0.1025)).toBeGreaterThan(0);
    expect(through(0.105)).toBeCloseTo(through(0.104), 12);
  });

  it('trips late with a positive rigging offset, early with a negative one, at either end', () => {
    expect(through(0.1025, { rigging: 0.002 })).toBe(0);
    expect(through(0.0995, { rigging: -0.002 })).toBeGreaterThan(0);
    expect(through(0.0975, { sense: 'low' })).toBeGreaterThan(0);
    expect(through(0.0975, { sense: 'low', rigging: 0.002 })).toBe(0);
    expect(through(0.1005, { sense: 'low', rigging: -0.002 })).toBeGreaterThan(0);
  });

  it('held open by a sticking plunger it passes that share of its flow', () => {
    expect(through(0, { stick: 0.25 }) / through(0.2)).toBeCloseTo(0.25, 9);
  });

  it('lets return flow back whatever the plunger does', () => {
    const valve = bench('sequence-valve', rig);
    expect(valve.flows({ inlet: 0, outlet: 5e5 }).back).toBeGreaterThan(1e-4);
    expect(valve.flows({ inlet: 5e5, outlet: 0 }).back).toBeCloseTo(0, 15);
  });

  it('names its state by its plunger', () => {
    const valve = bench('sequence-valve', rig);
    for (const [travel, mode] of [
      [0.05, 'closed'],
      [0.102, 'opening'],
      [0.106, 'open'],
      [0.102, 'opening'],
      [0.1, 'closed'],
    ] as const) {
      valve.frame.travels[0] = travel;
      expect(valve.settled()).toBe(mode);
    }
  });
});

describe('double-acting actuator', () => {
  const jack = { bore: 0.05, rodDiameter: 0.025, stroke: 0.3 };

  it('chokes the way out near a cushioned end, never the way in', () => {
    const cushioned = bench('double-acting-actuator', { ...jack, cushionArea: 0.05 });
    const out = (travel: number): number => {
      cushioned.frame.travels[0] = travel;
      return -cushioned.flows({ head: 0, headChamber: 1e6 }).headWay;
    };
    expect(out(0) / out(0.15)).toBeCloseTo(0.05, 9);
    expect(out(0.006) / out(0.15)).toBeGreaterThan(0.4);
    cushioned.frame.travels[0] = 0;
    expect(cushioned.flows({ head: 1e6, headChamber: 0 }).headWay).toBeCloseTo(out(0.15), 9);
    const rodOut = -cushioned.flows({ rod: 0, rodChamber: 1e6 }).rodWay;
    cushioned.frame.travels[0] = 0.3;
    expect(-cushioned.flows({ rod: 0, rodChamber: 1e6 }).rodWay / rodOut).toBeCloseTo(0.05, 9);
  });

  it('has no cushion unless one is asked for', () => {
    const plain = bench('double-acting-actuator', jack);
    plain.frame.travels[0] = 0;
    const end = plain.flows({ head: 0, headChamber: 1e6 }).headWay;
    plain.frame.travels[0] = 0.15;
    expect(plain.flows({ head: 0, headChamber: 1e6 }).headWay).toBe(end);
  });

  it('rubs more the harder it is pressed', () => {
    const plain = bench('double-acting-actuator', { ...jack, seals: 50, pressureFriction: 0.02 });
    plain.flows({ headChamber: 0, rodChamber: 0 });
    expect(plain.frame.forces[0].friction).toBeCloseTo(50, 9);
    plain.flows({ headChamber: 10e6, rodChamber: 0 });
    const share = 0.02 * 10e6 * 0.25 * Math.PI * 0.05 ** 2;
    expect(plain.frame.forces[0].friction / (50 + share)).toBeCloseTo(1, 1);
  });

  it('weeps outwards only', () => {
    const wet = bench('double-acting-actuator', { ...jack, rodSealLeak: 1e-13 });
    expect(wet.flows({ rodChamber: 5e6, outside: 0 }).drip).toBeGreaterThan(0);
    expect(wet.flows({ rodChamber: -5e4, outside: 0 }).drip).toBeCloseTo(0, 20);
  });
});

describe.each([
  ['uplock', { at: 1.6 }, 1.6, 1.58],
  ['downlock', {}, 0, 0.02],
] as const)('%s', (kind, given, home, away) => {
  const lock = (angle: number, gauge: number) => {
    const one = bench(kind, { ...given, release: 2e6, resetShare: 0.7 });
    one.frame.travels[0] = angle;
    one.flows({ release: gauge });
    return one;
  };

  it('engages at home without release pressure, and nowhere else', () => {
    expect(lock(home, 0).settled()).toBe('engaged');
    expect(lock(away, 0).settled()).toBe('open');
  });

  it('lets release dominate: it neither engages nor stays engaged under release pressure', () => {
    expect(lock(home, 2.1e6).settled()).toBe('open');
    const between = lock(home, 1.7e6);
    expect(between.settled()).toBe('open');
    between.mode('engaged');
    expect(between.settled()).toBe('engaged');
    between.flows({ release: 2.1e6 });
    expect(between.settled()).toBe('open');
  });

  it('is opened by its cable and stays open while it is pulled', () => {
    const one = lock(home, 0);
    expect(one.settled()).toBe('engaged');
    one.frame.inputs[0] = 1;
    expect(one.settled()).toBe('open');
  });

  it('holds the leg on the loaded side only, with no step when it drops in', () => {
    const one = lock(home, 0);
    one.settled();
    const { low, high } = one.bounds()!;
    expect((low === undefined) !== (high === undefined)).toBe(true);
    const edge = kind === 'uplock' ? low!(one.frame) : high!(one.frame);
    const outward = kind === 'uplock' ? -1 : 1;
    const { window } = lockParameters(kind === 'uplock' ? undefined : 0, '');
    expect((edge - home) * outward).toBeGreaterThanOrEqual(window.default as number);
  });
});
