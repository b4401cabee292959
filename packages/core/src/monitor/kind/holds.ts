import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import {
  conditionSpans,
  endOf,
  length,
  occurrences,
  outside,
  overlap,
  type Span,
} from '../reading/span.js';

/**
 * Something stays true all through `whole` (or those parts of it that lie in `during`). The
 * margin, s, is minus the time it was not true; if it always was, the time it held.
 */
export function holds(
  truth: readonly Span[],
  whole: Span,
  during: readonly Span[] = [whole],
): Finding | undefined {
  const asked = overlap(during, [whole]);
  if (asked.length === 0) return undefined;
  const lapses = overlap(outside(truth, whole), asked);
  const bad = lapses.length > 0;
  const spans = bad ? lapses : asked;
  return {
    margin: bad ? -length(lapses) : length(asked),
    quantity: 'time',
    from: spans[0].from,
    to: spans[spans.length - 1].to,
  };
}

/** A user's holds rule: from every `from` event (or the start) to the next one or the end. */
export function judgeHolds(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.condition === undefined) return [];
  const { condition } = rule;
  const end = endOf(e);
  const truth = conditionSpans(e, condition);
  const during = rule.during === undefined ? undefined : conditionSpans(e, rule.during);
  if (truth === undefined || (rule.during !== undefined && during === undefined)) return [];
  const starts = rule.from === undefined ? [0] : occurrences(e, rule.from).map((x) => x.t);
  return starts.flatMap((from, i) => {
    const found = holds(truth, { from, to: i + 1 < starts.length ? starts[i + 1] : end }, during);
    if (found === undefined) return [];
    return [
      raise({ name: rule.name, title: rule.text }, found, {
        devices: ['device' in condition ? condition.device : condition.channel],
        severity: rule.severity,
        bad: `It did not hold: it lapsed at ${seconds(found.from)}, for ${seconds(-found.margin)} in all.`,
        good: `It held for ${seconds(found.margin)}.`,
        suggestion: 'Look at what changed at that time.',
      }),
    ];
  });
}
