/** What the plot of moments is drawn of: axes of its two panels, curves, the worst place. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { trace } from '../drawing/moment-plot.js';
import type { Panels } from '../drawing/moment-plot.js';
import type { CurveSamples } from '../worker/blow-down-message.js';

export function axes(
  p: Panels,
  width: number,
  height: number,
  axis: string,
  pressureUnit: string,
  momentUnit: string,
): SVGTemplateResult {
  const rows = (to: Panels['moment'], at: readonly number[]): SVGTemplateResult[] =>
    at.map(
      (t) =>
        svg`<path class="grid" d="M0,${to(t)}H${width}"></path><text x="-6" y=${to(t) + 4} text-anchor="end">${String(t).replace('-', '\u2212')}</text>`,
    );
  // A low panel has room for its ends only.
  const pressures = height > 150 ? p.pressure.ticks(2) : p.pressure.domain();
  const [, top = 0] = p.moment.range();
  return svg`
    ${rows(p.pressure, pressures)}${rows(p.moment, p.moment.ticks(4))}
    <text class="unit" x=${width - 3} y="6" text-anchor="end">${pressureUnit}</text>
    <text class="unit" x=${width - 3} y=${top + 6} text-anchor="end">${momentUnit}</text>
    ${p.x.ticks(6).map((t) => svg`<path class="grid" d="M${p.x(t)},${height}v4"></path><text x=${p.x(t)} y=${height + 16} text-anchor="middle">${t}</text>`)}
    <text x=${width / 2} y=${height + 31} text-anchor="middle">${axis}</text>`;
}

export function curvesOf(
  c: CurveSamples,
  x: Float32Array,
  bottle: Float32Array,
  available: Float32Array,
  needed: Float32Array,
  p: Panels,
): SVGTemplateResult {
  // A stretch keeps the sample at its far end, so that thick and thin meet.
  const free = (i: number): boolean => c.held[i] === 0;
  const shut = (i: number): boolean => c.held[i] === 1 || c.held[i - 1] === 1;
  const pair = (cls: string, v: Float32Array, to: Panels['moment']): SVGTemplateResult =>
    svg`<path class="${cls} held" d=${trace(x, v, p.x, to, shut)}></path><path class=${cls} data-curve=${cls} d=${trace(x, v, p.x, to, free)}></path>`;
  return svg`${pair('bottle', bottle, p.pressure)}${pair('needed', needed, p.moment)}${pair('available', available, p.moment)}`;
}

export function worst(
  c: CurveSamples,
  x: Float32Array,
  available: Float32Array,
  needed: Float32Array,
  p: Panels,
  width: number,
): SVGTemplateResult | typeof nothing {
  const i = c.worst;
  if (i < 0) return nothing;
  const at = p.x(x[i] ?? 0);
  const a = p.moment(available[i] ?? 0);
  const n = p.moment(needed[i] ?? 0);
  const right = at < width / 2;
  return svg`<g data-mark="worst">
    <path class="worst" d="M${at - 6},${a}h12M${at},${a}V${n}M${at - 6},${n}h12"></path>
    <text class="worst-word" x=${at + (right ? 10 : -10)} y=${(a + n) / 2 + 4} text-anchor=${right ? 'start' : 'end'}>worst</text>
  </g>`;
}
