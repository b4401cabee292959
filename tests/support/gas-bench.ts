/** A bottle, its valve and a bled gas line, with whatever a test puts at the line's end. */
import { expect } from 'vitest';
import type { CardStep, CoordinateData, Parameters } from '../../packages/core/src/define/index.js';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import { rig, step, type RigOptions, type RigPart } from './rig.js';

export const [CLOSED, HALF, OPEN] = [0, 1, 2];
export const ROOM = 293.15;
export const handle = (t: number, value: number): CardStep => step(t, 'valve', 'handle', value);

export interface GasBench {
  readonly bottle?: Parameters;
  readonly valve?: Parameters;
  readonly extra?: Readonly<Record<string, RigPart>>;
  readonly steps?: readonly CardStep[];
  readonly duration?: number;
  readonly coordinates?: Readonly<Record<string, CoordinateData>>;
  readonly nodes?: RigOptions['nodes'];
  readonly temperature?: number;
}

/** One litre of nitrogen at 12 MPa and 20 degC behind a blow-down valve. */
export function gasBench(own: GasBench = {}): SimulatedRun {
  const made = rig({
    parts: {
      bottle: {
        is: 'gas-bottle',
        ports: { outlet: 'neck' },
        parameters: { volume: 1e-3, charge: 12e6, chargeTemperature: ROOM, ...own.bottle },
      },
      valve: {
        is: 'blow-down-valve',
        ports: { inlet: 'neck', outlet: 'gas' },
        parameters: own.valve,
      },
      ...own.extra,
    },
    coordinates: own.coordinates,
    nodes: own.nodes,
    steps: own.steps,
    duration: own.duration ?? 3,
    temperature: own.temperature,
  });
  const run = simulateWith(made.with, made.scenario, { tolerance: 'normal' });
  expect(run.outcome.kind).toBe('done');
  return run;
}

/** The vent that bleeds a gas line down when its valve is shut. */
export const vent = (node: string, bore = 5e-4): RigPart => ({
  is: 'orifice',
  ports: { inlet: node, outlet: 'outside' },
  parameters: { bore },
});

export const tank: RigPart = {
  is: 'reservoir',
  ports: { outlet: 'tank', return: 'tank' },
  parameters: { capacity: 8e-3, level: 6e-3 },
};

/** A test stand that runs from the start unless it is told not to. */
export const stand = (node: string, own: Parameters = {}): RigPart => ({
  is: 'ground-supply',
  ports: { inlet: 'tank', outlet: node },
  parameters: { flow: 1e-4, pressure: 5e6, on: true, ...own },
});

/** Where a channel crossed a value around a time: its last sample before and its first after. */
export function around(run: SimulatedRun, name: string, t: number): readonly [number, number] {
  const series = run.series(name)!;
  const after = series.t.findIndex((x) => x > t);
  const before = series.t.findLastIndex((x) => x < t);
  return [series.v[before], series.v[after]];
}
