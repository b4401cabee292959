import type { Evidence, Flag, Quantity, RuleEntry, Series } from '../../define/index.js';
import { raise, seconds, type Finding } from '../reading/flag.js';
import {
  above,
  below,
  conditionSpans,
  endOf,
  occurrences,
  trace,
  valueAt,
  type Span,
} from '../reading/span.js';

/** Bounds in the SI unit of what is bounded; either may be absent. */
export interface Bounds {
  readonly low?: number;
  readonly high?: number;
}

/**
 * A trace inside bounds. The margin is the smallest distance to a bound, in the trace's unit:
 * negative outside. The span is the time out of bounds, or the instant nearest to a bound.
 */
export function limit(
  series: Series,
  bounds: Bounds,
  quantity: Quantity,
  during?: readonly Span[],
): Finding | undefined {
  const { low = -Infinity, high = Infinity } = bounds;
  const { t, v } = series;
  let margin = Infinity;
  let at = NaN;
  for (let i = 0; i < v.length; i++) {
    const m = v[i] - low < high - v[i] ? v[i] - low : high - v[i];
    if (
      m < margin &&
      (during === undefined || during.some((s) => t[i] >= s.from && t[i] <= s.to))
    ) {
      margin = m;
      at = t[i];
    }
  }
  // The ends of a span rarely fall on a sample.
  for (const end of (during ?? []).flatMap((s) => [s.from, s.to])) {
    const x = valueAt(series, end);
    const m = Math.min(x - low, high - x);
    if (m < margin) {
      margin = m;
      at = end;
    }
  }
  if (!Number.isFinite(margin)) return undefined;
  if (margin >= 0) return { margin, quantity, from: at, to: at };
  const out = [...above(series, high), ...below(series, low)].find(
    (s) => s.from <= at && at <= s.to,
  );
  return { margin, quantity, from: out?.from ?? at, to: out?.to ?? at };
}

/** A value that was read once, against bounds. */
export function limitValue(value: number, bounds: Bounds, quantity: Quantity, t: number): Finding {
  const { low = -Infinity, high = Infinity } = bounds;
  return { margin: Math.min(value - low, high - value), quantity, from: t, to: t };
}

/** A user's limit rule: a channel inside bounds, all the time, from an event on, or during a state of affairs. */
export function judgeLimit(e: Evidence, rule: RuleEntry): readonly Flag[] {
  if (rule.channel === undefined) return [];
  const info = e.channels.find((c) => c.name === rule.channel);
  const series = trace(e, rule.channel);
  if (info === undefined || series === undefined) return [];
  let during = rule.during === undefined ? undefined : conditionSpans(e, rule.during);
  if (rule.during !== undefined && during === undefined) return [];
  if (rule.from !== undefined) {
    const start = occurrences(e, rule.from)[0]?.t;
    if (start === undefined) return [];
    const rest = { from: start, to: endOf(e) };
    during = (during ?? [rest])
      .map((s) => ({ from: Math.max(s.from, start), to: s.to }))
      .filter((s) => s.to >= s.from);
  }
  const found = limit(series, rule, info.quantity, during);
  if (found === undefined) return [];
  return [
    raise({ name: rule.name, title: rule.text }, found, {
      devices: [info.of],
      severity: rule.severity,
      bad: `${info.title} was out of bounds from ${seconds(found.from)} to ${seconds(found.to)}.`,
      good: `${info.title} stayed inside its bounds; it came nearest at ${seconds(found.from)}.`,
      suggestion: `Look at what acts on ${info.of} at that time.`,
    }),
  ];
}
