import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import { endOf, occurrences } from '../reading/span.js';

/**
 * Two events within `limit` s of each other, either first. The margin is the limit less the
 * difference, s. When one never came, the other is held against `end`, and judged only when
 * the limit had run out by then.
 */
export function together(
  a: number | undefined,
  b: number | undefined,
  limit: number,
  end: number,
): Finding | undefined {
  if (a === undefined && b === undefined) return undefined;
  const p = a ?? end;
  const q = b ?? end;
  const margin = limit - Math.abs(p - q);
  if ((a === undefined || b === undefined) && margin >= 0) return undefined;
  return { margin, quantity: 'time', from: Math.min(p, q), to: Math.max(p, q) };
}

/** A user's together rule: the two events pair off in the order they occur. */
export function judgeTogether(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.first === undefined || rule.second === undefined || rule.limit === undefined) return [];
  const { first, second, limit } = rule;
  const a = occurrences(e, first).map((x) => x.t);
  const b = occurrences(e, second).map((x) => x.t);
  const pairs = Array.from({ length: Math.max(a.length, b.length) }, (_, i) => i);
  return pairs.flatMap((i) => {
    const found = together(a[i], b[i], limit, endOf(e));
    if (found === undefined) return [];
    const what = `${first.device} to ${first.to} and ${second.device} to ${second.to}`;
    const apart = seconds(found.to - found.from);
    return [
      raise({ name: rule.name, title: rule.text }, found, {
        devices: [first.device, second.device],
        severity: rule.severity,
        bad:
          a[i] === undefined || b[i] === undefined
            ? `Of ${what} only one came; the limit between them is ${seconds(limit)}.`
            : `${what} came ${apart} apart; the limit is ${seconds(limit)}.`,
        good: `${what} came ${apart} apart; the limit is ${seconds(limit)}.`,
        suggestion: 'Compare the two sides part by part.',
      }),
    ];
  });
}
