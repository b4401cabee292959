/** The entries of a sheet as evidence: what was read, how far it may be off, and what of a signature it is. */
import type { Scenario } from '../../define/index.js';
import {
  WHOLE_GEAR,
  type ObservationSheet,
  type ObservedEvent,
  type ObservedSwing,
  type Remark,
  type SupplyReading,
} from '../../observation/index.js';
import { checks } from '../../check/index.js';
import type { Cause, Signature } from './shapes.js';

/** s, Pa gauge, m3/s, strokes of a pump. */
export type FigureKind = 'time' | 'gauge' | 'flow' | 'strokes';

/** A figure that was read. */
export interface FigureEntry {
  readonly swing: number;
  readonly setup: number;
  readonly label: string;
  readonly kind: FigureKind;
  readonly key: string;
  readonly value: number;
  /** One standard deviation of the reading. */
  readonly spread: number;
  /** How far it may be off, as noted. */
  readonly error: number;
}

/** A fact that was seen; `seen` is its probability under what a signature foretells. */
export interface FactEntry {
  readonly swing: number;
  readonly setup: number;
  readonly label: string;
  readonly kind: 'fact';
  readonly seen: (s: Signature) => number;
}

/** What a look at a part has shown; told by the causes alone, whatever their severity. */
export interface LookEntry {
  readonly label: string;
  readonly seen: (causes: readonly Cause[]) => number;
}

export interface Evidences {
  readonly figures: readonly FigureEntry[];
  readonly facts: readonly FactEntry[];
  readonly looks: readonly LookEntry[];
  readonly unused: readonly string[];
}

/** An error as noted is a bound that holds nineteen times in twenty. */
const BOUND = 2;
/** A gauge is read to this share of what it shows, Pa at least, where the sheet does not say (common practice, no source). */
const GAUGE_SHARE = 0.03;
const GAUGE_LEAST = 1.5e5;
/** A flow meter likewise, and never to less than this, m3/s (a tenth of a gallon a minute). */
const FLOW_SHARE = 0.05;
const FLOW_LEAST = 6.3e-6;
/** Whole strokes are counted, and one more or less at either end. */
const STROKES = 1;
/** A fact that must be seen is missed, or seen where it is not, once in so many. */
const SLIP = 0.02;
/** That a part did not move, or not come home, is mistaken more seldom. */
const GLARING = 0.002;
/** Pauses shorter than a blink are not seen as jerks by everybody. */
const JERKS = { without: 0.1, with: 0.7 } as const;
/** Difference between two moments that the eye tells for sure, s. */
const GLANCE = 0.15;
/** What anybody sees a part to have moved while it was left, rad, and how sharply that is told. */
const DRIFT = 0.035;
const DRIFT_SPREAD = 0.012;
/** Difference between two sides that is called one, s. */
const APART = 0.4;

export function evidencesOf(
  scenario: Scenario,
  sheet: ObservationSheet,
  setupOf: readonly number[],
): Evidences {
  const figures: FigureEntry[] = [];
  const facts: FactEntry[] = [];
  const unused: string[] = [];
  sheet.swings.forEach((swing, index) => {
    const place = { swing: index, setup: setupOf[index] };
    const d = swing.direction;
    for (const [unit, times] of Object.entries(swing.times))
      for (const [event, time] of Object.entries(times))
        figures.push({
          ...place,
          label: `${unit} ${event}`,
          kind: 'time',
          key: `${d}/${unit}/${event}`,
          value: time.at,
          spread: Math.max(time.error / BOUND, 0.01),
          error: time.error,
        });
    for (const [node, readings] of Object.entries(swing.gauges)) {
      const { error, ...moments } = readings;
      for (const [moment, p] of Object.entries(moments)) {
        const bound = error ?? Math.max(GAUGE_SHARE * Math.abs(p), GAUGE_LEAST);
        figures.push({
          ...place,
          label: `gauge on ${node}, ${moment}`,
          kind: 'gauge',
          key: `${d}/gauge/${node}/${moment}`,
          value: p,
          spread: bound / BOUND,
          error: bound,
        });
      }
    }
    for (const [device, readings] of Object.entries(swing.supply ?? {}))
      for (const [reading, value] of Object.entries(readings)) {
        const { kind, error } = supplyFigure(reading as SupplyReading, value, sheet.readingError);
        figures.push({
          ...place,
          label: `${device}, ${reading}`,
          kind,
          key: `${d}/supply/${device}/${reading}`,
          value,
          spread: error / BOUND,
          error,
        });
      }
    facts.push(
      ...(swing.never ?? []).map(({ unit, event }) => ({
        ...place,
        kind: 'fact' as const,
        label: `${unit} ${event} never`,
        seen: (s: Signature) => glaring(s[`${d}/${unit}/${event}`] === undefined),
      })),
    );
    facts.push(...orderFacts(swing).map((f) => ({ ...place, kind: 'fact' as const, ...f })));
    for (const [unit, remarks] of Object.entries(swing.remarks))
      for (const remark of remarks) {
        const seen = remarkSeen(scenario, d, unit, remark);
        if (seen === undefined) unused.push(`swing ${index + 1}: ${unit} ${remark}`);
        else facts.push({ ...place, kind: 'fact', label: `${unit} ${remark}`, seen });
      }
  });
  const known = (sheet.looks ?? []).filter(({ check, on }) => {
    const there = checks[check]?.shows !== undefined;
    if (!there) unused.push(`look ${check} at ${on}: there is no such look among the checks`);
    return there;
  });
  const looks = known.map(({ check, on, found }): LookEntry => ({
    label: `${check} at ${on}: ${found ? 'found' : 'nothing found'}`,
    seen: (causes) => {
      const p = lookFinds(check, on, causes, scenario);
      return found ? p : 1 - p;
    },
  }));
  return { figures, facts, looks, unused };
}

/** A look shows something where there is nothing once in so many, where the check does not say. */
const PHANTOM = 0.03;
/** A look finds what is there so often, where the check does not say. */
const SURE = 0.95;

/** How likely a look is to show something, were these the causes. */
export function lookFinds(
  check: string,
  on: string,
  causes: readonly Cause[],
  scenario?: Scenario,
): number {
  const { shows = [], sure = SURE, besides = PHANTOM } = checks[check] ?? {};
  const there = causes.some((c) => shows.includes(c.fault) && covers(on, c.on, scenario));
  return there ? sure : besides;
}

/** Whether a look at something sees a part: itself, a part of that unit, or anything of the gear. */
function covers(on: string, part: string, scenario: Scenario | undefined): boolean {
  if (on === part || on === WHOLE_GEAR) return true;
  const unit = scenario?.units[on];
  if (unit === undefined) return false;
  const { leg, doors, uplock, downlock, sequence, actuators } = unit;
  const own = [leg, ...doors, uplock, downlock, ...sequence, ...actuators];
  const links = Object.values(scenario?.components[part]?.links ?? {});
  return own.includes(part) || links.some(({ to }) => to === leg || doors.includes(to));
}

function supplyFigure(
  reading: SupplyReading,
  value: number,
  readingError: number,
): Pick<FigureEntry, 'kind' | 'error'> {
  if (reading === 'strokes') return { kind: 'strokes', error: 2 * STROKES };
  if (reading === 'cut-out' || reading === 'cut-in') return { kind: 'time', error: readingError };
  return { kind: 'flow', error: Math.max(FLOW_SHARE * value, FLOW_LEAST) };
}

/** One entry after another: each pair is a fact of its own. */
function orderFacts({
  direction,
  order,
}: ObservedSwing): Omit<FactEntry, 'swing' | 'setup' | 'kind'>[] {
  const key = (e: ObservedEvent): string => `${direction}/${e.unit}/${e.event}`;
  const name = (e: ObservedEvent): string => `${e.unit} ${e.event}`;
  return order.slice(1).map((later, i) => {
    const first = order[i];
    return {
      label: `${name(first)} before ${name(later)}`,
      seen: (s: Signature) => {
        const [a, b] = [s[key(first)], s[key(later)]];
        // What stands in an order was seen to come.
        return a === undefined || b === undefined ? GLARING : slipped(before(a, b, GLANCE));
      },
    };
  });
}

/** Probability that the first is seen before the second; of what never comes the other is first. */
function before(a: number | undefined, b: number | undefined, width: number): number {
  if (a === undefined) return b === undefined ? 0.5 : 0;
  return b === undefined ? 1 : normal((b - a) / width);
}

const slipped = (p: number): number => SLIP + (1 - 2 * SLIP) * p;
export const glaring = (is: boolean): number => (is ? 1 - GLARING : GLARING);

/** How likely a remark is under a signature; undefined where a swing does not tell. */
function remarkSeen(
  scenario: Scenario,
  d: string,
  unit: string,
  remark: Remark,
): FactEntry['seen'] | undefined {
  const units = unit === WHOLE_GEAR ? Object.keys(scenario.units) : [unit];
  switch (remark) {
    case 'did not move':
      return (s) => glaring(units.every((u) => s[`${d}/${u}/moved`] !== 1));
    case 'stopped short':
      return (s) =>
        glaring(
          units.some((u) => s[`${d}/${u}/moved`] === 1 && s[`${d}/${u}/locked`] === undefined),
        );
    case 'moved by jerks':
      return (s) => (units.some((u) => s[`${d}/${u}/pauses`] > 0) ? JERKS.with : JERKS.without);
    case 'slower than the other side':
    case 'faster than the other side': {
      const other = otherSide(scenario, unit);
      if (other === undefined) return undefined;
      const [slow, quick] = remark.startsWith('slower') ? [unit, other] : [other, unit];
      const total = (s: Signature, u: string): number | undefined => s[`${d}/${u}/total`];
      return (s) => {
        const a = total(s, quick);
        const b = total(s, slow);
        if (a === undefined || b === undefined) return slipped(before(a, b, APART));
        return slipped(normal((b - a - APART / 2) / (APART / 2)));
      };
    }
    case 'drifts when neutral':
      return (s) => {
        const most = Math.max(...units.map((u) => s[`${d}/${u}/drift`] ?? 0));
        return slipped(normal((most - DRIFT) / DRIFT_SPREAD));
      };
  }
}

function otherSide({ units }: Scenario, unit: string): string | undefined {
  const side = units[unit]?.side;
  const wanted = side === 'left' ? 'right' : side === 'right' ? 'left' : undefined;
  return Object.keys(units).find((name) => units[name].side === wanted);
}

/** Normal distribution function (Abramowitz and Stegun 7.1.26, error below 1.5e-7). */
export function normal(x: number): number {
  const z = Math.abs(x) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * z);
  const tail =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-z * z);
  return x >= 0 ? 1 - 0.5 * tail : 0.5 * tail;
}
