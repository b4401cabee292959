/** What on a sheet cannot be true together with something else on it. */
import type { Issue } from '../define/issue.js';
import type { IssueList, Place } from '../scenario/issue-list.js';
import {
  WHOLE_GEAR,
  type GaugeReadings,
  type ObservationSheet,
  type ObservedEvent,
  type ObservedSwing,
  type ObservedTime,
  type Remark,
  type TimedEvent,
} from './sheet.js';

type Path = readonly (string | number)[];

/** Two entries of which one must be wrong. The issue stands at the first. */
export interface Contradiction extends Issue {
  readonly other: Place & { readonly path: string };
}

/** Says that two entries do not go together. */
type Tell = (path: Path, other: Path, message: string, hint?: string) => void;

/** More than this helps nobody. */
const MOST = 200;

const LOOK = 'look which of the two was noted wrongly; both are kept';

/**
 * In the order of the sheet.
 * @param pathOf where in the file a swing or an entry of an order stands: what could not be read is not on the sheet
 */
export function contradictions(
  sheet: ObservationSheet,
  issues: IssueList,
  pathOf: (entry: object) => Path,
): Contradiction[] {
  const found: Contradiction[] = [];
  const tell: Tell = (here, there, message, hint = LOOK) => {
    if (found.length >= MOST) return;
    const place = issues.placeOf(there);
    found.push({
      file: issues.file,
      ...issues.placeOf(here),
      path: here.join('.'),
      message: `${message} (line ${place.line}, ${there.join('.')})`,
      found: '',
      allowed: '',
      hint,
      other: { ...place, path: there.join('.') },
    });
  };
  for (const swing of sheet.swings) {
    const base = pathOf(swing);
    const at = (path: Path): Path => [...base, ...path];
    const within: Tell = (here, there, message, hint) => tell(at(here), at(there), message, hint);
    sequence(swing, within);
    whole(swing, within);
    order(swing, (event, there, message, hint) =>
      tell(pathOf(event), 'event' in there ? pathOf(there) : at(there), message, hint),
    );
    never(swing, within);
    remarks(swing, within);
    gauges(swing, within);
    supply(swing, within);
    if ((swing.conditions.doors ?? sheet.conditions.doors) !== 'disconnected') continue;
    const why: Path = ['conditions', 'doors'];
    const where = swing.conditions.doors === undefined ? why : at(why);
    for (const [unit, { doors }] of Object.entries(swing.times))
      if (doors !== undefined)
        tell(
          at(['times', unit, 'doors']),
          where,
          `${unit}: the doors were timed, yet they are noted as disconnected`,
        );
  }
  return found;
}

const text = ({ at }: ObservedTime): string => `${Number(at.toFixed(3))} s`;

/** Later than another by more than both readings may be off. */
const after = (a: ObservedTime, b: ObservedTime): boolean => a.at - b.at > a.error + b.error;

/** What cannot come before what, in one unit. Doors may be home before or after the leg is locked. */
const BEFORE: readonly (readonly [TimedEvent, TimedEvent])[] = [
  ['unlocked', 'moving'],
  ['unlocked', 'locked'],
  ['moving', 'locked'],
  ['unlocked', 'total'],
  ['moving', 'total'],
  ['locked', 'total'],
  ['doors', 'total'],
  ['opened', 'doors'],
];

function sequence({ times }: ObservedSwing, tell: Tell): void {
  for (const [unit, of] of Object.entries(times)) {
    for (const [first, second] of BEFORE) {
      const [a, b] = [of[first], of[second]];
      if (a === undefined || b === undefined || !after(a, b)) continue;
      const message = `${unit}: ${second} at ${text(b)} comes before ${first} at ${text(a)}`;
      tell(['times', unit, second], ['times', unit, first], message);
    }
  }
}

/** The whole gear is not home before its last unit. */
function whole({ times }: ObservedSwing, tell: Tell): void {
  const gear = times[WHOLE_GEAR]?.total;
  if (gear === undefined) return;
  for (const [unit, of] of Object.entries(times)) {
    if (unit === WHOLE_GEAR) continue;
    const late = (['total', 'locked', 'doors'] as const).find((event) => {
      const t = of[event];
      return t !== undefined && after(t, gear);
    });
    if (late === undefined) continue;
    const message = `the whole gear is home at ${text(gear)}, ${unit} ${late} only at ${text(of[late]!)}`;
    tell(['times', WHOLE_GEAR, 'total'], ['times', unit, late], message);
  }
}

function order(
  { order: list, times }: ObservedSwing,
  tell: (event: ObservedEvent, other: ObservedEvent | Path, message: string, hint?: string) => void,
): void {
  let latest: { readonly entry: ObservedEvent; readonly t: ObservedTime } | undefined;
  const seen = new Map<string, ObservedEvent>();
  for (const entry of list) {
    const { unit, event } = entry;
    const name = `${unit} ${event}`;
    const before = seen.get(name);
    if (before !== undefined)
      tell(entry, before, `${name} stands twice in the order`, 'remove one of them');
    seen.set(name, entry);
    const t = times[unit]?.[event];
    if (t === undefined) continue;
    if (latest !== undefined && after(latest.t, t)) {
      const was = latest.entry;
      const message = `${name} comes after ${was.unit} ${was.event} in the order, but was timed ${text(t)} against ${text(latest.t)}`;
      tell(entry, ['times', unit, event], message);
    }
    if (latest === undefined || t.at > latest.t.at) latest = { entry, t };
  }
}

/** What did not come was neither timed nor put into an order, nor did what comes after it. */
function never({ never: none = [], times, order: list }: ObservedSwing, tell: Tell): void {
  none.forEach(({ unit, event }, i) => {
    const here: Path = ['never', i];
    const name = `${unit} ${event}`;
    if (times[unit]?.[event] !== undefined)
      tell(here, ['times', unit, event], `${name} is noted as never, yet it was timed`);
    const listed = list.findIndex((e) => e.unit === unit && e.event === event);
    if (listed >= 0)
      tell(here, ['order', listed], `${name} is noted as never, yet stands in the order`);
    // A leg may pass doors that are not open all the way, and they close behind it; a light may fail.
    if (event === 'opened' || event === 'light') return;
    const [, later] =
      BEFORE.find(([first, then]) => first === event && times[unit]?.[then] !== undefined) ?? [];
    if (later !== undefined)
      tell(here, ['times', unit, later], `${name} is noted as never, yet ${later} was timed`);
    else if (event !== 'unlocked' && times[WHOLE_GEAR]?.total !== undefined && unit !== WHOLE_GEAR)
      tell(
        here,
        ['times', WHOLE_GEAR, 'total'],
        `${name} is noted as never, yet the whole gear was home`,
      );
  });
}

const MOVES = ['moving', 'locked', 'total'] as const satisfies readonly TimedEvent[];

function remarks(swing: ObservedSwing, tell: Tell): void {
  const { remarks: all, times, order: list } = swing;
  const has = (unit: string, remark: Remark): boolean => all[unit]?.includes(remark) === true;
  const at = (unit: string): Path => ['remarks', unit];
  for (const unit of Object.keys(all)) {
    if (has(unit, 'did not move')) {
      const here = at(unit);
      const timed = MOVES.find((event) => times[unit]?.[event] !== undefined);
      if (timed !== undefined)
        tell(here, ['times', unit, timed], `${unit} did not move, yet ${timed} was timed`);
      const listed = list.findIndex(
        (e) => e.unit === unit && MOVES.some((event) => event === e.event),
      );
      if (listed >= 0)
        tell(here, ['order', listed], `${unit} did not move, yet stands in the order`);
      for (const other of ['moved by jerks', 'faster than the other side'] as const)
        if (has(unit, other))
          tell(here, at(unit), `${unit} did not move, yet it is noted: ${other}`);
    }
    if (has(unit, 'stopped short')) {
      const done = (['locked', 'total'] as const).find((e) => times[unit]?.[e] !== undefined);
      if (done !== undefined)
        tell(at(unit), ['times', unit, done], `${unit} stopped short, yet ${done} was timed`);
    }
    if (has(unit, 'doors came open again')) {
      const none = (swing.never ?? []).findIndex((e) => e.unit === unit && e.event === 'doors');
      if (none >= 0)
        tell(
          at(unit),
          ['never', none],
          `${unit}: its doors came open again, yet they are noted as never home`,
        );
    }
    if (has(unit, 'slower than the other side') && has(unit, 'faster than the other side'))
      tell(at(unit), at(unit), `${unit} is noted as slower and as faster than the other side`);
  }
  sides(swing, tell, has, at);
}

/** Left and right: their remarks against each other and against the times. */
function sides(
  { times }: ObservedSwing,
  tell: Tell,
  has: (unit: string, remark: Remark) => boolean,
  at: (unit: string) => Path,
): void {
  for (const [unit, other] of [
    ['left', 'right'],
    ['right', 'left'],
  ]) {
    for (const [remark, wrong] of [
      ['faster than the other side', (a: ObservedTime, b: ObservedTime) => after(a, b)],
      ['slower than the other side', (a: ObservedTime, b: ObservedTime) => after(b, a)],
    ] as const) {
      if (!has(unit, remark)) continue;
      const word = remark.split(' ')[0];
      if (unit === 'left' && has(other, remark))
        tell(at(unit), at(other), `both sides are noted as the ${word} one`);
      for (const event of ['locked', 'total'] as const) {
        const [a, b] = [times[unit]?.[event], times[other]?.[event]];
        if (a === undefined || b === undefined || !wrong(a, b)) continue;
        const message = `${unit} is noted as the ${word} side, but was ${event} at ${text(a)}, ${other} at ${text(b)}`;
        tell(at(unit), ['times', unit, event], message);
        break;
      }
    }
  }
}

function gauges({ gauges: all }: ObservedSwing, tell: Tell): void {
  const most = (g: GaugeReadings): number => Math.max(g.moving ?? 0, g['dead-head'] ?? 0);
  const highest = Math.max(...Object.values(all).map(most));
  for (const [node, readings] of Object.entries(all)) {
    const slack = 2 * (readings.error ?? 0);
    const above = (
      low: 'static' | 'moving' | 'dead-head',
      high: 'dead-head' | 'peak',
      message: string,
    ): void => {
      const [a, b] = [readings[low], readings[high]];
      if (a !== undefined && b !== undefined && a - b > slack)
        tell(['gauges', node, high], ['gauges', node, low], `${node}: ${message}`);
    };
    above('static', 'peak', 'the peak is below the static pressure');
    above('moving', 'peak', 'the peak is below the pressure while moving');
    above('dead-head', 'peak', 'the peak is below the dead-head pressure');
    // On a line that only drains the pressure falls when nothing moves any more.
    if (most(readings) === highest)
      above('moving', 'dead-head', 'the dead-head pressure is below the pressure while moving');
  }
}

/** At dead-head only leaks take oil, of which there are no fewer while it moves. */
function supply({ supply: all = {} }: ObservedSwing, tell: Tell): void {
  for (const [device, readings] of Object.entries(all)) {
    const [moving, stalled] = [readings['moving-flow'], readings['dead-head-flow']];
    if (moving === undefined || stalled === undefined || stalled <= FLOW_SLACK * moving) continue;
    const message = `${device}: more flow at dead-head than while moving`;
    tell(['supply', device, 'dead-head-flow'], ['supply', device, 'moving-flow'], message);
  }
}

/** A flow meter is read to some per cent; common practice, no source. */
const FLOW_SLACK = 1.1;
