import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { timeScale } from '../drawing/axis.js';
import { between } from '../model/between.js';
import { eventAt, reached } from '../model/history.js';
import { lanesAt } from '../model/depth.js';
import type { Depth } from '../model/depth.js';
import { lanes } from '../model/lanes.js';
import { markOf, placeOf } from '../model/marks.js';
import { placed } from '../model/measured.js';
import type { Placed } from '../model/measured.js';
import { plain } from '../model/sentence.js';
import type { Selection, State } from '../model/state.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { betweenBar } from './between-bar.js';
import { chartStyles } from './chart.styles.js';
import type { Works } from './index.js';
import { Measured } from './measured.js';
import './measured-form.js';
import type { MeasuredForm } from './measured-form.js';
import { axisHeight, orderAxis } from './order-axis.js';
import { EDGE, orderBody, stack } from './order-body.js';
import type { Row } from './order-body.js';
import { ROW } from './order-marks.js';
import type { Plot } from './order-marks.js';
import { extensions, loopOverLanes } from './order-overlay.js';
import { orderKey, orderTools } from './order-tools.js';
import { orderChartStyles } from './order-chart.styles.js';
import { reveal } from './reveal.js';
import { shared } from './shared.styles.js';

/** Room for the lanes' names, px; less on a narrow page. */
const names = (width: number): number => (width < 620 ? 130 : 178);

/**
 * The order chart: a lane per unit and device, bars while something moves or works, marks for
 * events, arrows from cause to effect for the one picked out, flags pinned where they happen.
 */
export class OrderChart extends View {
  static override properties = {
    ...View.properties,
    works: { attribute: false },
    depth: { state: true },
    notes: { state: true },
  };
  static override styles = [shared, chartStyles, orderChartStyles];

  declare works: Works;
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
    'measured',
    'marks',
    'loop',
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
        (axisHeight(between(this.state)) + ROW) * this.#size.scale,
      );
    }
  }
  #followed: State['selection'] = { kind: 'none' };

  protected override render(): TemplateResult {
    const { picture, span, selection, system, time, loop, marks } = this.state;
    if (picture === undefined) return html``;
    const depth = this.depth ?? 'gear';
    const measured = this.state.measured.flatMap((m) => placed(picture, m) ?? []);
    const read = between(this.state);
    const also = marks.flatMap((m) => placeOf(picture, m, this.state.measured)?.on[0] ?? []);
    const shown = lanesAt(picture, depth, selection, [
      ...measured.map((p) => p.measured.on),
      ...also,
    ]);
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
        readings: this.state.measured.length,
        measure: this.#openForm,
        store: this.store,
        works: this.works,
      })}
      ${read === undefined ? nothing : betweenBar(read, this.works)}
      <ww-measured-form .store=${this.store} .work=${this.works.measured}></ww-measured-form>
      <div class="scroll">
        ${
          this.#size.width === 0
            ? nothing
            : [
                orderAxis({
                  plot,
                  left,
                  width: this.#size.width,
                  scale: this.#size.scale,
                  time,
                  loop,
                  between: read,
                }),
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
                      this.state.measured,
                      marks,
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
                        measured,
                        pick: this.#pick,
                        pickMeasured: this.#pickMeasured,
                      }),
                  )}
                  <svg
                    class="head"
                    viewBox="0 0 ${this.#size.width} ${height}"
                    width="100%"
                    height=${height * this.#size.scale}
                    aria-hidden="true"
                  >
                    ${this.#head(plot, left, rows, height)}
                  </svg>
                </div>`,
                orderKey(),
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

  #openForm = (): void => this.renderRoot.querySelector<MeasuredForm>('ww-measured-form')?.open();

  #deepen = (depth: Depth | undefined): void => {
    this.depth = depth;
  };

  #head(plot: Plot, left: number, rows: readonly Row[], height: number): unknown {
    const { time, loop } = this.state;
    const read = between(this.state);
    const x = plot.scale(time);
    const middleOf = (names: readonly string[]): number | undefined => {
      const row = rows.find((r) => names.includes(r.lane.name));
      return row && row.y + ROW / 2;
    };
    return svg`
      ${loop === undefined ? nothing : loopOverLanes(loop, plot, left, height)}
      ${read === undefined ? nothing : extensions(read, plot, left, middleOf, height)}
      ${x < -1 || x > plot.width + 1 ? nothing : svg`<line class="play-head" x1=${left + x} x2=${left + x} y1="0" y2=${height}></line>`}`;
  }

  /** Picks a mark out; with Shift reaches from what is picked out to it. */
  #pick = (selection: Selection, e: MouseEvent): void => {
    const { picture } = this.state;
    if (picture === undefined) return;
    if (e.shiftKey) this.works.between.reach(markOf(picture, selection, 0));
    else if (selection.kind === 'event') this.store.selectEvent(selection.index);
    else if (selection.kind === 'flag') this.store.selectFlag(selection.index);
  };

  #pickMeasured = ({ measured, t }: Placed, e: MouseEvent): void => {
    const { on, event, since } = measured;
    if (e.shiftKey) this.works.between.reach({ kind: 'measured', on, event, since });
    else this.store.scrub(t);
  };

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
    if (e.button !== 0 || (e.target as Element).closest('.event, .pin, .measured') !== null) return;
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
