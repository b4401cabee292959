/** What the chart of traces draws: the traces chosen, by quantity, with what was recorded of them. */
import { bisectRight, extent, max, median, min } from 'd3-array';
import { lineStyle } from '../drawing/line-style.js';
import type { Samples } from '../drawing/polyline.js';
import type { Line, PanelContent } from '../drawing/trace-layout.js';
import type { ChannelInfo, Quantity } from '../worker/message.js';
import type { RecordedSeries } from '../worker/recording-message.js';
import { displayOf, labelOf, panelOf, panelTitle } from './channel-words.js';
import type { State } from './state.js';
import { chosenOf } from './traces.js';

/** A recorder that has been silent so many times its usual step has a gap. */
const SILENT = 10;

export interface TracePanel extends PanelContent {
  readonly quantity: Quantity;
  readonly infos: readonly ChannelInfo[];
  /** Decimals of a figure. */
  readonly digits: number;
}

/** Pressures first, then angles: the order in which most are looked at; the rest as they come. */
const ORDER: readonly Quantity[] = ['gauge-pressure', 'angle', 'flow', 'length'];

/** In SI; a pressure panel holds absolute ones and gauge ones, so all of it is brought to gauge. */
export function tracePanels(state: State): TracePanel[] {
  const { picture, series, system, traces } = state;
  if (picture === undefined) return [];
  const byKind = new Map<Quantity, { infos: ChannelInfo[]; lines: Line[] }>();
  for (const { name, style } of chosenOf(state)) {
    const info = picture.channels.find((c) => c.name === name);
    if (info === undefined) continue;
    const shift = info.quantity === 'pressure' ? -picture.ambient : 0;
    const trace = series.get(name);
    const recorded = traces.recordings.flatMap(({ recording, offset }) =>
      (recording?.series ?? [])
        .filter((s) => s.channel === name)
        .map((s) => laid(s, offset, shift)),
    );
    const line: Line = {
      name,
      label: labelOf(info),
      style: lineStyle(style),
      samples: trace === undefined ? undefined : { t: trace.t, v: shifted(trace.v, shift) },
      recorded,
    };
    const kind = panelOf(info.quantity);
    const panel = byKind.get(kind) ?? { infos: [], lines: [] };
    panel.infos.push(info);
    panel.lines.push(line);
    byKind.set(kind, panel);
  }
  const rank = (q: Quantity): number => (ORDER.includes(q) ? ORDER.indexOf(q) : ORDER.length);
  return [...byKind]
    .sort(([a], [b]) => rank(a) - rank(b))
    .map(([quantity, { infos, lines }]) => {
      const { factor, shift, unit } = displayOf(quantity, picture, system);
      const title = panelTitle(quantity, unit);
      const digits = digitsOf(lines, factor);
      return { key: quantity, quantity, title, factor, shift, infos, lines, digits };
    });
}

/** As many as tell a thousandth of what the lines range over. */
function digitsOf(lines: readonly Line[], factor: number): number {
  const ends = lines.flatMap(({ samples }) => extent(samples?.v ?? []).map((x) => x ?? 0));
  const range = Math.abs(factor) * ((max(ends) ?? 1) - (min(ends) ?? 0));
  return range > 0 ? Math.min(Math.max(2 - Math.floor(Math.log10(range)), 0), 6) : 2;
}

/** A value of a panel (SI) as a figure in its unit; a dash where there is none. */
export function shownIn({ factor, shift, digits }: TracePanel, value: number): string {
  if (!Number.isFinite(value)) return '–';
  const text = (value * factor + shift).toFixed(digits);
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '\u2212');
}

const moved = new WeakMap<object, { readonly shift: number; readonly v: Float32Array }>();

/** Kept, so that a pressure is brought to gauge once. */
function shifted(v: Float32Array, shift: number): Float32Array {
  if (shift === 0) return v;
  const before = moved.get(v);
  if (before?.shift === shift) return before.v;
  const made = { shift, v: v.map((x) => x + shift) };
  moved.set(v, made);
  return made.v;
}

function laid({ t, v, quantity }: RecordedSeries, offset: number, shift: number): Samples {
  const steps = Array.from(
    { length: Math.min(t.length - 1, 2000) },
    (_, i) => (t[i + 1] ?? 0) - (t[i] ?? 0),
  );
  const gap = SILENT * (median(steps) ?? Infinity);
  const by = quantity === 'pressure' ? shift : 0;
  return {
    t: offset === 0 ? t : t.map((x) => x + offset),
    v: by === 0 ? v : v.map((x) => x + by),
    gap: gap > 0 ? gap : Infinity,
  };
}

/** Straight between samples; NaN before, behind and in gaps. */
export function sampleAt({ t, v, gap = Infinity }: Samples, time: number): number {
  const after = bisectRight(t, time);
  const [a, b] = [after - 1, Math.min(after, t.length - 1)];
  const [t0, v0] = [t[a] ?? NaN, v[a] ?? NaN];
  const [t1, v1] = [t[b] ?? NaN, v[b] ?? NaN];
  if (a < 0) return NaN;
  // The run's times are kept in single precision.
  if (a === b) return time - t0 < 1e-5 ? v0 : NaN;
  return t1 - t0 > gap ? NaN : t1 > t0 ? v0 + ((v1 - v0) * (time - t0)) / (t1 - t0) : v1;
}
