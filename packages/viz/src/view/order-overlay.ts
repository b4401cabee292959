/** What lies over the lanes of the order chart: measured times, the loop, the time between two marks. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import type { Between } from '../model/between.js';
import type { Loop } from '../model/loop.js';
import { agrees, sentenceOfMeasured } from '../model/measured.js';
import type { Placed } from '../model/measured.js';
import { margin, seconds } from '../model/sentence.js';
import type { Picture, System } from '../worker/message.js';
import { ROW } from './order-marks.js';
import type { Plot } from './order-marks.js';

/** Height of the strip that holds the dimension, px. */
export const STRIP = 20;

/** How a measured time stands to the run's, in a few letters. */
export function verdictOn(p: Placed, picture: Picture, system: System): string {
  if (Number.isNaN(p.difference)) return 'not in this run';
  return agrees(p) ? 'fits' : margin(p.difference, 'time', picture, system);
}

/** A reading on its lane: a ring with whiskers of its error, and the gap to the run's own event. */
export function measuredMark(
  p: Placed,
  y: number,
  plot: Plot,
  picture: Picture,
  system: System,
  choose: (e: MouseEvent) => void,
): SVGTemplateResult {
  const x = plot.scale(p.t);
  const [low, high] = [plot.scale(p.t - p.measured.error), plot.scale(p.t + p.measured.error)];
  if (high < 0 || low > plot.width) return svg``;
  const mid = y + ROW / 2;
  const own = p.entry === undefined ? undefined : plot.scale(p.entry.t);
  const verdict = verdictOn(p, picture, system);
  const wide = 8 + verdict.length * 6.2;
  const left = high + wide > plot.width;
  return svg`<g class="measured ${agrees(p) ? 'fits' : 'off'}" @click=${choose}>
    <title>Measured: ${sentenceOfMeasured(p.measured)}; ${verdict}</title>
    ${own === undefined ? nothing : svg`<path class="gap" d="M${own},${mid}H${x}"></path>`}
    <path class="whisker" d="M${low},${mid}H${high}M${low},${mid - 4}v8M${high},${mid - 4}v8"></path>
    <circle cx=${x} cy=${mid} r="4.2"></circle>
    <rect class="paper" x=${left ? Math.min(low, own ?? low) - wide : Math.max(high, own ?? high) + 2} y=${y + 2} width=${wide - 2} height=${ROW - 4} rx="2"></rect>
    <text x=${left ? Math.min(low, own ?? low) - 5 : Math.max(high, own ?? high) + 5} y=${mid + 3.6} text-anchor=${left ? 'end' : 'start'}>${verdict}</text>
  </g>`;
}

/** The loop behind the axis: filled while it is on, else outlined. */
export function loopOnAxis(loop: Loop, plot: Plot, left: number): SVGTemplateResult {
  const [a, b] = ends(loop, plot);
  if (b <= 0 || a >= plot.width) return svg``;
  return svg`<rect class="loop ${loop.on ? 'on' : ''}" x=${left + a} y="0.5" width=${b - a} height="21"></rect>`;
}

export function loopOverLanes(
  loop: Loop,
  plot: Plot,
  left: number,
  height: number,
): SVGTemplateResult[] {
  return [loop.from, loop.to]
    .map((t) => plot.scale(t))
    .filter((x) => x >= -0.5 && x <= plot.width + 0.5)
    .map(
      (x) =>
        svg`<line class="loop-end ${loop.on ? 'on' : ''}" x1=${left + x} x2=${left + x} y1="0" y2=${height}></line>`,
    );
}

function ends(loop: Loop, plot: Plot): readonly [number, number] {
  return [Math.max(plot.scale(loop.from), 0), Math.min(plot.scale(loop.to), plot.width)];
}

/** The dimension line in its strip: arrows at the marks, the time between them in the middle. */
export function dimension(
  { from, to, live }: Between,
  plot: Plot,
  left: number,
  y: number,
): SVGTemplateResult {
  const held = (x: number): number => Math.min(Math.max(x, 0), plot.width);
  const [xa, xb] = [plot.scale(from.t), plot.scale(to.t)];
  const [a, b] = [left + held(Math.min(xa, xb)), left + held(Math.max(xa, xb))];
  const mid = y + STRIP / 2;
  const text = seconds(Math.abs(to.t - from.t), 3);
  const half = text.length * 3.5 + 4;
  // Too narrow to write in: beside it, where there is room.
  const inside = b - a > 2 * half + 16;
  const x = inside
    ? (a + b) / 2
    : b + half + 12 < left + plot.width
      ? b + half + 10
      : a - half - 10;
  const end = (at: number, out: number, shown: boolean): unknown =>
    shown ? svg`<path class="tip" d=${`M${at},${mid}l${out * 7},-3.5v7Z`}></path>` : nothing;
  const inSight = (px: number): boolean => px >= -0.5 && px <= plot.width + 0.5;
  const [low, high] = xa <= xb ? [xa, xb] : [xb, xa];
  return svg`<g class="dimension ${live ? 'live' : ''}">
    <path class="rule" d="M${a},${mid}H${b}"></path>
    ${end(a, 1, inSight(low))}${end(b, -1, inSight(high))}
    <rect class="paper" x=${x - half} y=${mid - 8} width=${2 * half} height="16" rx="3"></rect>
    <text x=${x} y=${mid + 4} text-anchor="middle">${text}</text>
  </g>`;
}

/** From the strip down to the marks that it measures. */
export function extensions(
  { from, to }: Between,
  plot: Plot,
  left: number,
  middleOf: (names: readonly string[]) => number | undefined,
  height: number,
): SVGTemplateResult[] {
  return [from, to].flatMap(({ t, on }) => {
    const x = plot.scale(t);
    if (x < -0.5 || x > plot.width + 0.5) return [];
    const y = middleOf(on);
    return [
      svg`<line class="extension" x1=${left + x} x2=${left + x} y1="0" y2=${y ?? height}></line>`,
      ...(y === undefined
        ? []
        : [svg`<circle class="extension" cx=${left + x} cy=${y} r="7.5"></circle>`]),
    ];
  });
}
