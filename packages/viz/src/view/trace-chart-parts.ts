/** The parts of the chart of traces that are not lines: axes, labels, play head. */
import { html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { timeScale } from '../drawing/axis.js';
import { heightOf, TITLE } from '../drawing/trace-layout.js';
import type { Box, Layout } from '../drawing/trace-layout.js';
import { LINE } from '../drawing/trace-paint.js';
import type { State } from '../model/state.js';
import { sampleAt, shownIn } from '../model/trace-panels.js';
import type { TracePanel } from '../model/trace-panels.js';

/** Height of the axis, px. */
export const AXIS = 23;
/** Width of a letter of a label, px. */
const LETTER = 6.1;

type Drawn = Layout<TracePanel>;

export function axisOf(layout: Drawn, box: Box, state: State, scale: number): TemplateResult {
  const { left, width } = box;
  const { plotWidth } = layout;
  const now = timeScale(state.span, plotWidth)(state.time);
  const x = Math.max(left + Math.min(Math.max(now, 0), plotWidth), 27);
  return html`<div class="axis">
    <svg viewBox="0 0 ${width} 22" width="100%" height=${22 * scale} aria-hidden="true">
      ${layout.time
        .filter((t) => Math.abs(left + t.x - x) > 36)
        .map((t) => svg`<text x=${left + t.x} y="15" text-anchor="middle">${t.label}</text>`)}
      <text x=${left + plotWidth + 39} y="15">seconds</text>
      <rect class="now-box" x=${x - 26} y="2" width="52" height="17" rx="3"></rect>
      <text class="now" x=${x} y="15" text-anchor="middle">${state.time.toFixed(2)}</text>
    </svg>
  </div>`;
}

/** What does not move with the play head. */
export function backOf({ panels, time, plotWidth }: Drawn, { left }: Box): unknown {
  return panels.map(
    ({ content, top, height, ticks }) => svg`
      <text class="title" x=${left + 4} y=${top - TITLE / 2 + 5}>${content.title}</text>
      ${ticks.map(
        ({
          y,
          label,
        }) => svg`<line class="grid" x1=${left} x2=${left + plotWidth} y1=${y} y2=${y}></line>
          <text class="tick" x=${left - 6} y=${y + 4} text-anchor="end">${label}</text>`,
      )}
      ${time.map(({ x }) => svg`<line class="grid" x1=${left + x} x2=${left + x} y1=${top} y2=${top + height}></line>`)}`,
  );
}

/** Each line's name at its end, with its value at the play head; what was recorded in brackets. */
export function labelsOf(
  { panels, plotWidth }: Drawn,
  { left, right, row }: Box,
  time: number,
  dark: boolean,
): SVGTemplateResult[] {
  const x = left + plotWidth;
  // On a narrow page the value goes under the name.
  const two = row > 20;
  return panels.flatMap(({ content, lines }) =>
    lines.map(({ name, label, style, end, labelY, samples, recorded }) => {
      const value = samples === undefined ? NaN : sampleAt(samples, time);
      const was = recorded.map((r) => sampleAt(r, time)).filter(Number.isFinite);
      const shown = shownIn(content, value) + was.map((w) => ` (${shownIn(content, w)})`).join('');
      const room = two ? right - 44 : right - 56 - shown.length * LETTER;
      const y = labelY + (two ? -2 : 4);
      return svg`<g class="label" data-trace=${name}>
        <title>${name}</title>
        <path d=${`M${x},${end}L${x + 10},${labelY}h24`} stroke=${dark ? style.dark : style.light} stroke-width=${LINE} stroke-dasharray=${style.dash.join(' ') || 'none'}></path>
        <text x=${x + 39} y=${y}>${clip(label, Math.floor(room / LETTER))}</text>
        <text class="value" x=${x + (two ? 39 : right - 8)} y=${two ? labelY + 10 : y} text-anchor=${two ? 'start' : 'end'}>${shown}</text>
      </g>`;
    }),
  );
}

export function headOf(
  { panels, plotWidth }: Drawn,
  { left }: Box,
  { time, span }: State,
  dark: boolean,
): unknown {
  const x = timeScale(span, plotWidth)(time);
  if (x < -1 || x > plotWidth + 1) return nothing;
  return panels.map((panel) => [
    svg`<line class="play-head" x1=${left + x} x2=${left + x} y1=${panel.top} y2=${panel.top + panel.height}></line>`,
    panel.lines.map(({ samples, style }) => {
      const value = samples === undefined ? NaN : sampleAt(samples, time);
      if (Number.isNaN(value)) return nothing;
      return svg`<circle class="dot" cx=${left + x} cy=${heightOf(panel, value)} r="3" fill=${dark ? style.dark : style.light}></circle>`;
    }),
  ]);
}

function clip(words: string, letters: number): string {
  return words.length <= letters ? words : `${words.slice(0, Math.max(letters - 1, 1))}…`;
}
