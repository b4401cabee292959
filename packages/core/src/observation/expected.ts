/** What a stopwatch and a gauge would have read in a run: the same words as on an observation sheet. */
import type { Evidence, Scenario } from '../define/index.js';
import {
  doorsHome,
  doorsOpened,
  doorsStrayed,
  legSwitches,
  lightOn,
  moves,
  timings,
  type Move,
} from '../monitor/index.js';
import { gaugeNode, gaugesOf, supplyOf } from './expected-reading.js';
import {
  TIMED,
  WHOLE_GEAR,
  type GaugeReadings,
  type ObservedEvent,
  type SupplyReadings,
  type SwingDirection,
  type TimedEvent,
} from './sheet.js';

/** One movement of the gear in a run; times in s from the selector, what did not happen left out. */
export interface ExpectedSwing {
  readonly direction: SwingDirection;
  /** Selector moved, s of the run. */
  readonly start: number;
  readonly times: Readonly<Record<string, Readonly<Partial<Record<TimedEvent, number>>>>>;
  /** When doors that were home came open again, by unit. Whoever holds the watch has stopped it by then. */
  readonly strayed: Readonly<Record<string, number>>;
  readonly order: readonly ObservedEvent[];
  readonly gauges: Readonly<Record<string, GaugeReadings>>;
  readonly supply: Readonly<Record<string, SupplyReadings>>;
}

export interface ExpectedOptions {
  /** Points of the system with a gauge, beside the usual one. */
  readonly nodes?: readonly string[];
  /** From when on it was left to itself, s of the run: what it does then is no part of the swing. */
  readonly leftAt?: number;
}

/** Phases of a unit that its lock has not let go of yet, by the way it goes. */
const HELD: Readonly<Record<Move['direction'], readonly string[]>> = {
  up: ['down and locked'],
  down: ['up and locked', 'up and closed', 'doors closing', 'doors opening'],
};
/** Every movement of the gear in a run, in order. */
export function expectedSwings(
  e: Evidence,
  { nodes = [], leftAt = Infinity }: ExpectedOptions = {},
): readonly ExpectedSwing[] {
  const all = timings(e);
  return moves(e).map((whole) => {
    const move = { ...whole, end: Math.min(whole.end, leftAt) };
    const usual = move.by === 'gas' ? undefined : gaugeNode(e, move.direction);
    const strayed: Record<string, number> = {};
    const units = Object.entries(e.scenario.units).flatMap(([name, unit]) => {
      const timing = all.find((t) => t.unit === name && t.start === move.start);
      if (timing === undefined) return [];
      const stray = doorsStrayed(e, unit, move);
      if (stray !== undefined) strayed[name] = stray.gone - move.start;
      const times = {
        unlocked: unlocked(e, name, move),
        opened: doorsOpened(e, unit, move) ?? NaN,
        moving: timing.moving,
        locked: timing.locked,
        doors: stray?.home ?? doorsHome(e, unit, move) ?? NaN,
        light: lightOn(e, unit, move) ?? NaN,
        total:
          stray === undefined ? timing.start + timing.total : Math.max(stray.home, timing.locked),
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
      strayed,
      order: orderOf(units),
      gauges: gaugesOf(
        e,
        move,
        gear,
        usual === undefined ? nodes : [usual, ...nodes],
        Number.isFinite(leftAt),
      ),
      supply: supplyOf(e, move, gear),
    };
  });
}

/** Whether a light tells of the end that a movement goes to: of a unit, or of one at least of the whole gear. */
export function hasLight(scenario: Scenario, of: string, direction: SwingDirection): boolean {
  const units = of === WHOLE_GEAR ? Object.values(scenario.units) : [scenario.units[of]];
  const end = direction === 'up' ? 'up' : 'down';
  return units.some((unit) => legSwitches(scenario, unit, end).length > 0);
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
      (['opened', 'moving', 'locked', 'doors'] as const).flatMap((event) => {
        const t = times[event];
        return t === undefined ? [] : [{ unit, event, t }];
      }),
    )
    .sort((a, b) => a.t - b.t)
    .map(({ unit, event }) => ({ unit, event }));
}
