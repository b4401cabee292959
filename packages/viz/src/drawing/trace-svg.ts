/** A chart of traces as the text of an SVG file. */
import type { Layout } from './trace-layout.js';
import { TITLE } from './trace-layout.js';
import { BAND, LINE, MARGIN, PAPER } from './trace-paint.js';
import type { Caption } from './trace-paint.js';

export function traceSvg(
  layout: Layout,
  box: { readonly width: number; readonly left: number },
  caption: Caption,
): string {
  const { plotWidth } = layout;
  const height = round(layout.height + MARGIN.top + MARGIN.bottom);
  const body: string[] = [];
  const text = (
    words: string,
    x: number,
    y: number,
    anchor: string,
    colour: string = PAPER.ink,
  ): void => {
    body.push(
      `<text x="${round(x)}" y="${round(y + 4)}" text-anchor="${anchor}" fill="${colour}">${escaped(words)}</text>`,
    );
  };
  const rule = (x1: number, y1: number, x2: number, y2: number): void => {
    body.push(
      `<path d="M${round(x1)},${round(y1)}L${round(x2)},${round(y2)}" stroke="${PAPER.rule}"/>`,
    );
  };
  layout.panels.forEach((panel, i) => {
    text(panel.content.title, 4, panel.top - TITLE / 2, 'start');
    for (const { y, label } of panel.ticks) {
      rule(0, y, plotWidth, y);
      text(label, -6, y, 'end', PAPER.soft);
    }
    for (const { x } of layout.time) rule(x, panel.top, x, panel.top + panel.height);
    body.push(
      `<clipPath id="panel-${i}"><rect x="0" y="${round(panel.top - 2)}" width="${round(plotWidth)}" height="${round(panel.height + 4)}"/></clipPath>`,
      `<g clip-path="url(#panel-${i})" fill="none" stroke-linejoin="round">`,
    );
    for (const { name, style, bands } of panel.lines)
      for (const band of bands)
        body.push(
          `<path data-recording="${escaped(name)}" d="${pathOf(band)}" stroke="${style.light}" stroke-width="${BAND.width}" stroke-opacity="${BAND.opacity}" stroke-linecap="round"/>`,
        );
    for (const { name, style, path } of panel.lines)
      body.push(
        `<path data-trace="${escaped(name)}" d="${pathOf(path)}" stroke="${style.light}" stroke-width="${LINE}"${dashes(style.dash)}/>`,
      );
    body.push('</g>');
    panel.lines.forEach(({ style, end, labelY }, k) => {
      body.push(
        `<path d="M${round(plotWidth)},${round(end)}L${round(plotWidth + 10)},${round(labelY)}H${round(plotWidth + 36)}" fill="none" stroke="${style.light}" stroke-width="${LINE}"${dashes(style.dash)}/>`,
      );
      text(caption.labels[i]?.[k] ?? '', plotWidth + 41, labelY, 'start');
    });
  });
  for (const { x, label } of layout.time) text(label, x, layout.height + 8, 'middle', PAPER.soft);
  text('time (s)', plotWidth / 2, layout.height + 26, 'middle', PAPER.soft);
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${box.width}" height="${height}" viewBox="0 0 ${box.width} ${height}" font-family="sans-serif" font-size="12">
<title>${escaped(caption.title)}</title>
<rect width="${box.width}" height="${height}" fill="${PAPER.sheet}"/>
<text x="8" y="${MARGIN.top / 2 + 4}" fill="${PAPER.ink}">${escaped(caption.title)}</text>
<g transform="translate(${box.left} ${MARGIN.top})">
${body.join('\n')}
</g>
</svg>
`;
}

/** The `d` of a row of points; NaN lifts the pen. */
function pathOf(path: Float32Array): string {
  const parts: string[] = [];
  let pen = false;
  for (let i = 0; i < path.length; i += 2) {
    const x = path[i] ?? NaN;
    if (Number.isNaN(x)) pen = false;
    else {
      parts.push(`${pen ? 'L' : 'M'}${round(x)},${round(path[i + 1] ?? 0)}`);
      pen = true;
    }
  }
  return parts.join('');
}

function dashes(dash: readonly number[]): string {
  return dash.length === 0 ? '' : ` stroke-dasharray="${dash.join(' ')}"`;
}

function round(x: number): number {
  return Math.round(x * 100) / 100;
}

function escaped(words: string): string {
  return words
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
