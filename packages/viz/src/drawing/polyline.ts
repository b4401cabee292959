/** A long row of samples as few points as the pixels can show. */
import { bisectLeft, bisectRight } from 'd3-array';

export interface Samples {
  /** s, never falling. */
  readonly t: Float32Array | Float64Array;
  /** NaN for a gap. */
  readonly v: Float32Array | Float64Array;
  /** Longest step that is drawn across, s; any when absent. */
  readonly gap?: number;
}

export interface Frame {
  readonly span: readonly [number, number];
  /** px */
  readonly width: number;
  /** y = top at `high`, y = top + height at `low`. */
  readonly top: number;
  readonly height: number;
  readonly low: number;
  readonly high: number;
}

/**
 * x, y, x, y ... in px; a pair of NaN parts two strokes. Within a column of pixels first, lowest,
 * highest and last are kept, so that no peak is lost, however short.
 */
export function polyline({ t, v, gap = Infinity }: Samples, frame: Frame): Float32Array {
  const { span, width, top, height, low, high } = frame;
  const [a, b] = span;
  const from = Math.max(0, bisectLeft(t, a) - 1);
  const to = Math.min(t.length, bisectRight(t, b) + 1);
  if (to <= from || !(b > a)) return new Float32Array(0);
  const perSecond = width / (b - a);
  const slope = high > low ? -height / (high - low) : 0;
  const base = high > low ? top - high * slope : top + height / 2;
  // Each sample is at most one point, and one break before it.
  const out = new Float32Array(4 * (to - from) + 4);
  let n = 0;
  const put = (i: number): void => {
    out[n++] = ((t[i] ?? NaN) - a) * perSecond;
    out[n++] = (v[i] ?? NaN) * slope + base;
  };
  const cut = (): void => {
    if (n === 0 || Number.isNaN(out[n - 1])) return;
    out[n++] = NaN;
    out[n++] = NaN;
  };
  for (let i = from; i < to;) {
    if (Number.isNaN(v[i])) {
      cut();
      i += 1;
      continue;
    }
    if (i > from && (t[i] ?? 0) - (t[i - 1] ?? 0) > gap) cut();
    const column = Math.floor(((t[i] ?? 0) - a) * perSecond);
    // To the last sample of this column before a gap.
    let [lowest, highest, last] = [i, i, i];
    for (let j = i + 1; j < to; j++) {
      const x = v[j] ?? NaN;
      const now = t[j] ?? 0;
      if (Number.isNaN(x) || Math.floor((now - a) * perSecond) !== column) break;
      if (now - (t[j - 1] ?? 0) > gap) break;
      if (x < (v[lowest] ?? 0)) lowest = j;
      if (x > (v[highest] ?? 0)) highest = j;
      last = j;
    }
    put(i);
    const [one, other] = lowest < highest ? [lowest, highest] : [highest, lowest];
    if (one !== i && one !== last) put(one);
    if (other !== i && other !== last && other !== one) put(other);
    if (last !== i) put(last);
    i = last + 1;
  }
  return out.slice(0, n);
}
