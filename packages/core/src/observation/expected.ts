/** What a stopwatch and a gauge would have read in a run: the same words as on an observation sheet. */
import type { Evidence } from '../define/index.js';
import { doorsHome, moves, timings, trace, valueAt, type Move } from '../monitor/index.js';
import {
  TIMED,
  WHOLE_GEAR,
  type GaugeReadings,
  type ObservedEvent,
  type SwingDirection,
  type TimedEvent,
} from './sheet.js';

/** One movement of the gear in a run; times in s from the selector, what did not happen left out. */
export interface ExpectedSwing {
  readonly direction: SwingDirection;
  /** Selector moved, s of the run. */
  readonly start: number;
  readonly times: Readonly<Record<string, Readonly<Partial<Record<TimedEvent, number>>>>>;
  readonly order: readonly ObservedEvent[];
  readonly gauges: Readonly<Record<string, GaugeReadings>>;
}

/** Phases of a unit that its lock has not let go of yet, by the way it goes. */
const HELD: Readonly<Record<Move['direction'], readonly string[]>> = {
  up: ['down and locked'],
  down: ['up and locked', 'up and closed', 'doors closing', 'doors opening'],
};
/** How long after everything is home the selector is still held for the dead-head reading, s; a choice. */
const HOLD = 1;

/** Every movement of the gear in a run, in order. */
export function expectedSwings(e: Evidence): readonly ExpectedSwing[] {
  const all = timings(e);
  return moves(e).map((move) => {
    const units = Object.entries(e.scenario.units).flatMap(([name, unit]) => {
      const timing = all.find((t) => t.unit === name && t.start === move.start);
      if (timing === undefined) return [];
      const times = {
        unlocked: unlocked(e, name, move),
        moving: timing.moving,
        locked: timing.locked,
        doors: doorsHome(e, unit, move) ?? NaN,
        total: timing.start + timing.total,
      };
      return [[name, fromSelector(times, move.start)] as const];
    });
    const totals = units.map(([, t]) => t.total ?? NaN);
    const gear = totals.length === 0 ? NaN : Math.max(...totals);
    const times = {
      ...Object.fromEntries(units),
      ...(Number.isFinite(gear) && { [WHOLE_GEAR]: { total: gear } }),
    };
    return {
      direction: move.by === 'gas' ? 'blow-down' : move.direction,
      start: move.start,
      times,
      order: orderOf(units),
      gauges: gauges(e, move, gear),
    };
  });
}

function fromSelector(
  times: Readonly<Record<TimedEvent, number>>,
  start: number,
): Partial<Record<TimedEvent, number>> {
  const known = TIMED.filter((event) => Number.isFinite(times[event]));
  return Object.fromEntries(known.map((event) => [event, times[event] - start]));
}

function unlocked(e: Evidence, unit: string, { direction, start, end }: Move): number {
  const held = HELD[direction];
  const entry = e.log.find(
    (x) =>
      x.kind === 'phase' &&
      x.device === unit &&
      x.t >= start &&
      x.t < end &&
      held.includes(x.from) &&
      !held.includes(x.to),
  );
  return entry?.t ?? NaN;
}

/** What can be told apart by eye: the totals say nothing that is not said before. */
function orderOf(
  units: readonly (readonly [string, Partial<Record<TimedEvent, number>>])[],
): ObservedEvent[] {
  return units
    .flatMap(([unit, times]) =>
      (['moving', 'locked', 'doors'] as const).flatMap((event) => {
        const t = times[event];
        return t === undefined ? [] : [{ unit, event, t }];
      }),
    )
    .sort((a, b) => a.t - b.t)
    .map(({ unit, event }) => ({ unit, event }));
}

/**
 * The gauge that a mechanic looks at: where the main relief valve is; on a power pack, which has it
 * inside, the line that drives this way.
 */
export function gaugeNode(e: Evidence, direction: Move['direction']): string | undefined {
  const devices = Object.entries(e.scenario.components);
  const of = (role: ReturnType<Evidence['role']>) =>
    devices.filter(([name]) => e.role(name) === role).map(([, c]) => c);
  const pack = of('supply').find((c) => c.ports[direction] !== undefined);
  if (pack !== undefined) return pack.ports[direction];
  return of('relief')[0]?.ports.inlet ?? of('supply')[0]?.ports.outlet;
}

function gauges(e: Evidence, move: Move, gear: number): Record<string, GaugeReadings> {
  const node = gaugeNode(e, move.direction);
  const pressure = node === undefined ? undefined : trace(e, `${node}.pressure`);
  // Gas does the work of a blow-down, not the supply.
  if (node === undefined || pressure === undefined || move.by === 'gas') return {};
  const at = (t: number): number => valueAt(pressure, t) - e.scenario.ambient;
  const whole = Number.isFinite(gear);
  const last = whole ? Math.min(move.start + gear + HOLD, move.end) : move.end;
  const travel = whole ? gear : move.end - move.start;
  const moving = Array.from({ length: SAMPLES }, (_, i) =>
    at(move.start + (travel * (i + 0.5)) / SAMPLES),
  ).sort((a, b) => a - b);
  const seen = [...pressure.v].filter(
    (_, i) => pressure.t[i] >= move.start && pressure.t[i] <= last,
  );
  return {
    [node]: {
      static: at(move.start),
      // What the needle stands at for most of the travel.
      moving: moving[SAMPLES >> 1],
      ...(whole && { 'dead-head': at(last) }),
      peak: seen.reduce((high, p) => Math.max(high, p - e.scenario.ambient), at(move.start)),
    },
  };
}

/** Readings spread evenly over the travel, of which the middle one counts. */
const SAMPLES = 41;
