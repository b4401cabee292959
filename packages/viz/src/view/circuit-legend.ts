/** What colour, width and pattern of the circuit's lines mean. */
import { html, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { HEAT_STOPS } from '../drawing/heat.js';
import { RIM, widthAt } from '../drawing/pressure-scale.js';
import type { PressureScale } from '../drawing/pressure-scale.js';

const WIDTH = 240;
const HEIGHT = 30;
/** The bar is as wide as the lines, in pixels for each module. */
const MODULE = 14;

export function legend(scale: PressureScale, unit: string): TemplateResult {
  const half = (share: number, rim = 0): number => (MODULE * (widthAt(share) + 2 * rim)) / 2;
  const mid = 9;
  const wedge = (rim: number): string =>
    `M8,${mid - half(0, rim)}L${WIDTH - 52},${mid - half(1, rim)}V${mid + half(1, rim)}L8,${mid + half(0, rim)}Z`;
  const last = HEAT_STOPS.length - 1;
  const at = (share: number): number => 8 + share * (WIDTH - 60);
  return html`<div class="legend">
    <svg
      width=${WIDTH}
      height=${HEIGHT}
      viewBox="0 0 ${WIDTH} ${HEIGHT}"
      role="img"
      aria-label="Pressure in ${unit}: dark and thin is none, light and wide is ${scale.ticks[scale.ticks.length - 1]?.text ?? ''}"
    >
      <linearGradient id="pressure">
        ${HEAT_STOPS.map((colour, i) => svg`<stop offset=${i / last} stop-color=${colour}></stop>`)}
      </linearGradient>
      <path class="rim" d=${wedge(RIM)}></path>
      <path d=${wedge(0)} fill="url(#pressure)"></path>
      ${scale.ticks.map(
        ({ text, share }) =>
          svg`<text x=${at(share)} y="28" text-anchor="middle">${text}${share > 0.99 ? ` ${unit}` : ''}</text>`,
      )}
    </svg>
    ${sample('gas', 'gas')} ${sample('sucked', 'below outside')} ${flowing()}
  </div>`;
}

function sample(mark: string, word: string): TemplateResult {
  return html`<span class="sample"
    ><svg width="34" height="12" viewBox="0 -0.6 3.4 1.2" aria-hidden="true">
      <path class="rim" d="M0,0H3.4" stroke-width="0.9"></path>
      <path
        class="core ${mark}"
        d="M0,0H3.4"
        stroke=${HEAT_STOPS[4] ?? ''}
        stroke-width="0.6"
      ></path></svg
    >${word}</span
  >`;
}

function flowing(): TemplateResult {
  return html`<span class="sample"
    ><svg width="18" height="12" viewBox="-1 -1 2.4 2" aria-hidden="true">
      <path class="flow" d="M1,0L-0.7,0.85V-0.85Z"></path></svg
    >flows</span
  >`;
}
