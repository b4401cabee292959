import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import { stretches } from '../reading/motion.js';
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

/** A user's together rule, judged once a gear selection, by the first of each event in it. */
export function judgeTogether(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.first === undefined || rule.second === undefined || rule.limit === undefined) return [];
  const { first, second, limit } = rule;
  return stretches(e).flatMap((span) => {
    const inside = (x: { readonly t: number }): boolean => x.t >= span.from && x.t < span.to;
    const a = occurrences(e, first).find(inside)?.t;
    const b = occurrences(e, second).find(inside)?.t;
    const found = together(a, b, limit, Math.min(span.to, endOf(e)));
    if (found === undefined) return [];
    const what = `${first.device} to ${first.to} and ${second.device} to ${second.to}`;
    const apart = seconds(found.to - found.from);
    return [
      raise({ name: rule.name, title: rule.text }, found, {
        devices: [first.device, second.device],
        severity: rule.severity,
        bad:
          a === undefined || b === undefined
            ? `Of ${what} only one came; the limit between them is ${seconds(limit)}.`
            : `${what} came ${apart} apart; the limit is ${seconds(limit)}.`,
        good: `${what} came ${apart} apart; the limit is ${seconds(limit)}.`,
        suggestion: 'Compare the two sides part by part.',
      }),
    ];
  });
}
