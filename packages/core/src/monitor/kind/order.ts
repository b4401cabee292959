import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import { endOf, occurrences } from '../reading/span.js';

/**
 * One event before another. The margin is the time from the first to the second, s: negative
 * when they came the wrong way round. When the first never came, the margin is minus the time
 * for which it stayed away, to `end`; when the second never came there is nothing to judge.
 */
export function order(
  first: number | undefined,
  second: number | undefined,
  end: number,
): Finding | undefined {
  if (second === undefined) return undefined;
  const other = first ?? end;
  const margin = second - other;
  // At the very end a missing first event would look like a margin of zero.
  if (first === undefined && margin >= 0) return undefined;
  return { margin, quantity: 'time', from: Math.min(second, other), to: Math.max(second, other) };
}

/** A user's order rule: every second event wants a first event of its own before it. */
export function judgeOrder(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.first === undefined || rule.second === undefined) return [];
  const { first, second } = rule;
  const waiting = occurrences(e, first).map((x) => x.t);
  const end = endOf(e);
  const seconds_ = occurrences(e, second).map((x) => x.t);
  return seconds_.flatMap((t, i) => {
    const before = waiting.filter((x) => x <= t);
    const next = i + 1 < seconds_.length ? seconds_[i + 1] : Infinity;
    let match: number | undefined;
    if (before.length > 0) {
      match = before[before.length - 1];
      waiting.splice(0, before.length);
    } else if (waiting.length > 0 && waiting[0] < next) match = waiting.shift();
    const found = order(match, t, end);
    if (found === undefined) return [];
    const what = `${first.device} to ${first.to}`;
    const then = `${second.device} to ${second.to}`;
    return [
      raise({ name: rule.name, title: rule.text }, found, {
        devices: [first.device, second.device],
        severity: rule.severity,
        bad:
          match === undefined
            ? `${then} came at ${seconds(t)}, but ${what} never came before it or after it.`
            : `${then} came at ${seconds(t)}, ${seconds(-found.margin)} before ${what}; it should come after.`,
        good: `${what} came ${seconds(found.margin)} before ${then}, as it should.`,
        suggestion: `Look at what triggers ${second.device}.`,
      }),
    ];
  });
}
