import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { timeScale, timeTicks } from '../drawing/axis.js';
import { eventAt, reached } from '../model/history.js';
import { lanesAt } from '../model/depth.js';
import type { Depth } from '../model/depth.js';
import { lanes } from '../model/lanes.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { Measured } from './measured.js';
import { EDGE, orderBody, stack } from './order-body.js';
import { ROW } from './order-marks.js';
import type { Plot } from './order-marks.js';
import { orderTools } from './order-tools.js';
import { orderChartStyles } from './order-chart.styles.js';
import { reveal } from './reveal.js';
import { shared } from './shared.styles.js';

/** Room for the lanes' names, px; less on a narrow page. */
const names = (width: number): number => (width < 620 ? 130 : 178);
/** Height of the axis, px. */
const AXIS = 23;

/**
 * The order chart: a lane per unit and device, bars while something moves or works, marks for
 * events, arrows from cause to effect for the one picked out, flags pinned where they happen.
 */
export class OrderChart extends View {
  static override properties = {
    ...View.properties,
    depth: { state: true },
    notes: { state: true },
  };
  static override styles = [shared, orderChartStyles];

  /** Which lanes are shown; undefined until the user chooses. */
  declare depth: Depth | undefined;
  /** Shows flags within limits. */
  declare notes: boolean;

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'time',
    'selection',
    'span',
    'system',
    'large',
  ];

  readonly #size = new Measured(this, '.scroll');
  #dragging = false;

  constructor() {
    super();
    this.depth = undefined;
    this.notes = false;
  }

  protected override updated(): void {
    const { selection } = this.state;
    if (selection !== this.#followed) {
      this.#followed = selection;
      reveal(
        this.renderRoot.querySelector('.event.chosen, .pin.chosen'),
        (AXIS + ROW) * this.#size.scale,
      );
    }
  }
  #followed: State['selection'] = { kind: 'none' };

  protected override render(): TemplateResult {
    const { picture, span, selection, system } = this.state;
    if (picture === undefined) return html``;
    const depth = this.depth ?? 'gear';
    const shown = lanesAt(picture, depth, selection);
    const left = names(this.#size.width);
    const width = Math.max(this.#size.width - left - EDGE, 10);
    const plot: Plot = { scale: timeScale(span, width), width };
    const flag = selection.kind === 'flag' ? selection.index : -1;
    const { rows, height } = stack(picture, shown, flag, this.notes);
    return html`
      ${orderTools({
        picture,
        depth,
        hidden: lanes(picture).length - shown.length,
        notes: this.notes,
        deepen: this.#deepen,
        note: () => (this.notes = !this.notes),
        store: this.store,
      })}
      <div class="scroll">
        ${
          this.#size.width === 0
            ? nothing
            : [
                this.#axis(plot, left),
                html`<div
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
                  ${guard(
                    [
                      picture,
                      span,
                      selection,
                      system,
                      depth,
                      this.notes,
                      this.#size.width,
                      this.#size.scale,
                    ],
                    () =>
                      orderBody({
                        picture,
                        rows,
                        height,
                        plot,
                        left,
                        scale: this.#size.scale,
                        selection,
                        system,
                        store: this.store,
                      }),
                  )}
                  <svg
                    class="head"
                    viewBox="0 0 ${this.#size.width} ${height}"
                    width="100%"
                    height=${height * this.#size.scale}
                    aria-hidden="true"
                  >
                    ${this.#head(plot, left, height)}
                  </svg>
                </div>`,
              ]
        }
      </div>
    `;
  }

  #valueText(picture: Picture): string {
    const entry = picture.log[eventAt(picture.log, this.state.time)];
    const last = entry === undefined ? '' : `; last event: ${plain(entry.device)} ${entry.to}`;
    return `${this.state.time.toFixed(2)} seconds${last}`;
  }

  #deepen = (depth: Depth | undefined): void => {
    this.depth = depth;
  };

  #axis(plot: Plot, left: number): TemplateResult {
    const x = Math.min(Math.max(left + plot.scale(this.state.time), left), left + plot.width);
    const box = Math.min(x, this.#size.width - 27);
    return html`<div class="axis">
      <svg
        viewBox="0 0 ${this.#size.width} 22"
        width="100%"
        height=${22 * this.#size.scale}
        aria-hidden="true"
      >
        ${timeTicks(plot.scale)
          .filter((t) => Math.abs(left + t.x - x) > 36)
          .map((t) => svg`<text x=${left + t.x} y="15" text-anchor="middle">${t.label}</text>`)}
        <text x="8" y="15">seconds</text>
        <rect class="now-box" x=${box - 26} y="2" width="52" height="17" rx="3"></rect>
        <text class="now" x=${box} y="15" text-anchor="middle">${this.state.time.toFixed(2)}</text>
      </svg>
    </div>`;
  }

  #head(plot: Plot, left: number, height: number): unknown {
    const x = plot.scale(this.state.time);
    if (x < -1 || x > plot.width + 1) return nothing;
    return svg`<line class="play-head" x1=${left + x} x2=${left + x} y1="0" y2=${height}></line>`;
  }

  #timeOf(e: PointerEvent | WheelEvent): number {
    const left = names(this.#size.width);
    const box = (e.currentTarget as Element).getBoundingClientRect();
    const { span } = this.state;
    return timeScale(span, Math.max(this.#size.width - left - EDGE, 10)).invert(
      (e.clientX - box.left) / this.#size.scale - left,
    );
  }

  #down = (e: PointerEvent): void => {
    // A mark under the pointer is picked out by its own click.
    if (e.button !== 0 || (e.target as Element).closest('.event, .pin') !== null) return;
    this.#dragging = true;
    (e.currentTarget as Element).setPointerCapture(e.pointerId);
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
    this.store.scrub(Math.min(Math.max(this.#timeOf(e), a), b));
  }

  #wheel = (e: WheelEvent): void => {
    if (!e.ctrlKey) return;
    e.preventDefault();
    this.store.zoom(e.deltaY < 0 ? 1.25 : 0.8, this.#timeOf(e));
  };
}

define('ww-order-chart', OrderChart);
