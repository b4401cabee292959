import type {
  DeviceDefinition,
  Scenario,
  Catalogues,
} from '../../packages/core/src/define/index.js';
import { orificeConstant } from '../../packages/core/src/medium/index.js';
import { coordinate, device, flat, rig, step, type RigOptions } from './rig.js';

/** A bottle, a valve, a tube full of oil, a jack that lifts a load, and a way out for its other side. */
export interface GasRig {
  /** Bottle: m3, Pa absolute, K, time constant of heat exchange, s. */
  readonly volume?: number;
  readonly charge?: number;
  readonly exchange?: number;
  /** Flow area of the bottle's valve, m2. */
  readonly area?: number;
  readonly duration?: number;
  readonly load?: number;
  readonly gas?: RigOptions['gas'];
  readonly temperature?: number;
  /** Leak past the jack's piston, m3/(s Pa). */
  readonly bypass?: number;
}

const passage = (area: number, open: number): NonNullable<DeviceDefinition['flows']>[string] => ({
  from: 'inlet',
  to: 'outlet',
  law: (_, s) => ({
    constant: orificeConstant(1, area, s.density),
    transition: 1e4,
    open,
    leak: 0,
  }),
});

export const bottle = (o: GasRig): DeviceDefinition =>
  device('rig-bottle', {
    ports: {
      inlet: {
        title: 'inside',
        volume: 0,
        dry: true,
        optional: true,
        vessel: () => ({
          gas: 'nitrogen',
          volume: o.volume ?? 1e-3,
          pressure: o.charge ?? 12e6,
          temperature: 293.15,
          exchange: o.exchange ?? 20,
        }),
      },
      outlet: { title: 'outlet', volume: 5e-6, dry: true },
    },
    flows: { discharge: passage(2e-5, 1) },
  });

/** Shut until its handle is set to 1. */
export const valve = (o: GasRig): DeviceDefinition =>
  device('rig-valve', {
    ports: {
      inlet: { title: 'inlet', volume: 2e-6, dry: true },
      outlet: { title: 'outlet', volume: 2e-6, dry: true },
    },
    inputs: { handle: { title: 'handle', choices: ['shut', 'open'], initial: 0 } },
    flows: { way: passage(o.area ?? 1e-6, 0) },
    modes: {
      shut: {
        title: 'shut',
        guards: [{ to: 'open', when: (d) => d.input(0) - 0.5, cause: 'the handle is pulled' }],
      },
      open: { title: 'open' },
    },
    equations: (d) => d.opening(0, d.mode),
  });

export function gasRig(o: GasRig = {}): { scenario: Scenario; with: Catalogues } {
  return rig({
    parts: {
      bottle: { is: bottle(o), ports: { outlet: 'gas-out' } },
      valve: { is: valve(o), ports: { inlet: 'gas-out', outlet: 'gas-end' } },
      seat: {
        is: device('rig-seat', {
          ports: {
            inlet: { title: 'inlet', volume: 2e-6, dry: true },
            outlet: { title: 'outlet', volume: 2e-6 },
          },
          flows: { way: passage(1e-5, 1) },
        }),
        ports: { inlet: 'gas-end', outlet: 'tube-in' },
      },
      tube: {
        is: 'line',
        ports: { inlet: 'tube-in', outlet: 'tube-out' },
        parameters: { length: 2 },
      },
      jack: {
        is: 'double-acting-actuator',
        ports: { head: 'tube-out', rod: 'back' },
        parameters: { bore: 0.05, rodDiameter: 0.025, stroke: 0.3, bypass: o.bypass ?? 0 },
        links: { rod: { to: 'load', travel: { x: [0, 0.3], y: [0, 0.3] } } },
      },
      out: { is: 'orifice', ports: { inlet: 'back', outlet: 'tank' }, parameters: { bore: 0.003 } },
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 4e-3, level: 2e-3 },
      },
    },
    coordinates: {
      load: coordinate({
        low: 0,
        high: 0.3,
        inertia: flat(200),
        moment: flat(-(o.load ?? 3000)),
        friction: 100,
      }),
    },
    nodes: { 'gas-end': { volume: 2e-5 } },
    steps: [step(0.2, 'valve', 'handle', 1)],
    duration: o.duration ?? 6,
    gas: o.gas,
    temperature: o.temperature,
  });
}
