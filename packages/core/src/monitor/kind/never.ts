import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import { conditionSpans, endOf, length, overlap, type Span } from '../reading/span.js';

/**
 * One state of affairs never while another. The margin, s, is minus the time both were true; if
 * they never were, the shortest time between the two, or the whole span when one never came.
 * `grace` is overlap that does not count, s.
 */
export function never(
  what: readonly Span[],
  during: readonly Span[],
  end: number,
  grace = 0,
): Finding {
  const both = overlap(what, during);
  const shared = length(both);
  if (shared > grace) {
    return {
      margin: grace - shared,
      quantity: 'time',
      from: both[0].from,
      to: both[both.length - 1].to,
    };
  }
  let gap = end;
  let from = 0;
  let to = end;
  for (const a of what) {
    for (const b of during) {
      const d = Math.max(a.from - b.to, b.from - a.to, 0);
      if (d < gap) {
        gap = d;
        from = Math.min(a.to, b.to);
        to = Math.max(a.from, b.from, from);
      }
    }
  }
  return { margin: gap, quantity: 'time', from, to };
}

/** A user's never rule; without `during` the whole run counts. */
export function judgeNever(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.condition === undefined) return [];
  const end = endOf(e);
  const what = conditionSpans(e, rule.condition);
  const during =
    rule.during === undefined ? [{ from: 0, to: end }] : conditionSpans(e, rule.during);
  if (what === undefined || during === undefined) return [];
  const found = never(what, during, end);
  const about = [rule.condition, ...(rule.during === undefined ? [] : [rule.during])];
  return [
    raise({ name: rule.name, title: rule.text }, found, {
      devices: [...new Set(about.map((c) => ('device' in c ? c.device : c.channel)))],
      severity: rule.severity,
      bad: `What must never happen did, from ${seconds(found.from)}, for ${seconds(-found.margin)} in all.`,
      good: 'It never happened.',
      suggestion: 'Look at the order chart around that time for what led to it.',
    }),
  ];
}
