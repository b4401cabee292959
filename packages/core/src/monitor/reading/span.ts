import type { Condition, Evidence, EventPattern, LogEntry, Series } from '../../define/index.js';

/** A stretch of time, s, `from <= to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** When the evidence ends, s. */
export function endOf(e: Evidence): number {
  return Math.min(e.duration, e.outcome.time);
}

/** True for an entry that only says how things stood at the start: nothing happened. */
export function isStart(entry: LogEntry): boolean {
  return entry.from === '';
}

/** Log entries that match a pattern, in order; how things stood at the start is no event. */
export function occurrences(e: Evidence, pattern: EventPattern): readonly LogEntry[] {
  return e.log.filter((x) => x.device === pattern.device && x.to === pattern.to && !isStart(x));
}

/** Spans that lie in both lists (each sorted and without overlap). */
export function overlap(a: readonly Span[], b: readonly Span[]): readonly Span[] {
  const out: Span[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const from = Math.max(a[i].from, b[j].from);
    const to = Math.min(a[i].to, b[j].to);
    if (to > from) out.push({ from, to });
    if (a[i].to < b[j].to) i++;
    else j++;
  }
  return out;
}

/** Total length of spans, s. */
export function length(spans: readonly Span[]): number {
  return spans.reduce((sum, s) => sum + s.to - s.from, 0);
}

/** What is left of `whole` outside the spans. */
export function outside(spans: readonly Span[], whole: Span): readonly Span[] {
  const out: Span[] = [];
  let at = whole.from;
  for (const s of spans) {
    if (s.from > at) out.push({ from: at, to: Math.min(s.from, whole.to) });
    at = Math.max(at, s.to);
  }
  if (at < whole.to) out.push({ from: at, to: whole.to });
  return out;
}

/** Joins spans of one list that touch or overlap; sorts them. */
export function union(spans: readonly Span[]): readonly Span[] {
  const out: Span[] = [];
  for (const s of [...spans].sort((p, q) => p.from - q.from)) {
    const last = out[out.length - 1];
    if (last !== undefined && s.from <= last.to) {
      out[out.length - 1] = { from: last.from, to: Math.max(last.to, s.to) };
    } else out.push(s);
  }
  return out;
}

/** Spans in which a series lies above `level`, crossings by straight lines between samples. */
export function above(series: Series, level: number): readonly Span[] {
  const { t, v } = series;
  const out: Span[] = [];
  let from = t.length > 0 && v[0] > level ? t[0] : NaN;
  for (let i = 1; i < t.length; i++) {
    const was = v[i - 1] > level;
    const is = v[i] > level;
    if (was === is) continue;
    const at = t[i - 1] + ((level - v[i - 1]) / (v[i] - v[i - 1])) * (t[i] - t[i - 1]);
    if (is) from = at;
    else out.push({ from, to: at });
  }
  if (t.length > 0 && v[t.length - 1] > level) out.push({ from, to: t[t.length - 1] });
  return out;
}

/** Spans in which a series lies below `level`. */
export function below(series: Series, level: number): readonly Span[] {
  return above({ t: series.t, v: series.v.map((x) => -x) }, -level);
}

/** Spans in which a device is in a mode (or a unit in a phase); undefined when the log never mentions it. */
export function inMode(e: Evidence, device: string, mode: string): readonly Span[] | undefined {
  // An operator's action names the lever, not the state of the device.
  const log = e.log.filter(
    (x) => x.device === device && x.kind !== 'note' && x.kind !== 'operator',
  );
  if (log.length === 0) return undefined;
  const out: Span[] = [];
  let from = log[0].from === mode ? 0 : NaN;
  for (const x of log) {
    if (!Number.isNaN(from) && x.to !== mode) {
      if (x.t > from) out.push({ from, to: x.t });
      from = NaN;
    } else if (Number.isNaN(from) && x.to === mode) from = x.t;
  }
  const end = endOf(e);
  if (!Number.isNaN(from) && end > from) out.push({ from, to: end });
  return out;
}

/** Spans in which a user's condition is true; undefined when the evidence cannot tell. */
export function conditionSpans(e: Evidence, c: Condition): readonly Span[] | undefined {
  if ('device' in c) {
    const spans = inMode(e, c.device, c.in);
    if (spans === undefined) return undefined;
    return c.not === true ? outside(spans, { from: 0, to: endOf(e) }) : spans;
  }
  const series = trace(e, c.channel);
  if (series === undefined) return undefined;
  const high = c.above === undefined ? undefined : above(series, c.above);
  const low = c.below === undefined ? undefined : below(series, c.below);
  if (high !== undefined && low !== undefined) return overlap(high, low);
  return high ?? low;
}

const known = new WeakMap<Evidence, Map<string, unknown>>();

/** What many rules ask of the same evidence, worked out once. The key is the caller's own. */
export function once<T>(e: Evidence, key: string, make: () => T): T {
  const all = known.get(e) ?? new Map<string, unknown>();
  known.set(e, all);
  if (!all.has(key)) all.set(key, make());
  return all.get(key) as T;
}

/** A channel of the evidence; a run builds it on demand. */
export function trace(e: Evidence, channel: string): Series | undefined {
  const series = once(e, `series ${channel}`, () => e.series(channel));
  return series === undefined || series.t.length === 0 ? undefined : series;
}

/** Value of a series at a time, by straight lines between samples; the end values outside. */
export function valueAt(series: Series, t: number): number {
  const n = series.t.length;
  if (t <= series.t[0]) return series.v[0];
  if (t >= series.t[n - 1]) return series.v[n - 1];
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (series.t[mid] <= t) low = mid;
    else high = mid;
  }
  const f = (t - series.t[low]) / (series.t[high] - series.t[low]);
  return series.v[low] + f * (series.v[high] - series.v[low]);
}

/** Largest value of a series between two times, and when. */
export function peak(series: Series, span?: Span): { readonly t: number; readonly v: number } {
  let best = { t: span?.from ?? series.t[0], v: -Infinity };
  for (let i = 0; i < series.t.length; i++) {
    if (span !== undefined && (series.t[i] < span.from || series.t[i] > span.to)) continue;
    if (series.v[i] > best.v) best = { t: series.t[i], v: series.v[i] };
  }
  if (best.v === -Infinity && span !== undefined)
    best = { t: span.from, v: valueAt(series, span.from) };
  return best;
}
