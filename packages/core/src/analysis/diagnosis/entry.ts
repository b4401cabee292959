/** The entries of a sheet as evidence: what was read, how far it may be off, and what of a signature it is. */
import type { Scenario } from '../../define/index.js';
import {
  hasLight,
  WHOLE_GEAR,
  type ObservationSheet,
  type ObservedEvent,
  type ObservedSwing,
  type ObservedTimes,
  type SupplyReading,
  type TimedEvent,
} from '../../observation/index.js';
import { checks } from '../../check/index.js';
import { neverFacts, orderFacts, remarkSeen, type Fact } from './fact.js';
import { lookFinds } from './look.js';
import type { Cause } from './shapes.js';

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

/** A fact that was seen. */
export interface FactEntry extends Fact {
  readonly swing: number;
  readonly setup: number;
  readonly kind: 'fact';
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
export const BOUND = 2;
/** A gauge is read to this share of what it shows, Pa at least, where the sheet does not say (common practice, no source). */
const GAUGE_SHARE = 0.03;
const GAUGE_LEAST = 1.5e5;
/** A flow meter likewise, and never to less than this, m3/s (a tenth of a gallon a minute). */
const FLOW_SHARE = 0.05;
const FLOW_LEAST = 6.3e-6;
/** Whole strokes are counted, and one more or less at either end. */
const STROKES = 1;
/** @param setupOf for each swing the place of its setup; -1 where it has none */
export function evidencesOf(
  scenario: Scenario,
  sheet: ObservationSheet,
  setupOf: readonly number[],
): Evidences {
  const figures: FigureEntry[] = [];
  const facts: FactEntry[] = [];
  const unused: string[] = [];
  const known = namesOf(scenario);
  sheet.swings.forEach((whole, index) => {
    if (setupOf[index] < 0) {
      unused.push(`swing ${index + 1}: ${CROWDED}`);
      return;
    }
    const { swing, strange } = ownNames(whole, known, scenario);
    unused.push(...strange.map((what) => `swing ${index + 1}: ${what}`));
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
    for (const fact of [...neverFacts(swing), ...orderFacts(swing)])
      facts.push({ ...place, kind: 'fact', ...fact });
    for (const [unit, remarks] of Object.entries(swing.remarks))
      for (const remark of remarks) {
        const seen = remarkSeen(scenario, d, unit, remark);
        if (seen === undefined) unused.push(`swing ${index + 1}: ${unit} ${remark}`);
        else facts.push({ ...place, kind: 'fact', label: `${unit} ${remark}`, seen });
      }
  });
  const possible = (sheet.looks ?? []).filter(({ check, on }) => {
    const there = checks[check]?.shows !== undefined;
    if (!there) unused.push(`look ${check} at ${on}: there is no such look among the checks`);
    else if (!known.parts.has(on)) unused.push(`look ${check} at ${on}: ${STRANGE}`);
    return there && known.parts.has(on);
  });
  const looks = possible.map(({ check, on, found }): LookEntry => ({
    label: `${check} at ${on}: ${found ? 'found' : 'nothing found'}`,
    seen: (causes) => {
      const p = lookFinds(check, on, causes, scenario);
      return found ? p : 1 - p;
    },
  }));
  return { figures, facts, looks, unused };
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

const STRANGE = 'this aircraft has nothing of this name';
const DARK = 'this aircraft has no switch that would tell of it';
const CROWDED = 'there are more different conditions on this sheet than can be played';

interface Names {
  readonly units: ReadonlySet<string>;
  readonly nodes: ReadonlySet<string>;
  readonly devices: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
}

function namesOf({ units, components, mechanisms }: Scenario): Names {
  const nodes = Object.values(components).flatMap((c) => Object.values(c.ports));
  const own = [...Object.keys(units), WHOLE_GEAR];
  const devices = Object.keys(components);
  return {
    units: new Set(own),
    nodes: new Set(nodes),
    devices: new Set(devices),
    parts: new Set([...devices, ...Object.keys(mechanisms), ...own, 'fluid']),
  };
}

/** The swing without what this aircraft does not have: no simulation could foretell it. */
function ownNames(
  swing: ObservedSwing,
  { units, nodes, devices }: Names,
  scenario: Scenario,
): { readonly swing: ObservedSwing; readonly strange: readonly string[] } {
  const strange = new Set<string>();
  const has = (names: ReadonlySet<string>, name: string): boolean => {
    if (!names.has(name)) strange.add(`${name}: ${STRANGE}`);
    return names.has(name);
  };
  const own = <T>(map: Readonly<Record<string, T>>, names: ReadonlySet<string>) =>
    Object.fromEntries(Object.entries(map).filter(([name]) => has(names, name)));
  const shows = (unit: string, event: TimedEvent): boolean => {
    const there = event !== 'light' || hasLight(scenario, unit, swing.direction);
    if (!there) strange.add(`${unit} light: ${DARK}`);
    return there;
  };
  const seen = ({ unit, event }: ObservedEvent): boolean => has(units, unit) && shows(unit, event);
  const kept = {
    ...swing,
    times: Object.fromEntries(
      Object.entries(own(swing.times, units)).map(([unit, times]) => [
        unit,
        Object.fromEntries(
          Object.entries(times).filter(([event]) => shows(unit, event as TimedEvent)),
        ) as ObservedTimes,
      ]),
    ),
    gauges: own(swing.gauges, nodes),
    remarks: own(swing.remarks, units),
    supply: own(swing.supply ?? {}, devices),
    order: swing.order.filter(seen),
    never: (swing.never ?? []).filter(seen),
  };
  return { swing: kept, strange: [...strange] };
}
