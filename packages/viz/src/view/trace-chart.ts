import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { timeScale } from '../drawing/axis.js';
import { fillDense } from '../drawing/dense-columns.js';
import { LINE, paintLines } from '../drawing/trace-paint.js';
import { layOut } from '../drawing/trace-layout.js';
import type { Box, Layout } from '../drawing/trace-layout.js';
import { reached } from '../model/history.js';
import { seconds } from '../model/sentence.js';
import { between } from '../model/span.js';
import type { State } from '../model/state.js';
import type { TracePanel } from '../model/trace-panels.js';
import { define, View } from './base.js';
import { chartStyles } from './chart.styles.js';
import { Measured } from './measured.js';
import { Scheme } from './scheme.js';
import { shared } from './shared.styles.js';
import { AXIS, axisOf, backOf, headOf, labelsOf } from './trace-chart-parts.js';
import { traceChartStyles } from './trace-chart.styles.js';

/** Presses of an arrow from one end of the window to the other. */
const PRESSES = 50;

/** Panels of traces on one axis of time: the play head is dragged along, a stretch is marked to go closer. */
export class TraceChart extends View {
  static override properties = {
    ...View.properties,
    panels: { attribute: false },
    fit: { type: Boolean },
    marking: { type: Boolean },
    mark: { state: true },
  };
  static override styles = [shared, chartStyles, traceChartStyles];

  declare panels: readonly TracePanel[];
  /** Axes are taken from what is shown, not from the whole run. */
  declare fit: boolean;
  /** Dragging marks a stretch instead of moving the play head. */
  declare marking: boolean;
  /** The stretch being marked, s. */
  declare mark: readonly [number, number] | undefined;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'time', 'span', 'large'];

  readonly #size = new Measured(this, '.scroll');
  readonly #scheme = new Scheme(this);
  #drag: 'head' | 'mark' | undefined;
  #layout: Layout<TracePanel> | undefined;
  #laid: readonly unknown[] = [];
  #painted: readonly unknown[] = [];

  constructor() {
    super();
    this.panels = [];
    this.fit = false;
    this.marking = false;
    this.mark = undefined;
  }

  /** Where everything stands, for files of it. */
  box(width: number): Box {
    const narrow = width < 560;
    return {
      span: this.state.span,
      width,
      height: this.#size.height - AXIS - 4,
      left: narrow ? 46 : 58,
      right: narrow ? 118 : Math.min(250, Math.max(190, width * 0.22)),
      row: narrow ? 26 : 15,
      fit: this.fit,
    };
  }

  protected override render(): TemplateResult {
    const { picture } = this.state;
    if (picture === undefined) return html``;
    const { width, height, scale } = this.#size;
    const { dark } = this.#scheme;
    const { time } = this.state;
    const box = this.box(width);
    const key = [this.panels, this.state.span, width, height, this.fit];
    if (this.#layout === undefined || differ(this.#laid, key)) {
      this.#layout = layOut(this.panels, box);
      this.#laid = key;
    }
    const layout = this.#layout;
    const drawn = (inner: unknown, kind: string): TemplateResult =>
      html`<svg
        class=${kind}
        viewBox="0 0 ${width} ${layout.height}"
        width="100%"
        height=${layout.height * scale}
        aria-hidden="true"
      >
        ${inner}
      </svg>`;
    return html`<div class="scroll">
      ${
        width === 0
          ? nothing
          : html`${axisOf(layout, box, this.state, scale)}
              <div
                class=${this.marking ? 'body marking' : 'body'}
                tabindex="0"
                role="slider"
                aria-label="Traces; play head"
                aria-valuemin="0"
                aria-valuemax=${reached(picture)}
                aria-valuenow=${this.state.time.toFixed(3)}
                aria-valuetext=${`${this.state.time.toFixed(2)} seconds`}
                aria-description="Shift with left or right arrow marks a stretch of time, Enter goes closer to it, Escape lets it go."
                @pointerdown=${this.#down}
                @pointermove=${this.#move}
                @pointerup=${this.#up}
                @pointercancel=${this.#cancel}
                @dblclick=${() => this.store.showAll()}
                @wheel=${this.#wheel}
                @keydown=${this.#key}
              >
                ${guard([layout, scale], () => drawn(backOf(layout, box), 'back'))}
                <canvas></canvas>
                ${drawn([labelsOf(layout, box, time, dark), headOf(layout, box, this.state, dark), this.#marked(layout, box)], 'front')}
              </div>`
      }
    </div>`;
  }

  protected override updated(): void {
    const canvas = this.renderRoot.querySelector('canvas');
    const layout = this.#layout;
    if (canvas === null || layout === undefined) return;
    const { width, scale } = this.#size;
    const { dark } = this.#scheme;
    const key = [layout, dark, scale, devicePixelRatio, canvas];
    if (!differ(this.#painted, key)) return;
    this.#painted = key;
    const pixels = devicePixelRatio * scale;
    canvas.width = Math.round(width * pixels);
    canvas.height = Math.round(layout.height * pixels);
    const g = canvas.getContext('2d');
    if (g === null) return;
    const left = Math.round(this.box(width).left * pixels);
    const image = g.createImageData(canvas.width, canvas.height);
    fillDense({ image, scale: pixels, left, half: LINE / 2 }, layout, dark);
    g.putImageData(image, 0, 0);
    g.setTransform(pixels, 0, 0, pixels, left, 0);
    paintLines(g, layout, dark, true);
  }

  #marked({ plotWidth, height }: Layout, { left }: Box): unknown {
    if (this.mark === undefined) return nothing;
    const scale = timeScale(this.state.span, plotWidth);
    const [a, b] = this.mark.map(scale).sort((p, q) => p - q) as [number, number];
    return svg`<rect class="mark" x=${left + a} y="0" width=${Math.max(b - a, 1)} height=${height}></rect>`;
  }

  #timeOf(e: PointerEvent | WheelEvent): number {
    const { width, scale } = this.#size;
    const [a, b] = this.state.span;
    const { left } = this.box(width);
    const plot = timeScale([a, b], this.#layout?.plotWidth ?? 1);
    const x = (e.clientX - (e.currentTarget as Element).getBoundingClientRect().left) / scale;
    return Math.min(Math.max(plot.invert(x - left), a), b);
  }

  #down = (e: PointerEvent): void => {
    if (e.button !== 0) return;
    // The labels beside the plot are no times.
    if ((e.target as Element).closest('.label') !== null) return;
    (e.currentTarget as Element).setPointerCapture(e.pointerId);
    const at = this.#timeOf(e);
    this.#drag = e.shiftKey || this.marking ? 'mark' : 'head';
    if (this.#drag === 'mark') this.mark = [at, at];
    else this.store.scrub(at);
  };

  #move = (e: PointerEvent): void => {
    if (this.#drag === 'head') this.store.scrub(this.#timeOf(e));
    else if (this.#drag === 'mark' && this.mark !== undefined)
      this.mark = [this.mark[0], this.#timeOf(e)];
  };

  #up = (): void => {
    if (this.#drag === 'mark') this.#closer();
    this.#drag = undefined;
  };

  #cancel = (): void => {
    this.#drag = undefined;
    this.mark = undefined;
  };

  /** Goes closer to what is marked; a mere click marks nothing. */
  #closer(): void {
    const { picture, span } = this.state;
    const { mark } = this;
    this.mark = undefined;
    if (mark === undefined || picture === undefined) return;
    const width = Math.abs(mark[1] - mark[0]);
    if (width < 0.004 * (span[1] - span[0])) return;
    const shown = between(mark[0], mark[1], picture.duration);
    const said = `Shown from ${shown[0].toFixed(2)} to ${shown[1].toFixed(2)} seconds.`;
    this.store.set({ span: shown, said });
  }

  #key = (e: KeyboardEvent): void => {
    const { span, time } = this.state;
    const [a, b] = span;
    const by = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (e.shiftKey && by !== undefined) {
      const [from, to] =
        this.mark ?? ([time, time].map((t) => Math.min(Math.max(t, a), b)) as [number, number]);
      const end = Math.min(Math.max(to + (by * (b - a)) / PRESSES, a), b);
      this.mark = [from, end];
      this.store.set({
        said: `Marked from ${seconds(Math.min(from, end))} to ${seconds(Math.max(from, end))}.`,
      });
    } else if (e.key === 'Enter' && this.mark !== undefined) this.#closer();
    else if (e.key === 'Escape' && this.mark !== undefined) this.mark = undefined;
    else return;
    e.preventDefault();
  };

  #wheel = (e: WheelEvent): void => {
    if (!e.ctrlKey) return;
    e.preventDefault();
    this.store.zoom(e.deltaY < 0 ? 1.25 : 0.8, this.#timeOf(e));
  };
}

function differ(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length !== b.length || a.some((x, i) => x !== b[i]);
}

define('ww-trace-chart', TraceChart);
