import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import { endOf, occurrences } from '../reading/span.js';

/**
 * From one event to another in no more than `limit` s. The margin is the limit less the time
 * taken, s. When the second event never came it is judged only once the limit had run out by
 * `end`; the margin is then the limit less the time waited, an upper bound.
 */
export function within(
  from: number,
  to: number | undefined,
  limit: number,
  end: number,
): Finding | undefined {
  const margin = limit - ((to ?? end) - from);
  if (to === undefined && margin >= 0) return undefined;
  return { margin, quantity: 'time', from, to: to ?? end };
}

/** A user's within rule: every first event is followed by the second in time. */
export function judgeWithin(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.first === undefined || rule.second === undefined || rule.limit === undefined) return [];
  const { first, second, limit } = rule;
  const starts = occurrences(e, first).map((x) => x.t);
  const stops = occurrences(e, second).map((x) => x.t);
  return starts.flatMap((t, i) => {
    const next = i + 1 < starts.length ? starts[i + 1] : Infinity;
    const stop = stops.find((x) => x >= t && x < next);
    const found = within(t, stop, limit, Math.min(endOf(e), next));
    if (found === undefined) return [];
    const what = `From ${first.device} to ${first.to}, until ${second.device} to ${second.to},`;
    const took = seconds(found.to - found.from);
    return [
      raise({ name: rule.name, title: rule.text }, found, {
        devices: [first.device, second.device],
        severity: rule.severity,
        bad:
          stop === undefined
            ? `${what} more than ${took} passed without it; the limit is ${seconds(limit)}.`
            : `${what} ${took} passed; the limit is ${seconds(limit)}.`,
        good: `${what} ${took} passed; the limit is ${seconds(limit)}.`,
        suggestion: `Look for what delays ${second.device}.`,
      }),
    ];
  });
}
