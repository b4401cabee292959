import { html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { HEADING } from '../drawing/circuit/layout.js';
import type { Layout } from '../drawing/circuit/layout.js';
import { LETTER } from '../drawing/circuit/label.js';
import type { Put } from '../drawing/circuit/layer.js';
import { pressureScale } from '../drawing/pressure-scale.js';
import type { PressureScale } from '../drawing/pressure-scale.js';
import { circuitLayout } from '../model/circuit.js';
import {
  channelsNeeded,
  flowsAlong,
  gaugeAt,
  mostPressure,
  standing,
} from '../model/circuit-now.js';
import { flagOn, stateAt, stretches } from '../model/history.js';
import { brief, plain, written } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { legend } from './circuit-legend.js';
import { DASH, TOLD, jointDrawing, lineDrawing, MODULES_PER_CUBIC_METRE } from './circuit-line.js';
import { partDrawing } from './circuit-part.js';
import { circuitStyles } from './circuit.styles.js';
import { Measured } from './measured.js';
import { PanZoom, STEP } from './pan-zoom.js';
import './part-card.js';
import { shared } from './shared.styles.js';

/** A longer stretch of the play head in one go is a jump, not motion, s. */
const JUMP = 0.5;
/** A click this near a part is meant for it, px. */
const REACH = 18;
/** Size of figures at lines, modules. */
const FIGURE = 1.4;

/**
 * The hydraulic circuit in ISO 1219-1 symbols: lines by pressure, what flows, spools and pistons where the
 * run says they are. A part picked out tells about itself beside the drawing.
 */
export class Circuit extends View {
  static override properties = {
    ...View.properties,
    figures: { state: true },
    shown: { state: true },
    at: { state: true },
  };
  static override styles = [shared, circuitStyles];

  /** Whether figures stand at the lines. */
  declare figures: boolean;
  /** The part whose card is open. */
  declare shown: string;
  /** The part that Tab reaches. */
  declare at: string;

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'series',
    'time',
    'selection',
    'system',
    'large',
  ];

  #calm = matchMedia('(prefers-reduced-motion: reduce)');
  #size = new Measured(this, '.sheet');
  #lens = new PanZoom(this);
  /** How far the dashes of each piece have come, and when. */
  #runs: number[] = [];
  #ran = 0;
  /** The picture whose channels were asked for. */
  #asked: Picture | undefined;
  #scaled: { readonly key: unknown; readonly scale: PressureScale } | undefined;

  constructor() {
    super();
    this.figures = this.#calm.matches;
    this.shown = '';
    this.at = '';
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const { picture, selection } = this.state;
    if (picture === undefined) return;
    if (picture !== this.#asked) this.store.series.want(channelsNeeded(picture));
    this.#asked = picture;
    if (selection.kind === 'part') this.shown = selection.name;
    if (!picture.circuit.parts.some((p) => p.name === this.shown)) this.shown = '';
  }

  protected override render(): TemplateResult {
    const { picture, system } = this.state;
    if (picture === undefined) return html`<div class="sheet"></div>`;
    const layout = circuitLayout(picture);
    const scale = this.#scale(picture);
    const unit = written(picture.display[system]['gauge-pressure']?.unit ?? 'Pa');
    return html`
      <div class="desk">
        <div class="sheet">${this.#drawing(picture, layout, scale)}</div>
        ${
          this.shown === ''
            ? nothing
            : html`<ww-part-card
                class=${this.#cardSide(layout)}
                .store=${this.store}
                .name=${this.shown}
                @close=${this.#close}
              ></ww-part-card>`
        }
      </div>
      <footer>
        ${legend(scale, unit)}
        <div class="tools" role="group" aria-label="Drawing">
          <button aria-pressed=${this.figures} @click=${() => (this.figures = !this.figures)}>
            Figures
          </button>
          <button @click=${() => this.#lens.by(1 / STEP)} aria-label="Wider" title="Wider (−)">
            −
          </button>
          <button @click=${() => this.#lens.by(STEP)} aria-label="Closer" title="Closer (+)">
            +
          </button>
          <button @click=${() => this.#lens.fit()} title="The whole circuit (0)">Whole</button>
          <button
            @click=${() => this.dispatchEvent(new CustomEvent('fill-stage', { bubbles: true, composed: true }))}
            title="The chart below the drawing, or its room for the drawing"
          >
            Chart
          </button>
        </div>
      </footer>
    `;
  }

  /** The card lies where the part it tells about does not. */
  #cardSide({ parts, extent }: Layout): string {
    const x = parts.find((p) => p.body.part.name === this.shown)?.x ?? 0;
    return x > (extent[0] + extent[2]) / 2 ? 'left' : 'right';
  }

  /** Reaching to the most that any node has in the run. */
  #scale(picture: Picture): PressureScale {
    const { series, system } = this.state;
    const factor = picture.display[system]['gauge-pressure']?.factor ?? 1;
    // All come at once: one of them tells whether there is anything new.
    const key = [...picture.circuit.nodes.map((n) => series.get(`${n.name}.pressure`)), factor];
    const same = (this.#scaled?.key as unknown[] | undefined)?.every((k, i) => k === key[i]);
    if (this.#scaled === undefined || same !== true)
      this.#scaled = { key, scale: pressureScale(mostPressure(picture.circuit, series), factor) };
    return this.#scaled.scale;
  }

  #drawing(picture: Picture, layout: Layout, scale: PressureScale): unknown {
    const { width, height } = this.#size;
    if (width === 0 || height === 0) return nothing;
    const [l, t, r, b] = layout.extent;
    const seen = this.#lens.view({ left: l, top: t, width: r - l, height: b - t }, width, height);
    const tab = layout.parts.some((p) => p.body.part.name === this.at)
      ? this.at
      : (layout.parts[0]?.body.part.name ?? '');
    return html`<svg
      role="group"
      aria-label="Hydraulic circuit at the play head. Arrow keys go from part to part, Enter tells about one."
      class=${this.#lens.zoom > 1 ? 'closer' : ''}
      viewBox="${seen.left} ${seen.top} ${seen.width} ${seen.height}"
      @keydown=${(e: KeyboardEvent) => this.#key(e, layout)}
      @click=${this.#near}
      @wheel=${this.#lens.wheel}
      @pointerdown=${this.#lens.down}
      @pointermove=${this.#lens.move}
      @pointerup=${this.#lens.up}
      @pointercancel=${this.#lens.up}
    >
      ${this.#lines(picture, layout, scale)}
      ${layout.parts.map((put) => this.#part(picture, put, tab))}
      ${layout.headings.map(({ text, at: [x, y] }) => svg`<text class="heading" x=${x} y=${y + 0.6} font-size=${LETTER * HEADING}>${text}</text>`)}
    </svg>`;
  }

  #lines(picture: Picture, layout: Layout, scale: PressureScale): SVGTemplateResult {
    const { series, time, system } = this.state;
    const { circuit } = picture;
    const flows = flowsAlong(picture, series, layout.pieces, time);
    this.#advance(flows);
    const gas = new Set(circuit.nodes.filter((n) => n.gas).map((n) => n.name));
    const most = new Map<string, number>();
    layout.pieces.forEach(({ node }, i) =>
      most.set(node, Math.max(most.get(node) ?? 0, Math.abs(flows[i] ?? 0))),
    );
    const figure = ({ node, at: [x, y] }: Layout['spots'][number]): SVGTemplateResult => {
      const gauge = gaugeAt(circuit, series, node, time);
      const flow = most.get(node) ?? 0;
      return svg`<text data-figure=${node} x=${x} y=${y - 0.35} text-anchor="middle">${Number.isFinite(gauge) ? brief(gauge, 'gauge-pressure', picture, system) : ''}</text>
        ${flow > TOLD ? svg`<text class="rate" x=${x} y=${y - 0.35 - 1.35 * FIGURE} text-anchor="middle">${brief(flow, 'flow', picture, system)}</text>` : nothing}`;
    };
    return svg`
      ${layout.pieces.map((piece, i) =>
        lineDrawing(
          piece,
          {
            gauge: gaugeAt(circuit, series, piece.node, time),
            gas: gas.has(piece.node),
            flow: flows[i] ?? 0,
            run: this.#calm.matches ? undefined : (this.#runs[i] ?? 0),
          },
          scale,
        ),
      )}
      ${layout.joints.map((j) => jointDrawing(j.at))}
      ${this.figures ? svg`<g class="figures" font-size=${FIGURE}>${layout.spots.map(figure)}</g>` : nothing}
    `;
  }

  /** Dashes go on with the play head; when it jumps they stay. */
  #advance(flows: readonly number[]): void {
    const { time } = this.state;
    const passed = time - this.#ran;
    this.#ran = time;
    const by = passed > 0 && passed < JUMP ? passed * MODULES_PER_CUBIC_METRE : 0;
    this.#runs = flows.map((q, i) => ((this.#runs[i] ?? 0) + q * by) % DASH);
  }

  #part(picture: Picture, put: Put, tab: string): unknown {
    const { name } = put.body.part;
    const { series, time, selection } = this.state;
    const facts = picture.circuit.parts.find((p) => p.name === name);
    if (facts === undefined) return nothing;
    const flag = flagOn(picture, name, time, selection.kind === 'flag' ? selection.index : -1);
    const state = stateAt(stretches(picture, name, 'mode'), time);
    return partDrawing(
      put,
      {
        standing: standing(picture, series, facts, time),
        chosen: name === this.shown,
        mark: flag !== undefined ? `flagged-${flag.severity}` : name === this.#told() ? 'told' : '',
        spoken: [plain(name), facts.title.toLowerCase(), state, flag?.title]
          .filter((w) => w !== undefined && w !== '')
          .join(', '),
        tab: name === tab,
      },
      () => {
        if (!this.#lens.dragged) this.#choose(name);
      },
      () => (this.at = name),
    );
  }

  /** What the event is about that is picked out. */
  #told(): string {
    const { picture, selection } = this.state;
    return selection.kind === 'event' ? (picture?.log[selection.index]?.device ?? '') : '';
  }

  /** A finger that misses a small symbol by a little means it all the same. */
  #near = (e: MouseEvent): void => {
    if (this.#lens.dragged || (e.target as Element).closest('.part') !== null) return;
    let least = REACH;
    let name = '';
    for (const part of this.renderRoot.querySelectorAll<SVGElement>('.part')) {
      const b = part.getBoundingClientRect();
      const dx = Math.max(b.left - e.clientX, 0, e.clientX - b.right);
      const dy = Math.max(b.top - e.clientY, 0, e.clientY - b.bottom);
      const far = Math.hypot(dx, dy);
      if (far < least) [least, name] = [far, part.getAttribute('data-part') ?? ''];
    }
    if (name !== '') this.#choose(name);
  };

  #choose(name: string): void {
    this.at = name;
    this.shown = name;
    this.store.select({ kind: 'part', name });
  }

  #close = (): void => {
    const { shown } = this;
    this.shown = '';
    if (this.state.selection.kind === 'part') this.store.select({ kind: 'none' });
    this.#focus(shown);
  };

  #focus(name: string): void {
    this.at = name;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<SVGElement>(`[data-part="${CSS.escape(name)}"]`)?.focus(),
    );
  }

  #key(e: KeyboardEvent, layout: Layout): void {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const way = WAYS[e.key];
    if (e.key === 'Enter' || e.key === ' ') this.#choose(this.at);
    else if (e.key === '+' || e.key === '=') this.#lens.by(STEP);
    else if (e.key === '-') this.#lens.by(1 / STEP);
    else if (e.key === '0') this.#lens.fit();
    else if (e.key === 'Escape' && this.shown !== '') this.#close();
    else if (way !== undefined) this.#step(way, layout);
    else return;
    e.preventDefault();
  }

  /** To the nearest part that way. */
  #step([dx, dy]: readonly [number, number], layout: Layout): void {
    const from = layout.parts.find((p) => p.body.part.name === this.at) ?? layout.parts[0];
    if (from === undefined) return;
    let best: Put | undefined;
    let least = Infinity;
    for (const p of layout.parts) {
      const [u, v] = [p.x - from.x, p.y - from.y];
      const on = u * dx + v * dy;
      const aside = Math.abs(u * dy) + Math.abs(v * dx);
      if (on <= 0.5 || on + 3 * aside >= least || aside > 2 * on) continue;
      [best, least] = [p, on + 3 * aside];
    }
    if (best === undefined) return;
    this.#lens.show(best.x, best.y);
    this.#focus(best.body.part.name);
  }
}

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

define('ww-circuit', Circuit);
