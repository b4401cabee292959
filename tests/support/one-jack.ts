/** One jack that raises a weight, between a selector and whatever a test puts in its lines. */
import { expect } from 'vitest';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import type {
  CardStep,
  CoordinateData,
  Parameters,
  Run,
  Shape,
} from '../../packages/core/src/define/index.js';
import { coordinate, flat, rig, step, type RigPart } from './rig.js';

export const AMBIENT = 101_325;
export const PSI = 6894.757;
export const [UP, NEUTRAL, DOWN] = [0, 1, 2];
export const FLOW = 2.5e-4;
/** A centimetre in hand at each end, so that the jack never bottoms. */
const STROKE: Shape = { x: [0, 1], y: [0.01, 0.31] };

export const gauge = (run: Run, node: string, t: number): number =>
  at(run, `${node}.pressure`, t) - AMBIENT;
export const last = (run: Run, name: string): number => run.series(name)!.v.at(-1)!;

/** Value of a channel at a time, s. */
export function at(run: Run, name: string, t: number): number {
  const { t: times, v } = run.series(name)!;
  const i = times.findIndex((x) => x >= t);
  return v[i < 0 ? v.length - 1 : i];
}

export const told = (run: Run, device: string, kind = 'mode'): string[] =>
  run.log.filter((e) => e.device === device && e.kind === kind && e.t > 0).map((e) => e.to);
export const when = (run: Run, device: string, to: string): number =>
  run.log.find((e) => e.device === device && e.to === to && e.kind !== 'operator' && e.t > 0)?.t ??
  NaN;
export const shift = (t: number, lever: number): CardStep => step(t, 'selector', 'lever', lever);

/** A stand, a relief valve, a selector, a jack of 20 cm2 that raises 500 N m by 1 rad. */
export function gear(
  selector: string,
  own: {
    selector?: Parameters;
    steps?: CardStep[];
    duration?: number;
    extra?: Record<string, RigPart>;
    up?: string;
    down?: string;
    start?: number;
    limit?: number;
    flow?: number;
    tolerance?: 'normal' | 'fine';
    /** Node of stand and relief valve, where something stands between them and the selector. */
    supply?: string;
    coordinates?: Record<string, CoordinateData>;
  } = {},
): SimulatedRun {
  const jackUp = own.up ?? 'up';
  const jackDown = own.down ?? 'down';
  const supply = own.supply ?? 'pressure';
  const made = rig({
    parts: {
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 8e-3, level: 6e-3 },
      },
      stand: {
        is: 'ground-supply',
        ports: { inlet: 'tank', outlet: supply },
        parameters: { flow: own.flow ?? FLOW, pressure: own.limit ?? 15e6, on: true },
      },
      relief: {
        is: 'relief-valve',
        ports: { inlet: supply, outlet: 'tank' },
        parameters: { crack: 7e6, full: 8e6, flow: 3e-4 },
      },
      selector: {
        is: selector,
        ports: { pressure: 'pressure', return: 'tank', up: 'up', down: 'down' },
        parameters: own.selector ?? {},
      },
      jack: {
        is: 'double-acting-actuator',
        ports: { head: jackUp, headChamber: jackUp, rod: jackDown, rodChamber: jackDown },
        links: { rod: { to: 'leg', travel: STROKE } },
        parameters: { bore: 0.0505, rodDiameter: 0.02, stroke: 0.32 },
      },
      ...own.extra,
    },
    coordinates: {
      leg: coordinate({ inertia: flat(20), moment: flat(-500), initial: own.start ?? 0 }),
      ...own.coordinates,
    },
    steps: own.steps ?? [],
    duration: own.duration ?? 5,
  });
  const run = simulateWith(made.with, made.scenario, { tolerance: own.tolerance ?? 'normal' });
  expect(run.outcome.kind).toBe('done');
  return run;
}

/** A second jack of 10 cm2, to raise {@link door}: 0.33 MPa. */
export const secondJack = (ports: RigPart['ports']): RigPart => ({
  is: 'double-acting-actuator',
  ports,
  links: { rod: { to: 'door', travel: STROKE } },
  parameters: { bore: 0.0357, rodDiameter: 0.014, stroke: 0.32 },
});

/** A light second coordinate of 100 N m. */
export const door = coordinate({ inertia: flat(5), moment: flat(-100) });
