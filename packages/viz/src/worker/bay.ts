/** Picks out of a run what the bay draws beside legs and doors. */
import {
  braceBars,
  catalogues,
  clearancesOf,
  kept,
  plungerDepression,
  rampOf,
  type Clearance,
  type ComponentEntry,
  type MechanismDefinition,
  type Parameters,
  type Point3,
  type Run,
  type Scenario,
  type Shape,
} from '@wheelwell/core';
import { GAP_SIZE } from './bay-message.js';
import type {
  Approaches,
  BayFacts,
  BraceFacts,
  CatchFacts,
  ClearanceFacts,
  DriveFacts,
  PlungerFacts,
  RampFacts,
} from './bay-message.js';

const { components, mechanisms } = catalogues;

/** Parts farther apart than this are in nobody's way, m: own choice. */
const WITHIN = 0.15;

/** What is there, however the run goes. */
export function bayFacts(scenario: Scenario): BayFacts {
  return {
    catches: each(scenario, (name, entry) => catchOf(scenario, name, entry)),
    plungers: each(scenario, (name, entry) => plungerOf(scenario, name, entry)),
    braces: each(scenario, (name, entry) => braceOf(scenario, name, entry)),
    drives: drives(scenario),
    ramps: ramps(scenario),
  };
}

/** Before anybody has looked along the run. */
export const noApproaches = (): Approaches => ({ clearances: [], looks: new Float64Array() });

/** Takes as long as simulating. */
export function approaches(run: Run): Approaches {
  const clearances = clearancesOf(run, WITHIN);
  return {
    clearances: clearances.map((c) => clearanceFacts(c, run.scenario)),
    looks: Float64Array.from(clearances[0]?.times ?? []),
  };
}

export function arraysInApproaches({
  clearances,
  looks,
}: Approaches): (Float64Array | Float32Array)[] {
  return [...clearances.map((c) => c.gaps), looks];
}

function each<T>(
  scenario: Scenario,
  find: (name: string, entry: ComponentEntry) => T | undefined,
): T[] {
  return Object.entries(scenario.components).flatMap(([name, entry]) => find(name, entry) ?? []);
}

const number = (p: Parameters, name: string): number => {
  const value = p[name];
  return typeof value === 'number' ? value : 0;
};

function linkOf(entry: ComponentEntry): ComponentEntry['links'][string] | undefined {
  return Object.values(entry.links)[0];
}

function rangeOf(scenario: Scenario, mechanism: string): readonly [number, number] {
  const entry = scenario.mechanisms[mechanism];
  const kind = mechanisms[entry?.is ?? ''];
  if (entry === undefined || kind === undefined) return [0, 1];
  return travelOf(entry.parameters, kind);
}

const travelOf = kept((parameters: Parameters, kind: MechanismDefinition) => {
  const { low, high } = kind.coordinate(parameters);
  return [low, high] as const;
});

function catchOf(scenario: Scenario, name: string, entry: ComponentEntry): CatchFacts | undefined {
  const on = linkOf(entry)?.to;
  const role = components[entry.is]?.role;
  const own = Object.values(scenario.units).some((u) => u.uplock === name || u.downlock === name);
  if (on === undefined || own || (role !== 'uplock' && role !== 'downlock')) return undefined;
  const [low, high] = rangeOf(scenario, on);
  return { device: name, on, at: Math.min(Math.max(number(entry.parameters, 'at'), low), high) };
}

function plungerOf(
  scenario: Scenario,
  name: string,
  { is, parameters, links }: ComponentEntry,
): PlungerFacts | undefined {
  const link = links.plunger;
  if (components[is]?.role !== 'sequence-valve' || link?.travel === undefined) return undefined;
  const [low, high] = rangeOf(scenario, link.to);
  const depth = (angle: number): number =>
    plungerDepression(parameters, along(link.travel!, angle));
  const rises = depth(high) >= depth(low);
  // Where it is never touched (rigged late) it is drawn at the end it belongs to.
  const touch = crossing(depth, rises ? low : high, rises ? high : low);
  const step = 1e-3 * (high - low);
  const [a, b] = [Math.max(touch - step, low), Math.min(touch + step, high)];
  const arm = Math.abs((along(link.travel, b) - along(link.travel, a)) / (b - a || 1));
  return { device: name, on: link.to, touch, high: rises, arm };
}

/** A sampled function, straight between its points. */
function along({ x, y }: Shape, at: number): number {
  const i = Math.min(Math.max(x.findIndex((each) => each > at) - 1, 0), Math.max(x.length - 2, 0));
  const last = at >= (x.at(-1) ?? 0) ? x.length - 2 : i;
  const [x0 = 0, x1 = 1, y0 = 0, y1 = 0] = [x[last], x[last + 1], y[last], y[last + 1]];
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}

/** Where a depth becomes positive on the way from one angle to another; the latter if it never does. */
function crossing(depth: (angle: number) => number, from: number, to: number): number {
  if (depth(to) < 0) return to;
  let [a, b] = [from, to];
  if (depth(a) >= 0) return a;
  for (let i = 0; i < 40; i++) {
    const middle = (a + b) / 2;
    if (depth(middle) < 0) a = middle;
    else b = middle;
  }
  return b;
}

function braceOf(scenario: Scenario, name: string, entry: ComponentEntry): BraceFacts | undefined {
  const on = linkOf(entry)?.to;
  const leg = scenario.mechanisms[on ?? ''];
  const kind = mechanisms[leg?.is ?? ''];
  if (entry.is !== 'over-centre-brace' || on === undefined || leg === undefined) return undefined;
  const { upper, lower, onLeg, structure, upperAt } = braceBars(entry.parameters);
  // The leg would lie along the upper end's direction at that angle.
  const [pivot, foot] = kind?.outline(leg.parameters).at(upperAt).line ?? [];
  if (pivot === undefined || foot === undefined) return undefined;
  const reach = structure / Math.hypot(foot.x - pivot.x, foot.y - pivot.y, foot.z - pivot.z);
  const end = (axis: keyof Point3): number => pivot[axis] + reach * (foot[axis] - pivot[axis]);
  return { device: name, on, upper, lower, onLeg, end: [end('x'), end('y'), end('z')] };
}

function drives(scenario: Scenario): DriveFacts[] {
  const chains = each(scenario, (name, { is, links }): DriveFacts | undefined =>
    is === 'chain' && links.driver !== undefined && links.follower !== undefined
      ? { device: name, from: links.driver.to, to: links.follower.to }
      : undefined,
  );
  const linkages = Object.entries(scenario.mechanisms).flatMap(([to, { driven }]): DriveFacts[] =>
    driven === undefined ? [] : [{ device: '', from: driven.by, to }],
  );
  return [...chains, ...linkages];
}

/** Steps in which the onset of a ramp is looked for. */
const STEPS = 400;

function ramps(scenario: Scenario): RampFacts[] {
  return Object.entries(scenario.mechanisms).flatMap(([on, { is, parameters }]): RampFacts[] => {
    const found = is === 'leg' ? rampFacts(parameters) : undefined;
    return found === undefined ? [] : [{ on, ...found }];
  });
}

const rampFacts = kept((leg: Parameters): Omit<RampFacts, 'on'> | undefined => {
  const ramp = rampOf(leg);
  if (ramp === undefined) return undefined;
  const [low, high] = travelOf(leg, mechanisms.leg);
  const angles = Array.from({ length: STEPS + 1 }, (_, i) => low + ((high - low) * i) / STEPS);
  const bears = angles.find(ramp.bears);
  const face = Float32Array.from(ramp.face.flatMap(({ x, y, z }) => [x, y, z]));
  return { face, ...(bears === undefined ? {} : { bears }) };
});

function clearanceFacts(c: Clearance, { limits }: Scenario): ClearanceFacts {
  const gaps = new Float32Array(c.times.length * GAP_SIZE).fill(NaN);
  c.gaps.forEach((gap, i) => {
    if (gap !== undefined) gaps.set([gap.distance, ...gap.from, ...gap.to], i * GAP_SIZE);
  });
  const { unit, between, plane, asked } = c;
  const { t, ...gap } = c.least;
  const doors = limits.doorClearance ?? limits.clearance ?? 0;
  const meets = c.rule === 'door-clearance' && asked < doors;
  return { unit, between, plane, asked, meets, least: { t, gap }, gaps };
}
