/** Which parts can come near each other, and how near they do: for the rules on clearances and for drawings. */
import type { BayEntry, Evidence, UnitEntry } from '../../define/index.js';
import { abreast, boxGap, gap, nearest, type Gap } from './gap.js';
import {
  FINE_CORNERS,
  outlined,
  panelOutline,
  tyreOutline,
  type Flat,
  type Plane,
} from './geometry.js';
import { units } from './motion.js';
import { once } from './span.js';
import { approach, fixed, sweepOf, type Approach, type Track } from './sweep.js';

/** Doors that meet may come this much nearer than they are when both are closed, m: less than rigging can tell; own choice. */
const MEETING = 0.5e-3;
/** Doors that touch when closed are judged only while one is farther from closed than this, rad: 10 degrees, own choice. */
const CLOSING = (10 * Math.PI) / 180;

/** Two parts that may come near each other. */
export interface Pair {
  readonly rule: 'clearance' | 'door-clearance' | 'bay-clearance';
  /** The unit of the first of them. */
  readonly unit: string;
  /** A mechanism, and another one or words for a side of the well. */
  readonly between: readonly [string, string];
  readonly plane: Plane;
  /** Distance asked for, m. */
  readonly asked: number;
  /** Both belong to one unit; else they are worth a word only when they are in each other's way. */
  readonly own: boolean;
  readonly a: Track;
  readonly b: Track;
  /** Whether they are judged at their two angles. */
  readonly judged: (angleA: number, angleB: number) => boolean;
  /** Nearest approach along the run. */
  readonly near: Approach;
}

/** `limit`: nearer than this, parts of different units are in each other's way, m. */
type Found = Omit<Pair, 'near'> & { readonly limit: number };

const ALWAYS = (): boolean => true;

function withNear(e: Evidence, found: Found): readonly Pair[] {
  const { a, b, asked, limit, own, judged } = found;
  if (!own && (!abreast(a.whole, b.whole) || boxGap(a.whole, b.whole) >= limit)) return [];
  const near = approach(sweepOf(e).times, a, b, asked, judged);
  return near === undefined || (!own && near.distance >= limit) ? [] : [{ ...found, near }];
}

/** Tyres against doors, along the aircraft. */
export function tyresAndDoors(e: Evidence): readonly Pair[] {
  return once(e, 'tyres and doors', () => {
    const { tyre, panel } = sweepOf(e);
    const asked = e.scenario.limits.clearance ?? 0;
    return units(e).flatMap(({ name, unit }) =>
      units(e).flatMap((other) =>
        other.unit.doors.flatMap((door) => {
          const plane = 'transverse';
          const [a, b] = [tyre(unit.leg, plane), panel(door)];
          if (a === undefined || b === undefined) return [];
          const own = other.name === name;
          const between = [unit.leg, door] as const;
          return withNear(e, {
            ...{ rule: 'clearance', unit: name, between, plane, asked, own, a, b },
            ...{ limit: asked, judged: ALWAYS },
          });
        }),
      ),
    );
  });
}

/** Doors against doors, along the aircraft. */
export function doorsAndDoors(e: Evidence): readonly Pair[] {
  return once(e, 'doors and doors', () => {
    const doors = units(e).flatMap(({ name, unit }) => unit.doors.map((door) => ({ door, name })));
    return doors.flatMap((p, i) =>
      doors.slice(i + 1).flatMap((q) => {
        const found = doorPair(e, p.door, q.door, p.name, p.name === q.name);
        return found === undefined ? [] : withNear(e, found);
      }),
    );
  });
}

function doorPair(
  e: Evidence,
  one: string,
  other: string,
  unit: string,
  own: boolean,
): Found | undefined {
  if (one === other) return undefined;
  const { panel } = sweepOf(e);
  const [a, b] = [panel(one), panel(other)];
  if (a === undefined || b === undefined || !abreast(a.whole, b.whole)) return undefined;
  const limit = e.scenario.limits.doorClearance ?? e.scenario.limits.clearance ?? 0;
  const shut = gap(panelOutline(e.outline(one, 0)!), panelOutline(e.outline(other, 0)!));
  const lapped = shut < MEETING;
  const asked = Math.min(limit, lapped ? MEETING : shut - MEETING);
  const judged = lapped ? (u: number, v: number): boolean => u > CLOSING || v > CLOSING : ALWAYS;
  const between = [one, other] as const;
  return {
    ...{ rule: 'door-clearance', unit, between, plane: 'transverse', asked, own, a, b },
    ...{ limit, judged },
  };
}

/** Tyres against the wells they go into. */
export function tyresAndWells(e: Evidence): readonly Pair[] {
  return once(e, 'tyres and wells', () =>
    units(e).flatMap(({ name, unit }) => {
      const mouth = unit.bay === undefined ? undefined : mouthOf(e, unit);
      if (unit.bay === undefined || mouth === undefined) return [];
      const asked = e.scenario.limits.bayClearance ?? e.scenario.limits.clearance ?? 0;
      return sides(unit.bay, mouth).flatMap(({ what, plane, flat }) => {
        const a = sweepOf(e).tyre(unit.leg, plane);
        if (a === undefined) return [];
        const between = [unit.leg, what] as const;
        return withNear(e, {
          ...{ rule: 'bay-clearance', unit: name, between, plane, asked, own: true, a },
          ...{ b: fixed(flat), limit: asked, judged: ALWAYS },
        });
      });
    }),
  );
}

/** The well's lower edge, m. */
function mouthOf(e: Evidence, unit: UnitEntry): number | undefined {
  const doors = unit.doors
    .map((door) => e.outline(door, 0))
    .filter((p) => p !== undefined)
    .map((p) => panelOutline(p).high);
  if (doors.length > 0) return Math.max(...doors);
  const { travel } = e.scenario.mechanisms[unit.leg]?.parameters ?? {};
  const angles = sweepOf(e).tyre(unit.leg, 'transverse')?.angles ?? new Float64Array(1);
  const up = typeof travel === 'number' ? travel : angles.reduce((a, b) => Math.max(a, b));
  const placement = e.outline(unit.leg, up);
  const high = placement && tyreOutline(placement, 'transverse');
  return high && (high.low + high.high) / 2;
}

function sides(
  { roof, walls, ends }: BayEntry,
  mouth: number,
): readonly { readonly what: string; readonly plane: Plane; readonly flat: Flat }[] {
  const [front, rear] = ends ?? [-Infinity, Infinity];
  const [left, right] = [Math.min(...walls), Math.max(...walls)];
  const upright = (u: number): readonly number[] => [u, Math.min(mouth, roof), u, roof];
  const across = (what: string, pieces: readonly number[]) =>
    ({ what, plane: 'transverse', flat: outlined(pieces, front, rear) }) as const;
  const list: { readonly what: string; readonly plane: Plane; readonly flat: Flat }[] = [
    across('the roof of the well', [left, roof, right, roof]),
    across('a side wall of the well', [...upright(left), ...upright(right)]),
  ];
  if (ends !== undefined) {
    const flat = outlined([...upright(front), ...upright(rear)], left, right);
    list.push({ what: 'an end wall of the well', plane: 'lengthwise', flat });
  }
  return list;
}

/** How near two parts are to each other along a run, and where. */
export interface Clearance extends Pick<Pair, 'rule' | 'unit' | 'between' | 'plane' | 'asked'> {
  /** Nearest of all: when, and where on both. */
  readonly least: Gap & { readonly t: number };
  /**
   * One for each of `times` (s): undefined where they are farther apart than `within`, not side by
   * side or not judged. Between two of those times no part turns by more than half a degree.
   */
  readonly times: Float64Array;
  readonly gaps: readonly (Gap | undefined)[];
}

/** The clearances of a run that the rules judge, looked at where parts are nearer than `within`, m. */
export function clearancesOf(e: Evidence, within: number): readonly Clearance[] {
  const { times } = sweepOf(e);
  return [...tyresAndDoors(e), ...doorsAndDoors(e), ...tyresAndWells(e)].map((pair) => {
    const { rule, unit, between, plane, asked, a, b, near } = pair;
    const { t } = near;
    const least = { ...nearest(a.at(t, FINE_CORNERS).flat, b.at(t, FINE_CORNERS).flat), t };
    return { rule, unit, between, plane, asked, least, times, gaps: looksAt(times, pair, within) };
  });
}

function looksAt(
  times: Float64Array,
  { a, b, judged }: Pair,
  within: number,
): readonly (Gap | undefined)[] {
  let [lastA, lastB]: (Flat | undefined)[] = [];
  let last: Gap | undefined;
  return Array.from(times, (_, i) => {
    const fa = a.flats[Math.min(i, a.flats.length - 1)];
    const fb = b.flats[Math.min(i, b.flats.length - 1)];
    if (!judged(a.angles[i] ?? 0, b.angles[i] ?? 0)) return undefined;
    // Neighbours share an outline where a part stands still.
    if (fa !== lastA || fb !== lastB) {
      const found = abreast(fa, fb) && boxGap(fa, fb) < within ? nearest(fa, fb) : undefined;
      last = found !== undefined && found.distance < within ? found : undefined;
    }
    lastA = fa;
    lastB = fb;
    return last;
  });
}
