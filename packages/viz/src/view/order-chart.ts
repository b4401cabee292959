import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { timeScale, timeTicks } from '../drawing/axis.js';
import { causesOf, concerns, effectsOf, eventAt, reached } from '../model/history.js';
import { GEAR, lanes } from '../model/lanes.js';
import type { Lane } from '../model/lanes.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { arrows, bar, event, pinnedOn, pins, PINS, ROW, visible } from './order-marks.js';
import type { Plot } from './order-marks.js';
import { orderChartStyles } from './order-chart.styles.js';
import { reveal } from './reveal.js';
import { shared } from './shared.styles.js';

/** Room for the lanes' names, px; less on a narrow page. */
const names = (width: number): number => (width < 620 ? 130 : 178);
const EDGE = 14;

interface Row {
  readonly lane: Lane;
  readonly y: number;
  /** Indices of the flags pinned under it. */
  readonly flags: readonly number[];
}
/** Height of the axis, px. */
const AXIS = 23;

/**
 * The order chart: a lane per unit and device, bars while something moves or works, marks for
 * events, arrows from cause to effect for the one picked out, flags pinned where they happen.
 */
export class OrderChart extends View {
  static override properties = { ...View.properties, quiet: { state: true }, notes: { state: true }, width: { state: true } };
  static override styles = [shared, orderChartStyles];

  /** Shows lanes on which nothing happens, and flags within limits. */
  declare quiet: boolean;
  declare notes: boolean;
  declare width: number;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'time', 'selection', 'span', 'system'];

  #size = new ResizeObserver(([entry]) => {
    if (entry !== undefined) this.width = entry.contentRect.width;
  });
  #dragging = false;

  constructor() {
    super();
    this.quiet = false;
    this.notes = false;
    this.width = 0;
  }

  protected override updated(): void {
    const scroll = this.renderRoot.querySelector('.scroll');
    if (scroll !== null) this.#size.observe(scroll);
    const { selection } = this.state;
    if (selection !== this.#followed) {
      this.#followed = selection;
      reveal(this.renderRoot.querySelector('.event.chosen, .pin.chosen'), AXIS + ROW);
    }
  }
  #followed: State['selection'] = { kind: 'none' };

  protected override render(): TemplateResult {
    const { picture, span, selection, system } = this.state;
    if (picture === undefined) return html``;
    const shown = lanes(picture).filter((l) => this.quiet || !l.quiet);
    const left = names(this.width);
    const width = Math.max(this.width - left - EDGE, 10);
    const plot: Plot = { scale: timeScale(span, width), width };
    const { rows, height } = this.#rows(picture, shown);
    return html`
      ${this.#tools(picture, shown)}
      <div class="scroll">
        ${this.width === 0 ? nothing : [this.#axis(plot, left), html`<div
          class="body"
          tabindex="0"
          role="slider"
          aria-label="Order of events; play head"
          aria-valuemin="0"
          aria-valuemax=${reached(picture)}
          aria-valuenow=${this.state.time.toFixed(3)}
          aria-valuetext=${this.#valueText(picture)}
          @pointerdown=${this.#down}
          @pointermove=${this.#move}
          @pointerup=${this.#up}
          @pointercancel=${this.#up}
          @wheel=${this.#wheel}
        >
          ${guard([picture, span, selection, system, this.quiet, this.notes, this.width], () => this.#body(picture, rows, height, plot, left))}
          <svg class="head" width="100%" height=${height} aria-hidden="true">${this.#head(plot, left, height)}</svg>
        </div>`]}
      </div>
    `;
  }

  #valueText(picture: Picture): string {
    const entry = picture.log[eventAt(picture.log, this.state.time)];
    const last = entry === undefined ? '' : `; last event: ${plain(entry.device)} ${entry.to}`;
    return `${this.state.time.toFixed(2)} seconds${last}`;
  }

  #tools(picture: Picture, shown: readonly Lane[]): TemplateResult {
    const hidden = lanes(picture).length - shown.length;
    const within = picture.flags.filter((f) => f.severity === 'note').length;
    const key = (kind: string, word: string): TemplateResult =>
      html`<span class="key"><svg viewBox="0 0 22 12" aria-hidden="true"><rect class=${kind} x="1" y="1" width="20" height="10" rx="2"></rect>${kind === 'working' ? nothing : svg`<path class="way" d=${kind === 'rising' ? 'M11,2L15,9H7Z' : 'M11,10L15,3H7Z'}></path>`}</svg>${word}</span>`;
    return html`<div class="tools">
      ${key('rising', 'up or opening')} ${key('falling', 'down or closing')} ${key('working', 'working')}
      <span class="spread"></span>
      <label title="Pins of checks that are within their limits"><input type="checkbox" .checked=${this.notes} @change=${() => (this.notes = !this.notes)} />within limits (${within})</label>
      <label title="Devices on which nothing happens in this run"><input type="checkbox" .checked=${this.quiet} @change=${() => (this.quiet = !this.quiet)} />quiet lanes${this.quiet ? '' : ` (${hidden})`}</label>
      <span role="group" aria-label="Time shown">
        <button @click=${() => this.store.zoom(0.5)} aria-label="Show more time" title="Show more time (−)">−</button>
        <button @click=${() => this.store.zoom(2)} aria-label="Closer" title="Closer (+)">+</button>
        <button @click=${() => this.store.showAll()} title="Show the whole run (0)">Whole run</button>
      </span>
    </div>`;
  }

  #axis(plot: Plot, left: number): TemplateResult {
    const x = Math.min(Math.max(left + plot.scale(this.state.time), left), left + plot.width);
    return html`<div class="axis"><svg width="100%" height="22" aria-hidden="true">
      ${timeTicks(plot.scale).filter((t) => Math.abs(left + t.x - x) > 36).map((t) => svg`<text x=${left + t.x} y="15" text-anchor="middle">${t.label}</text>`)}
      <text x="8" y="15">seconds</text>
      <rect class="now-box" x=${x - 26} y="2" width="52" height="17" rx="3"></rect>
      <text class="now" x=${x} y="15" text-anchor="middle">${this.state.time.toFixed(2)}</text>
    </svg></div>`;
  }

  #head(plot: Plot, left: number, height: number): unknown {
    const x = plot.scale(this.state.time);
    if (x < -1 || x > plot.width + 1) return nothing;
    return svg`<line class="play-head" x1=${left + x} x2=${left + x} y1="0" y2=${height}></line>`;
  }

  /** Lanes one under the other; one with flags has a second row for them. */
  #rows(picture: Picture, shown: readonly Lane[]): { rows: Row[]; height: number } {
    const { selection } = this.state;
    const chosen = selection.kind === 'flag' ? selection.index : -1;
    let y = 0;
    const rows = shown.map((lane): Row => {
      const flags = pinnedOn(lane, picture, chosen, this.notes);
      const row = { lane, y, flags };
      y += ROW + (flags.length > 0 ? PINS : 0);
      return row;
    });
    return { rows, height: y };
  }

  #body(picture: Picture, rows: readonly Row[], height: number, plot: Plot, left: number): TemplateResult {
    const { selection, system } = this.state;
    const chosen = selection.kind === 'event' ? selection.index : -1;
    const flag = selection.kind === 'flag' ? selection.index : -1;
    const chain = new Set(chosen < 0 ? [] : [...causesOf(picture.log, chosen), ...effectsOf(picture.log, chosen)]);
    const middleOf = (device: string): number | undefined => {
      const row = rows.find((r) => r.lane.name === device);
      return row === undefined ? undefined : row.y + ROW / 2;
    };
    const room = Math.floor((left - 20) / 6.6);
    const mark = (index: number): string => (index === chosen ? 'chosen' : chain.has(index) ? 'chain' : '');
    const involved = (l: Lane): boolean => picture.log[chosen]?.device === l.name || (picture.flags[flag]?.devices.some((d) => concerns(d, l.name)) ?? false);
    return html`<svg width="100%" height=${height} aria-hidden="true">
      <defs>
        <pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M0,0V6"></path></pattern>
        <clipPath id="window"><rect x="-8" y="0" width=${plot.width + 8 + EDGE} height=${height}></rect></clipPath>
      </defs>
      ${rows.map(
        ({ lane: l, y }) => svg`
          ${l.heading ? svg`<rect class="heading-row" x="0" y=${y} width=${left + plot.width + EDGE} height=${ROW}></rect>` : nothing}
          <text class=${`${l.heading ? 'heading' : 'name'} ${involved(l) ? 'chosen' : ''}`} x=${l.heading ? 8 : 18} y=${y + ROW / 2 + 4}><title>${l.name}</title>${clip(l.name === GEAR ? 'whole gear' : plain(l.name), room)}</text>`,
      )}
      <g transform="translate(${left} 0)" clip-path="url(#window)">
        ${timeTicks(plot.scale).map((t) => svg`<line class="grid" x1=${t.x} x2=${t.x} y1="0" y2=${height}></line>`)}
        ${rows.map(({ lane: l, y }) => l.bars.map((b) => bar(b, y, plot, l.heading)))}
        ${chosen < 0 ? nothing : arrows(picture, chosen, plot, middleOf)}
        ${rows.map(({ lane: l, y }) =>
          // Phases begin and end with their bars: only the one picked out is marked.
          visible(l.events, plot, (index) => mark(index) !== '')
            .filter((e) => !l.heading || e.index === chosen)
            .map((e) => event(plot.scale(e.t), y, e.kind, mark(e.index), () => this.store.selectEvent(e.index))),
        )}
        ${rows.map(({ flags, y }) => pins(flags, y, plot, picture, system, flag, (index) => this.store.selectFlag(index)))}
      </g>
    </svg>`;
  }

  #timeOf(e: PointerEvent | WheelEvent): number {
    const left = names(this.width);
    const box = (e.currentTarget as Element).getBoundingClientRect();
    const { span } = this.state;
    return timeScale(span, Math.max(this.width - left - EDGE, 10)).invert(e.clientX - box.left - left);
  }

  #down = (e: PointerEvent): void => {
    // A mark under the pointer is picked out by its own click.
    if (e.button !== 0 || (e.target as Element).closest('.event, .pin') !== null) return;
    this.#dragging = true;
    (e.currentTarget as Element).setPointerCapture(e.pointerId);
    this.store.pause();
    this.store.select({ kind: 'none' });
    this.#scrub(e);
  };

  #move = (e: PointerEvent): void => {
    if (this.#dragging) this.#scrub(e);
  };

  #up = (): void => {
    this.#dragging = false;
  };

  #scrub(e: PointerEvent): void {
    const [a, b] = this.state.span;
    this.store.seek(Math.min(Math.max(this.#timeOf(e), a), b));
  }

  #wheel = (e: WheelEvent): void => {
    if (!e.ctrlKey) return;
    e.preventDefault();
    this.store.zoom(e.deltaY < 0 ? 1.25 : 0.8, this.#timeOf(e));
  };
}

function clip(text: string, letters: number): string {
  return text.length <= letters ? text : `${text.slice(0, letters - 1)}…`;
}

define('ww-order-chart', OrderChart);
