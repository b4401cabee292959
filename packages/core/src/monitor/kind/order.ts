import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import { stretches } from '../reading/motion.js';
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

/**
 * A user's order rule, judged once a gear selection (what a valve does again and again within
 * one counts once). The first event belongs to the same selection; where it has none there, it
 * may have come before, since the second event was last seen.
 */
export function judgeOrder(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.first === undefined || rule.second === undefined) return [];
  const { first, second } = rule;
  const firsts = occurrences(e, first).map((x) => x.t);
  const seconds_ = occurrences(e, second).map((x) => x.t);
  return stretches(e).flatMap((span) => {
    const inside = (t: number): boolean => t >= span.from && t < span.to;
    const t = seconds_.find(inside);
    if (t === undefined) return [];
    const own = firsts.filter(inside);
    const seen = seconds_.filter((x) => x < span.from).at(-1) ?? -Infinity;
    const earlier = firsts.filter((x) => x < span.from && x > seen).at(-1);
    const match = own.filter((x) => x <= t).at(-1) ?? own[0] ?? earlier;
    const found = order(match, t, Math.min(span.to, endOf(e)));
    if (found === undefined) return [];
    const what = `${first.device} to ${first.to}`;
    const then = `${second.device} to ${second.to}`;
    return [
      raise({ name: rule.name, title: rule.text }, found, {
        devices: [first.device, second.device],
        severity: rule.severity,
        bad:
          match === undefined
            ? `${then} came at ${seconds(t)}, and ${what} never came in that move.`
            : `${then} came at ${seconds(t)}, ${seconds(-found.margin)} before ${what}; it should come after.`,
        good: `${what} came ${seconds(found.margin)} before ${then}, as it should.`,
        suggestion: `Look at what triggers ${second.device}.`,
      }),
    ];
  });
}
