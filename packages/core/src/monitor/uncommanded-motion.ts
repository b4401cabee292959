import type { Evidence, Flag, RuleDefinition, Series } from '../define/index.js';
import { limit } from './kind/index.js';
import { raise, seconds, tightest } from './reading/flag.js';
import { arrival, ends, lockTime, moves, restingSince, units } from './reading/motion.js';
import { endOf, trace, valueAt, type Span } from './reading/span.js';

/** How far a part may give at its end, rad, where the scenario has no limit: 2 degrees, three times the play of a usual lock; own choice. */
const GIVES = (2 * Math.PI) / 180;

/** A leg or door that leaves its end though nothing was selected. */
export const uncommandedMotion: RuleDefinition = {
  name: 'uncommanded-motion',
  title: 'Nothing moves by itself',
  summary:
    'A leg that is locked where it was sent, and a door that is closed then, stay there until the ' +
    'next selection (what the operator does to a supply is none). Margin: what a part may give ' +
    '(limit creep, 2 degrees without one) less the most it gave, rad.',
  source: 'Hold and sag check of a retraction test; common practice, no source.',
  kind: 'limit',
  limits: ['creep'],
  judge: (e) => {
    const high = e.scenario.limits.creep ?? GIVES;
    return tightest(watches(e).flatMap((watch) => judgeWatch(e, watch, high)));
  },
};

/** A part that should stay where it is, and when. */
interface Watch extends Span {
  readonly part: string;
}

function watches(e: Evidence): readonly Watch[] {
  const all = moves(e);
  const commands = e.log
    .filter((x) => x.kind === 'operator' && commanding(e, x.device))
    .map((x) => x.t)
    .concat(all.map((m) => m.start));
  const until = (t: number): number => Math.min(endOf(e), ...commands.filter((c) => c > t));
  return units(e).flatMap(({ unit }) => {
    const resting = (part: string, word: string, t: number): boolean =>
      restingSince(e, part, word, t) !== undefined;
    const to = Math.min(endOf(e), ...commands);
    const first = [
      ...(ends(e, unit.leg).some((end) => resting(unit.leg, end, 0)) ? [unit.leg] : []),
      ...unit.doors.filter((door) => resting(door, 'closed', 0)),
    ].map((part) => ({ part, from: 0, to }));
    const later = all.flatMap(({ direction, start, end }) => {
      const home = lockTime(e, unit, direction, { from: start, to: end });
      const from = home ?? (resting(unit.leg, direction, start) ? start : undefined);
      if (from === undefined) return [];
      const doors = unit.doors.flatMap((part) => {
        const shut = resting(part, 'closed', from)
          ? from
          : arrival(e, part, 'closed', { from, to: until(from) });
        return shut === undefined ? [] : [{ part, from: shut, to: until(shut) }];
      });
      return [{ part: unit.leg, from, to: until(from) }, ...doors];
    });
    return [...first, ...later].filter((w) => w.to > w.from);
  });
}

/** True for what makes parts move when the operator works it: no supply, and no lever put to neutral or off. */
function commanding(e: Evidence, device: string): boolean {
  const role = e.role(device);
  if (role === 'supply' || role === 'hand-supply' || role === 'selector') return false;
  return !e.log.some(
    (x) => x.device === device && x.kind === 'operator' && (x.to === 'up' || x.to === 'down'),
  );
}

/** The samples in a span, and one more on either side. */
function around({ t, v }: Series, { from, to }: Span): Series {
  let i = 0;
  while (i < t.length - 1 && t[i + 1] <= from) i++;
  let j = i + 1;
  while (j < t.length && t[j - 1] < to) j++;
  return { t: t.subarray(i, j), v: v.subarray(i, j) };
}

function judgeWatch(e: Evidence, watch: Watch, high: number): readonly Flag[] {
  const { part } = watch;
  const whole = trace(e, `${part}.angle`);
  if (whole === undefined) return [];
  const angle = around(whole, watch);
  const home = valueAt(angle, watch.from);
  const gave = { t: angle.t, v: angle.v.map((x) => Math.abs(x - home)) };
  const found = limit(gave, { high }, 'angle', [watch]);
  if (found === undefined) return [];
  const span = { from: Math.max(found.from, watch.from), to: Math.min(found.to, watch.to) };
  return [
    raise(
      uncommandedMotion,
      { ...found, ...span },
      {
        devices: [part],
        severity: 'fail',
        bad: `${part} left its end at ${seconds(span.from)}, and nothing had been selected. What moves by itself can fall on somebody, and in flight it hangs in the wind.`,
        good: `${part} stayed at its end, as it should; it gave most at ${seconds(span.from)}.`,
        suggestion:
          'Look at what holds it: lock and rigging, then trapped pressure and where it goes (piston seal, check or lock valve, thermal relief, selector in neutral). Keep clear of the gear meanwhile.',
      },
    ),
  ];
}
