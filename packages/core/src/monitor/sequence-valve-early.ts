import type { Evidence, RuleDefinition, UnitEntry } from '../define/index.js';
import { order } from './kind/index.js';
import {
  arrival,
  ends,
  lockTime,
  moves,
  restingSince,
  units,
  type Move,
} from './reading/motion.js';
import { raise, seconds } from './reading/flag.js';
import { above, peak, trace, valueAt, type Span } from './reading/span.js';

/**
 * Nearer than this part of its range to its end, a part without a lock counts as home: a plunger
 * has to be touched before the stop to be fully pushed at it. Own choice.
 */
const HOME = 0.01;

/** A sequence valve whose plunger is pushed before the part that pushes it is home. */
export const sequenceValveEarly: RuleDefinition = {
  name: 'sequence-valve-early',
  title: 'Sequence valve trips at full travel',
  summary:
    'A plunger-operated sequence valve may open only when the part that pushes its plunger has ' +
    'reached full travel: a leg its lock, a door the last hundredth before its end. Margin: from ' +
    'full travel to the trip, s.',
  source: 'Rigging of plunger-operated sequence valves; common practice, no source.',
  kind: 'order',
  limits: [],
  judge: (e) =>
    Object.entries(e.scenario.components)
      .filter(([name]) => e.role(name) === 'sequence-valve')
      .flatMap(([valve, entry]) => {
        const part = Object.values(entry.links)[0]?.to;
        if (part === undefined) return [];
        const owner = units(e).find(
          ({ unit }) => unit.leg === part || unit.doors.includes(part),
        )?.unit;
        return moves(e).flatMap((move) => {
          // A leg that the gas cannot draw off its hook shakes on its valve: no rigging fault.
          if (owner?.leg === part && move.by === 'gas') return [];
          const trip = e.log.find(
            (x) =>
              x.device === valve &&
              x.kind === 'mode' &&
              x.from === 'closed' &&
              x.t >= move.start &&
              x.t <= move.end,
          )?.t;
          if (trip === undefined) return [];
          const home = homeTime(e, part, owner, move, trip);
          if (home === 'unknown') return [];
          const found = order(home, trip, move.end);
          if (found === undefined) return [];
          return [
            raise(sequenceValveEarly, found, {
              devices: [valve, part],
              severity: 'caution',
              bad:
                home === undefined
                  ? `${valve} tripped, and ${part} never reached full travel in this move. What the valve feeds can start too soon.`
                  : `${valve} tripped ${seconds(-found.margin)} before ${part} reached full travel. What the valve feeds can start too soon.`,
              good: `${valve} tripped ${seconds(found.margin)} after ${part} reached full travel.`,
              suggestion: `Look at the plunger setting of ${valve} and at play in what pushes it.`,
            }),
          ];
        });
      }),
};

/** When the part that pushes the plunger was home in a move; undefined when it never was. */
function homeTime(
  e: Evidence,
  part: string,
  owner: UnitEntry | undefined,
  move: Move,
  trip: number,
): number | undefined | 'unknown' {
  const span = { from: move.start, to: move.end };
  if (owner?.leg === part) {
    return lockTime(e, owner, move.direction, span);
  }
  // A door goes both ways within a move: it is bound for the end it moved towards at the trip.
  const way = e.log.filter((x) => x.device === part && x.kind === 'motion' && x.t <= trip).pop();
  const [low, high] = ends(e, part);
  let end: string | undefined;
  if (way?.to === 'rising') end = high;
  else if (way?.to === 'falling') end = low;
  else if (way?.to === `at ${low}`) end = low;
  else if (way?.to === `at ${high}`) end = high;
  else {
    const angle = trace(e, `${part}.angle`);
    if (angle === undefined) return 'unknown';
    end = valueAt(angle, trip) > valueAt(angle, move.start) ? high : low;
  }
  const stopped =
    restingSince(e, part, end, trip) ?? arrival(e, part, end, { from: trip, to: span.to });
  return stopped === undefined ? undefined : nearlyHome(e, part, { from: span.from, to: stopped });
}

/** When a part came near its end for the last time before it stopped there. */
function nearlyHome(e: Evidence, part: string, span: Span): number {
  const angle = trace(e, `${part}.angle`);
  if (angle === undefined) return span.to;
  const low = -peak({ t: angle.t, v: angle.v.map((x) => -x) }).v;
  const near = HOME * (peak(angle).v - low);
  const end = valueAt(angle, span.to);
  const off = { t: angle.t, v: angle.v.map((x) => Math.abs(x - end)) };
  const away = above(off, near).filter((s) => s.from < span.to);
  return Math.max(span.from, Math.min(span.to, away.at(-1)?.to ?? span.from));
}
