/** Where everything stands in a chart of traces: panels one under the other on one axis of time. */
import { scaleLinear } from 'd3-scale';
import { timeScale, timeTicks } from './axis.js';
import type { Tick } from './axis.js';
import type { LineStyle } from './line-style.js';
import { polyline } from './polyline.js';
import type { Samples } from './polyline.js';

/** A line to be drawn: a trace in the units of its panel, perhaps with a recording of the same. */
export interface Line {
  readonly name: string;
  readonly label: string;
  readonly style: LineStyle;
  /** Simulated; undefined until it has come. */
  readonly samples: Samples | undefined;
  /** Recorded, on the run's axis of time. */
  readonly recorded: readonly Samples[];
}

export interface PanelContent {
  readonly key: string;
  /** Quantity and unit. */
  readonly title: string;
  /** What one unit of the samples (SI) is on the panel's axis. */
  readonly factor: number;
  readonly shift: number;
  readonly lines: readonly Line[];
}

export interface Box {
  readonly span: readonly [number, number];
  readonly width: number;
  /** Height to be filled if the panels need no more. */
  readonly height: number;
  /** Room for the axis on the left and the labels on the right, px. */
  readonly left: number;
  readonly right: number;
  /** Height of a label, px. */
  readonly row: number;
  /** Takes the axes from what is shown, not from the whole run. */
  readonly fit: boolean;
}

export interface PlacedLine extends Line {
  readonly path: Float32Array;
  readonly bands: readonly Float32Array[];
  /** Where the line ends on the right, and where its label stands. */
  readonly end: number;
  readonly labelY: number;
}

export interface Panel<Content extends PanelContent = PanelContent> {
  readonly content: Content;
  readonly top: number;
  readonly height: number;
  /** In SI. */
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly { readonly y: number; readonly label: string }[];
  readonly lines: readonly PlacedLine[];
}

export interface Layout<Content extends PanelContent = PanelContent> {
  readonly panels: readonly Panel<Content>[];
  readonly time: readonly Tick[];
  readonly plotWidth: number;
  readonly height: number;
}

/** Least height of a panel's plot, room above it for its title, and below it, px. */
const LEAST = 60;
export const TITLE = 19;
const FOOT = 7;
/** Left free above and below the lines, as a share of their range. */
const AIR = 0.05;

export function layOut<Content extends PanelContent>(
  contents: readonly Content[],
  box: Box,
): Layout<Content> {
  const { span, width, left, right, row, fit } = box;
  const plotWidth = Math.max(width - left - right, 10);
  const least = contents.map((p) => Math.max(LEAST, p.lines.length * row + 6));
  const needed = least.reduce((sum, h) => sum + h + TITLE + FOOT, 0);
  const spare = Math.max(0, box.height - needed) / Math.max(1, contents.length);
  let y = 0;
  const panels = contents.map((content, i): Panel<Content> => {
    const top = y + TITLE;
    const height = (least[i] ?? LEAST) + spare;
    y = top + height + FOOT;
    const { factor, shift } = content;
    const [low, high] = extentOf(content, fit ? span : undefined);
    const scale = scaleLinear([low * factor + shift, high * factor + shift], [height, 0]);
    const frame = { span, width: plotWidth, top, height, low, high };
    const count = Math.max(2, Math.min(6, Math.floor(height / 30)));
    const words = scale.tickFormat(count);
    const lines = content.lines.map((line) => ({
      ...line,
      path: line.samples === undefined ? new Float32Array(0) : polyline(line.samples, frame),
      bands: line.recorded.map((r) => polyline(r, frame)),
    }));
    return {
      content,
      top,
      height,
      low,
      high,
      ticks: scale.ticks(count).map((v) => ({ y: top + scale(v), label: words(v) })),
      lines: labelled(lines, top, height, row),
    };
  });
  return { panels, time: timeTicks(timeScale(span, plotWidth)), plotWidth, height: y };
}

/** Where a value stands in a panel, px; kept to the panel. */
export function heightOf(panel: Panel, value: number): number {
  const { low, high, top, height } = panel;
  const share = high > low ? (value - low) / (high - low) : 0.5;
  return top + height * (1 - Math.min(Math.max(share, 0), 1));
}

/** Least and greatest in SI, recordings too. */
function extentOf(content: PanelContent, span?: readonly [number, number]): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const { samples, recorded } of content.lines)
    for (const { t, v } of samples === undefined ? recorded : [samples, ...recorded])
      for (let i = 0; i < v.length; i++) {
        const x = v[i] ?? NaN;
        // One more on either side: the line enters and leaves through them.
        if (
          span !== undefined &&
          ((t[i + 1] ?? Infinity) < span[0] || (t[i - 1] ?? -Infinity) > span[1])
        )
          continue;
        if (x < low) low = x;
        if (x > high) high = x;
      }
  if (!(high >= low)) return [0, 1];
  // A flat line lies in the middle of a panel, at a scale of its own size.
  const size = Math.max(Math.abs(low), Math.abs(high)) || 1;
  const flat = high - low < 1e-9 * size;
  const margin = flat ? 0.1 * size : AIR * (high - low);
  return [low - margin, high + margin];
}

type Drawn = Line & Pick<PlacedLine, 'path' | 'bands'>;

/** Labels at the ends of their lines, moved apart where they would lie on one another. */
function labelled(lines: readonly Drawn[], top: number, height: number, row: number): PlacedLine[] {
  const ends = lines.map(({ path, bands }) => {
    const shown = path.length > 0 ? path : (bands[0] ?? path);
    const y = shown[shown.length - 1] ?? NaN;
    return Number.isFinite(y) ? Math.min(Math.max(y, top), top + height) : top + height / 2;
  });
  const order = ends.map((_, i) => i).sort((a, b) => (ends[a] ?? 0) - (ends[b] ?? 0) || a - b);
  const at = new Map<number, number>();
  let free = top + row / 2;
  order.forEach((i, place) => {
    // So far down that all below it still have room.
    const last = top + height - (order.length - place - 0.5) * row;
    const y = Math.max(free, Math.min(ends[i] ?? 0, last));
    at.set(i, y);
    free = y + row;
  });
  return lines.map((line, i) => ({ ...line, end: ends[i] ?? 0, labelY: at.get(i) ?? 0 }));
}
