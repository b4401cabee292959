/** The axis over the order chart: seconds, the play head's time, the loop, the dimension of two marks. */
import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { timeTicks } from '../drawing/axis.js';
import type { Between } from '../model/between.js';
import type { Loop } from '../model/loop.js';
import type { Plot } from './order-marks.js';
import { dimension, loopOnAxis, STRIP } from './order-overlay.js';

const AXIS = 22;

export interface OrderAxis {
  readonly plot: Plot;
  /** Room for the lanes' names, and all there is, px. */
  readonly left: number;
  readonly width: number;
  readonly scale: number;
  readonly time: number;
  readonly loop: Loop | undefined;
  readonly between: Between | undefined;
}

/** Height with its border, px. */
export function axisHeight(between: Between | undefined): number {
  return AXIS + 1 + (between === undefined ? 0 : STRIP);
}

export function orderAxis(o: OrderAxis): TemplateResult {
  const { plot, left, width, time, loop, between } = o;
  const height = axisHeight(between) - 1;
  const x = Math.min(Math.max(left + plot.scale(time), left), left + plot.width);
  const box = Math.min(x, width - 27);
  return html`<div class="axis">
    <svg
      viewBox="0 0 ${width} ${height}"
      width="100%"
      height=${height * o.scale}
      aria-hidden="true"
    >
      ${loop === undefined ? nothing : loopOnAxis(loop, plot, left)}
      ${timeTicks(plot.scale)
        .filter((t) => Math.abs(left + t.x - x) > 36)
        .map((t) => svg`<text x=${left + t.x} y="15" text-anchor="middle">${t.label}</text>`)}
      <text x="8" y="15">seconds</text>
      ${between === undefined ? nothing : dimension(between, plot, left, AXIS)}
      <rect class="now-box" x=${box - 26} y="2" width="52" height="17" rx="3"></rect>
      <text class="now" x=${box} y="15" text-anchor="middle">${time.toFixed(2)}</text>
    </svg>
  </div>`;
}
