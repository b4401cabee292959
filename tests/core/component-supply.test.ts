/** The supply side: what each device does on a frame of its own, and in small networks. */
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import type { DeviceDefinition, Parameters } from '../../packages/core/src/define/index.js';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import { coordinate, flat, rig, step } from '../support/rig.js';
import { SURROUNDINGS } from '../support/sample-parameters.js';

const OIL = SURROUNDINGS.mild;
const PA = OIL.ambient;

/** One device on a frame: gauge pressures in, flows by path out. */
function bench(kind: string, given: Parameters = {}, oil = OIL) {
  const own: DeviceDefinition = components[kind];
  const usual = Object.entries(own.parameters).flatMap(([name, p]) =>
    'default' in p && p.default !== undefined ? [[name, p.default] as const] : [],
  );
  const frame = new FakeFrame(own, { ...Object.fromEntries(usual), ...given }, oil);
  const ports = Object.keys(own.ports);
  return {
    frame,
    mode: (name: string) => void (frame.mode = Object.keys(own.modes!).indexOf(name)),
    flows(gauge: Readonly<Record<string, number>>): Record<string, number> {
      for (const [port, p] of Object.entries(gauge)) frame.pressures[ports.indexOf(port)] = PA + p;
      frame.run(own);
      return Object.fromEntries(Object.keys(own.flows ?? {}).map((f, i) => [f, frame.flows[i].q]));
    },
    reading: (name: string) => own.readings![name].value(frame),
  };
}

const pump = { displacement: 1e-6, setting: 1e7 };

describe.each(['engine-pump', 'compensated-pump'])('%s', (kind) => {
  const at = (own: Parameters, gauge: Readonly<Record<string, number>>) => {
    const b = bench(kind, { ...pump, speed: 250, ...own });
    return b.flows(gauge);
  };

  it('delivers nothing with its shaft sheared, and its share where the coupling slips', () => {
    expect(at({ drive: 0 }, { inlet: 0, outlet: 0 }).delivery).toBe(0);
    expect(at({ drive: 0.4 }, { inlet: 0, outlet: 0 }).delivery).toBeCloseTo(0.4 * 2.5e-4, 12);
  });

  it('drips at its joint under pressure only', () => {
    expect(at({ jointLeak: 1e-12 }, { outlet: 0, outside: 0 }).weep).toBe(0);
    expect(at({ jointLeak: 1e-12 }, { outlet: 5e6, outside: 0 }).weep).toBeGreaterThan(1e-7);
    expect(at({}, { outlet: 5e6, outside: 0 }).weep).toBe(0);
  });

  it('loses the share of air it draws, more under vacuum', () => {
    const sound = at({}, { inlet: 0 }).delivery;
    expect(at({ suctionAir: 0.2 }, { inlet: 0 }).delivery / sound).toBeCloseTo(0.8, 9);
    const starved = at({}, { inlet: -5e4 }).delivery;
    // Boyle: at half of ambient the air fills twice its volume.
    const half = PA / (PA - 5e4);
    const wanted = 0.8 / (0.8 + 0.2 * half);
    expect(at({ suctionAir: 0.2 }, { inlet: -5e4 }).delivery / starved).toBeCloseTo(wanted, 9);
  });

  it('slips more when worn and when the oil is thin', () => {
    const slip = (own: Parameters, oil = OIL): number =>
      bench(kind, { ...pump, ...own }, oil).flows({ outlet: 7e6, inlet: 0, drain: 0 }).slip;
    expect(slip({ efficiency: 0.5 })).toBeGreaterThan(4 * slip({}));
    expect(slip({}, SURROUNDINGS.hot) / slip({})).toBeCloseTo(25 / 5, 6);
  });
});

describe('compensated pump', () => {
  const at = (outlet: number, own: Parameters = {}): number =>
    bench('compensated-pump', { ...pump, speed: 250, ...own }).flows({ outlet }).delivery;

  it('gives all its flow up to its band and none at its setting', () => {
    expect(at(9.3e6)).toBeCloseTo(at(0), 12);
    expect(at(9.7e6)).toBeLessThan(at(0));
    expect(at(9.7e6)).toBeGreaterThan(0);
    expect(at(1e7)).toBe(0);
    expect(at(1.5e7)).toBe(0);
  });

  it('hangs on a part of its stroke when its compensator does', () => {
    expect(at(1.5e7, { leastStroke: 0.3 }) / at(0)).toBeCloseTo(0.3, 9);
    expect(at(0, { mostStroke: 0.6 }) / at(0)).toBeCloseTo(0.6, 9);
  });
});

describe('thermal relief', () => {
  it('passes a trickle above its setting, nothing to speak of below, and leaks when stuck', () => {
    const own = { crack: 2e7, full: 2.2e7 };
    const b = bench('thermal-relief', own);
    expect(b.flows({ inlet: 1.9e7, outlet: 0 }).through).toBeLessThan(1e-7);
    b.mode('flowing');
    expect(b.flows({ inlet: 2.2e7, outlet: 0 }).through).toBeCloseTo(3e-6, 7);
    const stuck = bench('thermal-relief', { ...own, leak: 1e-11 });
    expect(stuck.flows({ inlet: 7e6, outlet: 0 }).through).toBeGreaterThan(3e-5);
  });
});

describe('filter', () => {
  it('shows on its indicator the drop as a share of what pops the button', () => {
    const b = bench('filter', { indicator: 2e5 });
    b.flows({ inlet: 3e5, outlet: 2e5 });
    expect(b.reading('drop')).toBeCloseTo(1e5, 3);
    expect(b.reading('indicator')).toBeCloseTo(0.5, 9);
  });
});

describe('hand pump', () => {
  const delivering = (own: Parameters, outlet: number) => {
    const b = bench('hand-pump', own);
    b.mode('delivering');
    return b.flows({ inlet: 0, outlet });
  };

  it('loses to a leaking inlet check or piston on the working stroke, and never flows backward', () => {
    const sound = delivering({}, 3e6).delivery;
    for (const name of ['inletLeak', 'pistonLeak']) {
      const little = delivering({ [name]: 1e-12 }, 3e6).delivery;
      const lost = (1e-12 * 0.012 * 3e6) / (OIL.viscosity * OIL.density);
      expect(little / (sound - lost)).toBeCloseTo(1, 2);
      const much = delivering({ [name]: 1e-9 }, 3e6).delivery;
      expect(much).toBeGreaterThan(0);
      expect(much).toBeLessThan(0.05 * sound);
    }
  });

  it('lets the line back past its outlet check on the return stroke, and kicks', () => {
    const b = bench('hand-pump', { outletLeak: 1e-12 });
    b.mode('refilling');
    expect(b.flows({ inlet: 0, outlet: 3e6 }).back).toBeGreaterThan(1e-6);
    expect(b.reading('effort')).toBeGreaterThan(10);
    // At rest the inlet check still holds.
    b.mode('idle');
    expect(b.flows({ inlet: 0, outlet: 3e6 }).back).toBe(0);
    const sound = bench('hand-pump');
    sound.mode('refilling');
    expect(sound.flows({ inlet: 0, outlet: 3e6 }).back).toBe(0);
    expect(sound.reading('effort')).toBe(0);
  });

  it('will not move with its outlet check the wrong way round', () => {
    const b = bench('hand-pump', { outletReversed: true });
    b.mode('delivering');
    expect(b.flows({ inlet: 0, outlet: 0 }).delivery).toBe(0);
    expect(b.frame.stateRates.map((r) => r.value)).toEqual([0, 0]);
    expect(b.reading('effort')).toBe(300);
  });
});

const tank = {
  is: 'reservoir',
  ports: { outlet: 'tank', return: 'tank' },
  parameters: { capacity: 4e-3, level: 3e-3 },
};
const last = (run: SimulatedRun, name: string): number => run.series(name)!.v.at(-1)!;

describe('reservoir', () => {
  it('adds the pressure of its head space, or a vacuum where its vent is blocked', () => {
    for (const headspace of [0, 1e5, -3e4]) {
      const { scenario, with: catalogues } = rig({
        parts: { tank: { ...tank, parameters: { ...tank.parameters, head: 0, headspace } } },
        duration: 0.1,
      });
      expect(last(simulateWith(catalogues, scenario), 'tank.pressure')).toBe(101_325 + headspace);
    }
  });
});

describe('standpipe reservoir', () => {
  const { scenario, with: catalogues } = rig({
    parts: {
      tank: {
        is: 'standpipe-reservoir',
        ports: { bottom: 'bottom', main: 'suction' },
        parameters: { capacity: 3e-3, level: 2e-3, reserve: 7e-4 },
      },
      supply: {
        is: 'ground-supply',
        ports: { inlet: 'suction', outlet: 'line' },
        parameters: { flow: 1e-4, pressure: 9e6, on: true },
      },
      // A burst line: all goes overboard.
      burst: {
        is: 'orifice',
        ports: { inlet: 'line', outlet: 'outside' },
        parameters: { bore: 8e-3 },
      },
      hand: {
        is: 'hand-pump',
        ports: { inlet: 'bottom', outlet: 'hand-line' },
      },
      out: {
        is: 'orifice',
        ports: { inlet: 'hand-line', outlet: 'outside' },
        parameters: { bore: 4e-3 },
      },
    },
    steps: [step(25, 'hand', 'pumping', 1)],
    duration: 40,
  });
  const run = simulateWith(catalogues, scenario);
  const level = run.sampled('tank.level')!;
  const when = (t: number): number => level.v[level.t.findIndex((x) => x >= t)];

  it('keeps its reserve from the main pump, which starves', () => {
    // 1.3 L above the pipe at 0.1 L/s: 13 s.
    expect(when(10)).toBeCloseTo(1e-3, 4);
    expect(when(24)).toBeGreaterThan(6.9e-4);
    expect(when(24)).toBeLessThan(7.2e-4);
    const flow = run.sampled('supply.delivery')!;
    expect(flow.v[flow.t.findIndex((t) => t >= 5)]).toBeGreaterThan(0.9e-4);
    expect(flow.v[flow.t.findIndex((t) => t >= 24)]).toBeLessThan(2e-6);
  });

  it('gives it to the hand pump', () => {
    expect(last(run, 'tank.level')).toBeLessThan(6.2e-4);
    expect(last(run, 'hand.strokes')).toBeGreaterThan(10);
  });

  it('loses no oil', () => {
    const { oil } = run.account();
    expect(Math.abs(oil.end / oil.start - 1)).toBeLessThan(1e-12);
  });
});

describe('power pack', () => {
  /** A jack that lifts a weight, 0.3 m of travel on 1 rad; weight pulls it back down. */
  function swing(
    own: Parameters = {},
    more: { weight?: number; duration?: number; tolerance?: 'normal' | 'fine' } = {},
  ): SimulatedRun {
    const { scenario, with: catalogues } = rig({
      parts: {
        tank,
        pack: {
          is: 'power-pack',
          ports: { up: 'up', down: 'down', reservoir: 'tank' },
          parameters: {
            displacement: 1.2e-7,
            reliefUp: 1.3e7,
            reliefDown: 5e6,
            cutOut: 1.1e7,
            cutIn: 9e6,
            ...own,
          },
        },
        restrictor: {
          is: 'one-way-restrictor',
          ports: { inlet: 'up', outlet: 'jack-rod' },
          parameters: { bore: 1e-3 },
        },
        jack: {
          is: 'double-acting-actuator',
          ports: { head: 'down', rod: 'jack-rod' },
          links: { rod: { to: 'leg', travel: { x: [0, 1], y: [0.3, 0] } } },
          parameters: { bore: 0.04, rodDiameter: 0.018, stroke: 0.3 },
        },
      },
      coordinates: {
        leg: coordinate({ inertia: flat(20), moment: flat(-(more.weight ?? 900)), friction: 10 }),
      },
      steps: [
        step(1, 'pack', 'command', 0),
        step(25, 'pack', 'command', 2),
        step(45, 'pack', 'command', 1),
      ],
      duration: more.duration ?? 50,
    });
    return simulateWith(catalogues, scenario, { tolerance: more.tolerance ?? 'normal' });
  }
  const value = (run: SimulatedRun, name: string, t: number): number => {
    const s = run.sampled(name)!;
    return s.v[s.t.findIndex((x) => x >= t)];
  };
  const reaches = (run: SimulatedRun, angle: number): number => {
    const s = run.sampled('leg.angle')!;
    return s.t[s.v.findIndex((v) => v > angle)];
  };
  const healthy = swing();

  it('raises the leg, stops at cut-out, holds it up by trapped pressure, lowers it again', () => {
    const told = healthy.log.filter(
      (e) => e.device === 'pack' && e.kind === 'mode' && e.from !== '',
    );
    expect(told.slice(0, 2).map((e) => e.to)).toEqual(['up', 'up held']);
    expect(told.at(-1)!.to).toBe('off');
    expect(value(healthy, 'leg.angle', 24)).toBeGreaterThan(0.99);
    expect(value(healthy, 'up.pressure', 24)).toBeGreaterThan(5e6);
    expect(last(healthy, 'leg.angle')).toBeLessThan(0.01);
    expect(healthy.outcome.kind).toBe('done');
  });

  it('draws its current while it runs and none while held', () => {
    // Pressure x displacement is the torque, and volts per rad/s are newton metres per ampere.
    const across = value(healthy, 'pack.pump-up.pressure', 3) - value(healthy, 'down.pressure', 3);
    const torque = 1.2e-7 * across + 0.08;
    expect(value(healthy, 'pack.current', 3) / ((torque * 420) / 14)).toBeCloseTo(1, 2);
    expect(value(healthy, 'pack.current', 24)).toBe(0);
    expect(Math.abs(value(healthy, 'pack.speed', 24))).toBeLessThan(1);
  });

  it('loses no oil', () => {
    const { oil } = healthy.account();
    expect(Math.abs(oil.end / oil.start - 1)).toBeLessThan(1e-12);
  });

  it('closes its account of energy on the way up', () => {
    const { energy } = swing({}, { duration: 9, tolerance: 'fine' }).account();
    expect(energy.supplied).toBeGreaterThan(900);
    expect(Math.abs(energy.gap)).toBeLessThan(1e-3 * energy.supplied);
  });

  it('is slowed by a weak voltage and stalls when a load is added', () => {
    expect(reaches(swing({ voltage: 10 }), 0.99)).toBeGreaterThan(1.3 * reaches(healthy, 0.99));
    const weak = swing({ voltage: 5 }, { weight: 2500, duration: 24 });
    expect(Math.max(...weak.series('leg.angle')!.v)).toBeLessThan(0.9);
    expect(Math.abs(last(weak, 'pack.speed'))).toBeLessThan(40);
    // Stalled or nearly so: T0 V w0 / Vr^2 at rest.
    expect(last(weak, 'pack.current')).toBeGreaterThan(0.9 * ((3 * 5 * 420) / 14 ** 2));
  });

  it('lets the leg sag, and starts again and again, when its lock valve leaks', () => {
    const leaking = swing({ lockLeak: 1e-12 });
    const restarts = (run: SimulatedRun): number =>
      run.log.filter((e) => e.device === 'pack' && e.from === 'up held' && e.to === 'up').length;
    expect(restarts(healthy)).toBe(0);
    expect(restarts(leaking)).toBeGreaterThan(0);
  });

  it('raises but does not lower with its spool stuck on the up side', () => {
    const stuck = swing({ spoolTravel: 0, spoolRest: 1 });
    expect(reaches(stuck, 0.99)).toBeLessThan(1.1 * reaches(healthy, 0.99));
    expect(last(stuck, 'leg.angle')).toBeGreaterThan(0.9);
  });

  it('does not raise with its spool stuck on the down side', () => {
    const stuck = swing({ spoolTravel: 0, spoolRest: -1 }, { duration: 20 });
    expect(last(stuck, 'leg.angle')).toBeLessThan(0.1);
  });
});

describe('accumulator beside an unloader', () => {
  /** Cut-ins in a minute of a system that bleeds a little, and the pressure half a second after the pump has gone. */
  function minute(own: Parameters): { cutIns: number; after: number } {
    const { scenario, with: catalogues } = rig({
      parts: {
        tank,
        pump: {
          is: 'engine-pump',
          ports: { inlet: 'tank', outlet: 'pump-out' },
          parameters: { displacement: 1e-6, speed: 100 },
        },
        unloader: {
          is: 'unloader',
          ports: { inlet: 'pump-out', outlet: 'line', return: 'tank' },
          parameters: { cutOut: 1e7, cutIn: 8e6 },
        },
        store: {
          is: 'accumulator',
          ports: { oil: 'line' },
          parameters: { precharge: 5e6, ...own },
        },
        bleed: {
          is: 'orifice',
          ports: { inlet: 'line', outlet: 'tank' },
          parameters: { bore: 3e-4 },
        },
      },
      nodes: { line: { volume: 2e-4 } },
      steps: [step(60, 'pump', 'speed', 0)],
      duration: 61,
    });
    const run = simulateWith(catalogues, scenario);
    const cutIns = run.log.filter((e) => e.device === 'unloader' && e.from === 'unloaded').length;
    const line = run.sampled('line.pressure')!;
    return { cutIns, after: line.v[line.t.findIndex((t) => t >= 60.5)] };
  }
  const healthy = minute({});

  it('lets the pump rest for seconds', () => {
    expect(healthy.cutIns).toBeGreaterThan(1);
    expect(healthy.cutIns).toBeLessThan(10);
    expect(healthy.after).toBeGreaterThan(7.5e6);
  });

  it('without precharge is as good as none: cut-in after cut-in, and no pressure once the pump has gone (public A&P study questions)', () => {
    const flat = minute({ precharge: 0 });
    expect(flat.cutIns).toBeGreaterThan(4 * healthy.cutIns);
    expect(flat.after).toBeLessThan(healthy.after);
  });
});
