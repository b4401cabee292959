/** What gauges and the instruments of the supply would have shown in a run. */
import type { Evidence, Gear, Scenario } from '../define/index.js';
import { trace, valueAt, type Move } from '../monitor/index.js';
import type { GaugeReadings, SupplyReadings, SwingDirection } from './sheet.js';

/**
 * How long after everything is home the selector is still held for the dead-head reading, and from when on
 * it is looked at, s: by then the blow of arriving is over; a choice.
 */
export const HELD = { from: 0.1, to: 1 } as const;
/** Readings spread evenly over the travel, of which the middle one counts. */
const SAMPLES = 41;
/** A part as near as this to where it stays has stopped for the eye, rad. */
const AT_REST = 0.02;

type Devices = readonly (readonly [string, Scenario['components'][string]])[];

function ofRole(e: Gear, ...roles: readonly ReturnType<Evidence['role']>[]): Devices {
  return Object.entries(e.scenario.components).filter(([name]) => roles.includes(e.role(name)));
}

/**
 * The gauge that a mechanic looks at: where the main relief valve is; on a power pack, which has it
 * inside, the line that drives this way.
 */
export function gaugeNode(e: Gear, direction: Move['direction']): string | undefined {
  const supplies = ofRole(e, 'supply').map(([, c]) => c);
  const pack = supplies.find((c) => c.ports[direction] !== undefined);
  if (pack !== undefined) return pack.ports[direction];
  return ofRole(e, 'relief')[0]?.[1].ports.inlet ?? supplies[0]?.ports.outlet;
}

/** The lines that a selector or a power pack feeds and drains: where a second gauge is put. */
export function lineNodes(e: Gear): readonly string[] {
  const ports = ofRole(e, 'selector', 'supply').flatMap(([, c]) =>
    ['up', 'down', 'return'].flatMap((port) => c.ports[port] ?? []),
  );
  return [...new Set(ports)];
}

/**
 * The lines that are under the supply's pressure while the gear goes this way. Where that is switched on
 * and off (an unloader, a power pack) it falls and is made good again, as quickly as something leaks: what
 * is read at dead-head is what the needle climbs to. Other lines are read when they have settled.
 */
export function drivenNodes(e: Evidence, direction: SwingDirection): ReadonlySet<string> {
  if (direction === 'blow-down') return new Set();
  const usual = gaugeNode(e, direction);
  const fed = ofRole(e, 'selector', 'supply').flatMap(([, c]) => c.ports[direction] ?? []);
  return new Set(usual === undefined ? fed : [usual, ...fed]);
}

/** Over the travel, and the first and last moment at which the selector is held. */
interface Watch {
  readonly from: number;
  readonly travel: number;
  readonly held: number;
  readonly last: number;
}

function watch(e: Evidence, move: Move, gear: number): Watch {
  const { start, end } = move;
  const whole = Number.isFinite(gear);
  const home = start + gear;
  // What never comes home is watched while something moves: how long it is waited for says nothing.
  const moved = whole ? home : lastMotion(e, move);
  // Where it never comes home the needle is read until it is given up.
  const last = whole ? Math.min(home + HELD.to, end) : end;
  const travel = (moved ?? end) - start;
  return { from: start, travel, held: Math.min((moved ?? start) + HELD.from, last), last };
}

/** When the last leg or door has all but come to rest; undefined where nothing ever moves. */
function lastMotion(e: Evidence, { start, end }: Move): number | undefined {
  let last = -Infinity;
  for (const { leg, doors } of Object.values(e.scenario.units))
    for (const part of [leg, ...doors]) {
      const angle = trace(e, `${part}.angle`);
      if (angle === undefined) continue;
      const rest = valueAt(angle, end);
      const away = angle.t.findLastIndex(
        (t, i) => t >= start && t < end && Math.abs(angle.v[i] - rest) > AT_REST,
      );
      if (away >= 0) last = Math.max(last, angle.t[away]);
    }
  return last > start ? last : undefined;
}

/** What a needle stands at for most of the travel. */
function middle({ from, travel }: Watch, at: (t: number) => number): number {
  return Array.from({ length: SAMPLES }, (_, i) => at(from + (travel * (i + 0.5)) / SAMPLES)).sort(
    (a, b) => a - b,
  )[SAMPLES >> 1];
}

/** `gear`: when the last unit is home, s from the selector; not finite when it never is. */
export function gaugesOf(
  e: Evidence,
  move: Move,
  gear: number,
  nodes: readonly string[],
  left: boolean,
): Record<string, GaugeReadings> {
  const seen = watch(e, move, gear);
  const driven = drivenNodes(e, move.by === 'gas' ? 'blow-down' : move.direction);
  const found: Record<string, GaugeReadings> = {};
  for (const node of new Set(nodes)) {
    const pressure = trace(e, `${node}.pressure`);
    if (pressure === undefined) continue;
    const at = (t: number): number => valueAt(pressure, t) - e.scenario.ambient;
    const highest = (from: number): number =>
      pressure.t.reduce(
        (most, t, i) =>
          t >= from && t <= seen.last ? Math.max(most, pressure.v[i] - e.scenario.ambient) : most,
        Math.max(at(from), at(seen.last)),
      );
    found[node] = {
      static: at(move.start),
      moving: middle(seen, at),
      'dead-head': driven.has(node) ? highest(seen.held) : at(seen.last),
      peak: highest(move.start),
      ...(left && { after: at(e.duration) }),
    };
  }
  return found;
}

export function supplyOf(e: Evidence, move: Move, gear: number): Record<string, SupplyReadings> {
  const seen = watch(e, move, gear);
  const found: Record<string, SupplyReadings> = {};
  for (const [name] of ofRole(e, 'supply')) {
    const [gives, slips] = [trace(e, `${name}.delivery`), trace(e, `${name}.slip`)];
    if (gives === undefined) continue;
    const at = (t: number): number =>
      valueAt(gives, t) - (slips === undefined ? 0 : valueAt(slips, t));
    found[name] = { 'moving-flow': middle(seen, at), 'dead-head-flow': at(seen.last) };
  }
  for (const [name] of ofRole(e, 'hand-supply')) {
    const strokes = trace(e, `${name}.strokes`);
    if (strokes === undefined) continue;
    const to = Number.isFinite(gear) ? move.start + gear : move.end;
    found[name] = { strokes: valueAt(strokes, to) - valueAt(strokes, move.start) };
  }
  for (const [name] of ofRole(e, 'control')) {
    const clock = clockOf(e, name, move);
    if (clock !== undefined) found[name] = clock;
  }
  return found;
}

/** The first whole round of a regulator from the selector on; what does not come is left out. */
function clockOf(e: Evidence, device: string, { start }: Move): SupplyReadings | undefined {
  const turns = e.log.filter((x) => x.device === device && x.kind === 'mode' && x.t >= start);
  const next = (to: string, from: number): number =>
    turns.find((x) => x.to === to && x.t > from)?.t ?? NaN;
  const out = next('unloaded', start);
  const back = next('loading', out);
  const again = next('unloaded', back);
  const read = {
    ...(back >= out && { 'cut-in': back - out }),
    ...(again >= back && { 'cut-out': again - back }),
  };
  return Object.keys(read).length > 0 ? read : undefined;
}
