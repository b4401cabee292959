/**
 * Pumps: flow is displacement x speed x volumetric efficiency (any hydraulics handbook; in US
 * units gal/min = in3/rev x rev/min / 231 x efficiency). Power pack: the straight speed-torque line
 * of a direct-current motor with constant field, T = T0 (v - w / w0), I = T w0 / V (textbooks of
 * electric drives; from memory).
 */
import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import type { DeviceDefinition, Parameters, Run } from '../../packages/core/src/define/index.js';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import { device, rig, step } from '../support/rig.js';
import { SURROUNDINGS } from '../support/sample-parameters.js';

const INCH = 0.0254;
const GPM = (231 * INCH ** 3) / 60;
const RPM = (2 * Math.PI) / 60;
const PSI = 6894.757;
const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);

/** Net flow into the outlet at a gauge pressure there, in the oil of the rating. */
function net(kind: string, own: Parameters, gauge: number, speed: number): number {
  const definition: DeviceDefinition = components[kind];
  const usual = Object.entries(definition.parameters).flatMap(([name, p]) =>
    'default' in p && p.default !== undefined ? [[name, p.default] as const] : [],
  );
  const oil = { ...SURROUNDINGS.mild, viscosity: 14e-6 };
  const frame = new FakeFrame(definition, { ...Object.fromEntries(usual), ...own }, oil);
  frame.pressures[1] = oil.ambient + gauge;
  frame.inputs[0] = speed;
  frame.run(definition);
  return frame.flows[0].q - frame.flows[1].q - frame.flows[2].q;
}

describe.each(['engine-pump', 'compensated-pump'])('%s', (kind) => {
  // 0.385 in3/rev, 2400 rev/min, 92 %: 4.0 x 0.92 gal/min at 1000 psi.
  const own = {
    displacement: (0.385 * INCH ** 3) / (2 * Math.PI),
    efficiency: 0.92,
    ratedSpeed: 2400 * RPM,
    ratedPressure: 1000 * PSI,
    setting: 3000 * PSI,
  };

  it('gives in3/rev x rev/min / 231 x efficiency at its rating', () => {
    const flow = net(kind, own, 1000 * PSI, 2400 * RPM);
    expect(relative(flow / GPM, ((0.385 * 2400) / 231) * 0.92)).toBeLessThan(1e-9);
  });

  it('gives all it displaces without pressure, and loses in proportion to it', () => {
    const free = net(kind, own, 0, 2400 * RPM);
    expect(relative(free / GPM, 4)).toBeLessThan(1e-9);
    const half = net(kind, own, 500 * PSI, 2400 * RPM);
    const full = net(kind, own, 1000 * PSI, 2400 * RPM);
    expect(relative(free - full, 2 * (free - half))).toBeLessThan(1e-9);
  });
});

/** A pack that pumps up against a made-up load line: no valve of it opens, no leak. */
function pack(own: Parameters, load: number, duration = 6): Run {
  const brake: DeviceDefinition = device('brake', {
    ports: { oil: { title: 'oil', volume: 1e-3 }, back: { title: 'back', volume: 0 } },
    flows: {
      use: {
        from: 'oil',
        to: 'back',
        law: () => ({ constant: 0, transition: 1, open: 0, leak: load }),
      },
    },
  });
  const { scenario, with: catalogues } = rig({
    parts: {
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 4e-3, level: 3e-3, head: 0 },
      },
      pack: {
        is: 'power-pack',
        ports: { up: 'up', down: 'down', reservoir: 'tank' },
        parameters: {
          displacement: D,
          slip: 0,
          spoolLeak: 0,
          lockLeak: 0,
          makeUpLeak: 0,
          friction: 0,
          stallTorque: T0,
          noLoadSpeed: W0,
          ratedVoltage: 14,
          reliefUp: 3.9e7,
          reliefDown: 3.9e7,
          cutOut: 3.5e7,
          cutIn: 3e7,
          ...own,
        },
      },
      brake: { is: brake, ports: { oil: 'up', back: 'tank' } },
    },
    steps: [step(0.05, 'pack', 'command', 0)],
    duration,
  });
  return simulateWith(catalogues, scenario, { tolerance: 'fine' });
}
const D = 8e-8;
const T0 = 3;
const W0 = 420;
const last = (run: Run, name: string): number => run.series(name)!.v.at(-1)!;

describe('power pack: the motor line', () => {
  it.each([
    [14, 1e-13],
    [14, 3e-12],
    [10, 3e-12],
    [10, 1e-11],
  ])('at %d V on a load of %d m3/(s Pa) runs where motor and pump torque meet', (voltage, load) => {
    const run = pack({ voltage }, load);
    const speed = last(run, 'pack.speed');
    const across = last(run, 'pack.pump-up.pressure') - last(run, 'down.pressure');
    // The pump's torque is its displacement times the pressure across it.
    const torque = T0 * (voltage / 14 - speed / W0);
    expect(relative(D * across, torque)).toBeLessThan(1e-4);
    expect(relative(last(run, 'pack.torque'), torque)).toBeLessThan(1e-6);
    expect(relative(last(run, 'pack.current'), (torque * W0) / 14)).toBeLessThan(1e-6);
    expect(relative(last(run, 'pack.delivery'), D * speed)).toBeLessThan(1e-9);
    // Line against line: D p = T0 (v - D^-1 load p / w0), but for the small drop of checks and make-up.
    const p = (T0 * (voltage / 14)) / (D + (T0 * load) / (W0 * D));
    expect(relative(last(run, 'up.pressure') - 101_325, p)).toBeLessThan(0.03);
  });

  it('stalls on a blocked line, at the torque and current of its voltage', () => {
    const run = pack({ voltage: 7 }, 0, 4);
    expect(Math.abs(last(run, 'pack.speed'))).toBeLessThan(0.02 * W0);
    expect(relative(last(run, 'pack.torque'), T0 / 2)).toBeLessThan(0.02);
    expect(relative(last(run, 'pack.current'), ((T0 / 2) * W0) / 14)).toBeLessThan(0.02);
  });

  it('runs up with the time constant J w0 / T0', () => {
    // Nothing to pump against but the make-up check: the load line is wide open.
    const inertia = 2e-3;
    const run = pack({ inertia, spoolTime: 0.002 }, 1e-8, 3);
    const speed = run.sampled('pack.speed')!;
    const end = speed.v.at(-1)!;
    const reached = speed.t[speed.v.findIndex((v) => v >= (1 - Math.exp(-1)) * end)] - 0.05;
    expect(relative(reached, (inertia * W0) / T0)).toBeLessThan(0.05);
  });
});
