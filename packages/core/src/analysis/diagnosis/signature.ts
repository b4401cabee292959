/** What a run would have put on a sheet. */
import type { Catalogues, Evidence, Gear, Scenario, Series } from '../../define/index.js';
import { glanceWith } from '../../machine/index.js';
import { trace, valueAt } from '../../monitor/index.js';
import {
  expectedSwings,
  gaugeNode,
  hasLight,
  lineNodes,
  WHOLE_GEAR,
  type ExpectedSwing,
  type TimedEvent,
} from '../../observation/index.js';
import { awaitedAt, endsWith } from './ending.js';
import { GLIMPSE, passageOf } from './passage.js';
import { pausesOf } from './pause.js';
import type { Signature, SignatureTask, SwingReading } from './shapes.js';
import { drawnAircraft, unknownsOf } from './unknown.js';

/** The first movement of each direction counts. */
export function signatureOf(e: Evidence, { nodes = [], leftAt }: SwingReading = {}): Signature {
  const out: Record<string, number> = {};
  const swings = expectedSwings(e, {
    nodes: [...lineNodes(e), ...nodes],
    ...(leftAt !== undefined && { leftAt }),
  });
  for (const swing of swings) {
    const { direction: d } = swing;
    if (`${d}` in out || swing.start >= e.duration) continue;
    const next =
      swings[swings.indexOf(swing) + 1]?.start ?? Math.min(leftAt ?? Infinity, e.duration);
    out[d] = 1;
    // What comes later than this is not seen to come.
    out[`${d}/window`] = next - swing.start;
    for (const [unit, times] of Object.entries(swing.times))
      for (const [event, t] of Object.entries(times)) out[`${d}/${unit}/${event}`] = t;
    for (const [unit, t] of Object.entries(swing.strayed)) out[`${d}/${unit}/strayed`] = t;
    for (const [event, t] of Object.entries(ofWhole(e.scenario, swing)))
      out[`${d}/${WHOLE_GEAR}/${event}`] = t;
    for (const [node, readings] of Object.entries(swing.gauges))
      for (const [moment, p] of Object.entries(readings)) out[`${d}/gauge/${node}/${moment}`] = p;
    for (const [device, readings] of Object.entries(swing.supply))
      for (const [reading, x] of Object.entries(readings))
        out[`${d}/supply/${device}/${reading}`] = x;
    const awaited = awaitedAt(e, next);
    for (const [unit, { leg, doors, uplock, downlock }] of Object.entries(e.scenario.units)) {
      // What the operator waits for is watched until the card runs out.
      if (awaited !== undefined && [unit, leg, ...doors, uplock, downlock].includes(awaited))
        out[`${d}/${unit}/window`] = e.card.duration - swing.start;
      const angle = trace(e, `${leg}.angle`);
      if (angle === undefined) continue;
      out[`${d}/${unit}/moved`] = Number(travelOf(angle, swing.start, next) > GLIMPSE);
      // The same once more as a recording shows it.
      const { leaves, arrives } = passageOf(angle, swing.start, homeOf(e.scenario, unit, d));
      if (leaves !== undefined) out[`${d}/${unit}/leaves`] = leaves.at - swing.start;
      if (leaves !== undefined && arrives !== undefined && arrives.at < next) {
        out[`${d}/${unit}/arrives`] = arrives.at - swing.start;
        out[`${d}/${unit}/travel`] = arrives.at - leaves.at;
      }
      const { moving = NaN, locked = next - swing.start } = swing.times[unit] ?? {};
      out[`${d}/${unit}/pauses`] = pausesOf(angle, swing.start + moving, swing.start + locked);
      if (leftAt !== undefined)
        out[`${d}/${unit}/drift`] = Math.abs(valueAt(angle, e.duration) - valueAt(angle, leftAt));
    }
  }
  return out;
}

/** The first unit to let go, to move and to come open again, the last to be home; what not all come to the whole does not. */
function ofWhole(
  scenario: Scenario,
  { direction, times, strayed }: ExpectedSwing,
): Record<string, number> {
  const { units } = scenario;
  const of = (event: TimedEvent): number[] =>
    Object.keys(units).flatMap((unit) => times[unit]?.[event] ?? []);
  const all = Object.keys(units).length;
  const doored = Object.values(units).filter((unit) => unit.doors.length > 0).length;
  const lit = Object.keys(units).filter((unit) => hasLight(scenario, unit, direction)).length;
  const least = (list: readonly number[]) => (list.length > 0 ? Math.min(...list) : undefined);
  const last = (event: TimedEvent, count: number) =>
    count > 0 && of(event).length === count ? Math.max(...of(event)) : undefined;
  const found = {
    unlocked: least(of('unlocked')),
    opened: last('opened', of('opened').length),
    moving: least(of('moving')),
    locked: last('locked', all),
    doors: last('doors', doored),
    light: last('light', lit),
    strayed: least(Object.values(strayed)),
  };
  return Object.fromEntries(
    Object.entries(found).filter((entry): entry is [string, number] => entry[1] !== undefined),
  );
}

/** Where a unit's leg is at the end of a movement, rad. */
export function homeOf({ units, mechanisms }: Scenario, unit: string, direction: string): number {
  const { travel } = mechanisms[units[unit].leg].parameters;
  return direction === 'up' && typeof travel === 'number' ? travel : 0;
}

/** How far an angle gets from where it was, between two times. */
function travelOf(angle: Series, from: number, to: number): number {
  const start = valueAt(angle, from);
  let most = 0;
  angle.t.forEach((t, i) => {
    if (t >= from && t <= to) most = Math.max(most, Math.abs(angle.v[i] - start));
  });
  return most;
}

/** Plays one swing. @throws RangeError when a fault of it cannot befall what it names. */
export function playSignature(catalogues: Catalogues, task: SignatureTask): Signature {
  const { scenario, card, reading, ending } = task.setup;
  const gear = aircraftOf(catalogues, scenario, task);
  const { faults } = task;
  const until = ending === undefined ? {} : { until: endsWith(ending) };
  const run = glanceWith(
    catalogues,
    gear,
    { card, faults, tolerance: 'draft', ...until },
    readFrom(reading),
  );
  return signatureOf(run, reading);
}

/** The nominal aircraft, one unknown of it moved, or one from the scatter. */
function aircraftOf(
  catalogues: Catalogues,
  scenario: Scenario,
  { unknown, drawn }: SignatureTask,
): Scenario {
  if (drawn !== undefined) return drawnAircraft(catalogues, scenario, drawn);
  return unknown === undefined
    ? scenario
    : unknownsOf(catalogues, scenario)[unknown].moved(scenario, 1);
}

/** What a signature is read from, beside the pressures of gauges. */
const READ = /\.(?:angle|delivery|slip|strokes)$/;

const readFrom =
  ({ nodes = [] }: SwingReading) =>
  (gear: Gear): ((channel: string) => boolean) => {
    const gauged = [...lineNodes(gear), ...nodes, gaugeNode(gear, 'up'), gaugeNode(gear, 'down')];
    const pressures = new Set(gauged.map((node) => `${node}.pressure`));
    return (channel) => READ.test(channel) || pressures.has(channel);
  };
