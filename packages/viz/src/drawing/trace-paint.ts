/** Draws a chart of traces on a canvas: the lines alone for the page, all of it for a picture file. */
import { columnEnd, DENSE } from './dense-columns.js';
import type { Layout, Panel } from './trace-layout.js';
import { TITLE } from './trace-layout.js';

/** A recording is a wide pale band: the simulated line runs in its middle where the two agree. */
export const BAND = { width: 5, opacity: 0.38 } as const;
export const LINE = 1.6;

/** The lines; x from the left edge of the plot. `sparse`: without what fillDense has drawn. */
export function paintLines(
  g: CanvasRenderingContext2D,
  layout: Layout,
  dark: boolean,
  sparse = false,
): void {
  for (const panel of layout.panels) {
    g.save();
    clipTo(g, layout, panel);
    g.globalAlpha = BAND.opacity;
    g.lineWidth = BAND.width;
    g.lineCap = g.lineJoin = 'round';
    for (const { style, bands } of panel.lines) {
      g.strokeStyle = dark ? style.dark : style.light;
      for (const band of bands) stroke(g, band);
    }
    g.globalAlpha = 1;
    g.lineWidth = LINE;
    g.lineCap = 'butt';
    g.lineJoin = 'bevel';
    for (const { style, path } of panel.lines) {
      g.strokeStyle = dark ? style.dark : style.light;
      g.setLineDash([...style.dash]);
      stroke(g, path, sparse);
    }
    g.restore();
  }
}

function clipTo(g: CanvasRenderingContext2D, layout: Layout, panel: Panel): void {
  g.beginPath();
  g.rect(0, Math.floor(panel.top - 2), Math.ceil(layout.plotWidth), Math.ceil(panel.height + 4));
  g.clip();
}

function stroke(g: CanvasRenderingContext2D, path: Float32Array, sparse = false): void {
  g.beginPath();
  let pen = false;
  // Dense columns side by side are filled up to one another.
  let filled = NaN;
  for (let i = 0; i < path.length; i += 2) {
    const x = path[i] ?? NaN;
    const y = path[i + 1] ?? NaN;
    if (Number.isNaN(x)) {
      // A sample alone between gaps is a dot.
      if (pen && Number.isNaN(path[i - 4] ?? NaN))
        g.lineTo((path[i - 2] ?? 0) + 0.01, path[i - 1] ?? 0);
      pen = false;
      continue;
    }
    const end = sparse ? columnEnd(path, i) : 0;
    const dense = end - i >= DENSE;
    const joined = dense && filled === Math.floor(x) - 1;
    if (pen && !joined) g.lineTo(x, y);
    else if (!pen) g.moveTo(x, y);
    pen = true;
    if (!dense) continue;
    filled = Math.floor(x);
    i = end - 2;
    g.moveTo(path[i] ?? 0, path[i + 1] ?? 0);
  }
  g.stroke();
}

/** What a picture file says beside the lines. */
export interface Caption {
  readonly title: string;
  /** What stands beside the lines of each panel. */
  readonly labels: readonly (readonly string[])[];
}

export const PAPER = {
  sheet: '#ffffff',
  ink: '#1b262d',
  soft: '#4b5860',
  rule: '#d6cfc0',
} as const;
export const FONT = '12px sans-serif';
/** Room above for the caption, and below for the axis of time, px. */
export const MARGIN = { top: 26, bottom: 40 } as const;

/** All of it, on white. */
export function paintPicture(
  g: CanvasRenderingContext2D,
  layout: Layout,
  box: { readonly width: number; readonly left: number },
  caption: Caption,
): void {
  const height = layout.height + MARGIN.top + MARGIN.bottom;
  g.fillStyle = PAPER.sheet;
  g.fillRect(0, 0, box.width, height);
  g.font = FONT;
  g.textBaseline = 'middle';
  const text = (
    words: string,
    x: number,
    y: number,
    align: CanvasTextAlign,
    colour: string = PAPER.ink,
  ): void => {
    g.textAlign = align;
    g.fillStyle = colour;
    g.fillText(words, x, y);
  };
  text(caption.title, 8, MARGIN.top / 2, 'left');
  g.translate(box.left, MARGIN.top);
  const { plotWidth } = layout;
  const line = (x1: number, y1: number, x2: number, y2: number): void => {
    g.strokeStyle = PAPER.rule;
    g.lineWidth = 1;
    g.beginPath();
    g.moveTo(x1, y1);
    g.lineTo(x2, y2);
    g.stroke();
  };
  for (const panel of layout.panels) {
    text(panel.content.title, 4, panel.top - TITLE / 2, 'left');
    for (const { y, label } of panel.ticks) {
      line(0, y, plotWidth, y);
      text(label, -6, y, 'right', PAPER.soft);
    }
    for (const { x } of layout.time) line(x, panel.top, x, panel.top + panel.height);
  }
  for (const { x, label } of layout.time) text(label, x, layout.height + 8, 'center', PAPER.soft);
  text('time (s)', plotWidth / 2, layout.height + 26, 'center', PAPER.soft);
  paintLines(g, layout, false);
  layout.panels.forEach((panel, p) =>
    panel.lines.forEach(({ style, end, labelY }, i) => {
      g.strokeStyle = style.light;
      g.lineWidth = LINE;
      g.setLineDash([...style.dash]);
      g.beginPath();
      g.moveTo(plotWidth, end);
      g.lineTo(plotWidth + 10, labelY);
      g.lineTo(plotWidth + 36, labelY);
      g.stroke();
      g.setLineDash([]);
      text(caption.labels[p]?.[i] ?? '', plotWidth + 41, labelY, 'left');
    }),
  );
}
