/** The order chart's drawing: lanes with their bars, events, arrows and pins. */
import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { timeTicks } from '../drawing/axis.js';
import { devicesOf } from '../model/bearers.js';
import { causesOf, effectsOf, reached } from '../model/history.js';
import { GEAR } from '../model/lanes.js';
import type { Lane } from '../model/lanes.js';
import type { Placed } from '../model/measured.js';
import { plain } from '../model/sentence.js';
import type { Selection } from '../model/state.js';
import type { Picture, System } from '../worker/message.js';
import { arrows, bar, event, pinnedOn, pins, PINS, ROW, visible } from './order-marks.js';
import type { Plot } from './order-marks.js';
import { measuredMark } from './order-overlay.js';

/** Room to the right of the plot, px. */
export const EDGE = 14;

export interface Row {
  readonly lane: Lane;
  readonly y: number;
  /** Indices of the flags pinned under it. */
  readonly flags: readonly number[];
}

/** Lanes one under the other; one with flags has a second row for them. */
export function stack(
  picture: Picture,
  shown: readonly Lane[],
  flag: number,
  notes: boolean,
): { rows: readonly Row[]; height: number } {
  let y = 0;
  const rows = shown.map((lane): Row => {
    const flags = pinnedOn(lane, picture, flag, notes);
    const row = { lane, y, flags };
    y += ROW + (flags.length > 0 ? PINS : 0);
    return row;
  });
  return { rows, height: y };
}

export interface OrderBody {
  readonly picture: Picture;
  readonly rows: readonly Row[];
  readonly height: number;
  readonly plot: Plot;
  /** Room for the lanes' names, px. */
  readonly left: number;
  /** Pixels to a unit of the drawing. */
  readonly scale: number;
  readonly selection: Selection;
  readonly system: System;
  readonly measured: readonly Placed[];
  readonly pick: (selection: Selection, e: MouseEvent) => void;
  readonly pickMeasured: (p: Placed, e: MouseEvent) => void;
}

export function orderBody(o: OrderBody): TemplateResult {
  const { picture, rows, height, plot, left, selection, system, pick } = o;
  const chosen = selection.kind === 'event' ? selection.index : -1;
  const flag = selection.kind === 'flag' ? selection.index : -1;
  const chain = new Set(
    chosen < 0 ? [] : [...causesOf(picture.log, chosen), ...effectsOf(picture.log, chosen)],
  );
  const middleOf = (device: string): number | undefined => {
    const row = rows.find((r) => r.lane.name === device);
    return row === undefined ? undefined : row.y + ROW / 2;
  };
  const room = Math.floor((left - 20) / 6.6);
  const mark = (index: number): string =>
    index === chosen ? 'chosen' : chain.has(index) ? 'chain' : '';
  const about = picture.flags[flag];
  const flagged = about === undefined ? [] : devicesOf(picture, about);
  const involved = (l: Lane): boolean =>
    picture.log[chosen]?.device === l.name || flagged.includes(l.name);
  const total = left + plot.width + EDGE;
  const end = plot.scale(reached(picture));
  return html`<svg
    viewBox="0 0 ${total} ${height}"
    width="100%"
    height=${height * o.scale}
    aria-hidden="true"
  >
    <defs>
      <pattern
        id="hatch"
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path class="hatch" d="M0,0V6"></path>
      </pattern>
      <clipPath id="window">
        <rect x="-8" y="0" width=${plot.width + 8 + EDGE} height=${height}></rect>
      </clipPath>
    </defs>
    ${rows.map(
      ({ lane: l, y }) => svg`
        ${l.heading ? svg`<rect class="heading-row" x="0" y=${y} width=${total} height=${ROW}></rect>` : nothing}
        <text class=${`${l.heading ? 'heading' : 'name'} ${involved(l) ? 'chosen' : ''}`} x=${l.heading ? 8 : 18} y=${y + ROW / 2 + 4}><title>${l.name}</title>${clip(l.name === GEAR ? 'whole gear' : plain(l.name), room)}</text>`,
    )}
    <g transform="translate(${left} 0)" clip-path="url(#window)">
      ${timeTicks(plot.scale).map((t) => svg`<line class="grid" x1=${t.x} x2=${t.x} y1="0" y2=${height}></line>`)}
      ${reached(picture) < picture.duration ? svg`<rect class="beyond" x=${end} y="0" width=${Math.max(plot.width - end, 0) + EDGE} height=${height}><title>Not simulated: the run ended early</title></rect>` : nothing}
      ${rows.map(({ lane: l, y }) => l.bars.map((b) => bar(b, y, plot, l.worded)))}
      ${chosen < 0 ? nothing : arrows(picture, chosen, plot, middleOf)}
      ${rows.map(({ lane: l, y }) =>
        // Phases begin and end with their bars: only the one picked out is marked.
        visible(l.events, plot, (index) => mark(index) !== '')
          .filter((e) => !l.heading || e.index === chosen)
          .map((e) =>
            event(e, plot.scale(e.t), y, mark(e.index), (at) =>
              pick({ kind: 'event', index: e.index }, at),
            ),
          ),
      )}
      ${rows.map(({ flags, y }) => pins(flags, y, plot, picture, system, flag, (index, at) => pick({ kind: 'flag', index }, at)))}
      ${rows.map(({ lane: l, y }) =>
        o.measured
          .filter((p) => p.measured.on === l.name)
          .map((p) => measuredMark(p, y, plot, picture, system, (at) => o.pickMeasured(p, at))),
      )}
    </g>
  </svg>`;
}

function clip(text: string, letters: number): string {
  return text.length <= letters ? text : `${text.slice(0, letters - 1)}…`;
}
