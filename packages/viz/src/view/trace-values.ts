/** The traces as a table: what each reads at the play head, and its extremes in what is shown. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { bisectLeft, bisectRight } from 'd3-array';
import type { Samples } from '../drawing/polyline.js';
import { seconds } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { sampleAt, shownIn } from '../model/trace-panels.js';
import type { TracePanel } from '../model/trace-panels.js';

export function traceValues(panels: readonly TracePanel[], state: State): TemplateResult {
  const { time, span } = state;
  const recorded = panels.some((p) => p.lines.some((l) => l.recorded.length > 0));
  return html`<table class="values">
    <caption>
      At ${seconds(time)}; least and most from ${seconds(span[0])} to ${seconds(span[1])}
    </caption>
    <thead>
      <tr>
        <th scope="col">Trace</th>
        <th scope="col">now</th>
        ${recorded ? html`<th scope="col">recorded</th>` : nothing}
        <th scope="col">least</th>
        <th scope="col">most</th>
      </tr>
    </thead>
    ${panels.map(
      (panel) =>
        html`<tbody>
          <tr>
            <th class="kind" scope="colgroup" colspan=${recorded ? 5 : 4}>${panel.title}</th>
          </tr>
          ${panel.lines.map(({ name, label, samples, recorded: over }) => {
            const shown = (v: number): string => shownIn(panel, v);
            const [least, most] = extremes(samples, span);
            return html`<tr data-trace=${name}>
              <th scope="row">${label}</th>
              <td>${shown(samples === undefined ? NaN : sampleAt(samples, time))}</td>
              ${recorded ? html`<td>${over.map((r) => shown(sampleAt(r, time))).join(', ')}</td>` : nothing}
              <td>${shown(least)}</td>
              <td>${shown(most)}</td>
            </tr>`;
          })}
        </tbody>`,
    )}
  </table>`;
}

const known = new WeakMap<Samples, { span: readonly [number, number]; found: [number, number] }>();

/** Kept: the play head moves far more often than the window. */
function extremes(samples: Samples | undefined, span: readonly [number, number]): [number, number] {
  if (samples === undefined) return [NaN, NaN];
  const before = known.get(samples);
  if (before?.span === span) return before.found;
  const { t, v } = samples;
  const to = bisectRight(t, span[1]);
  let [low, high] = [Infinity, -Infinity];
  for (let i = bisectLeft(t, span[0]); i < to; i++) {
    const x = v[i] ?? NaN;
    if (x < low) low = x;
    if (x > high) high = x;
  }
  const found: [number, number] = high >= low ? [low, high] : [NaN, NaN];
  known.set(samples, { span, found });
  return found;
}
