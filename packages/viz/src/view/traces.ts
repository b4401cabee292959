import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { State } from '../model/state.js';
import { tracePanels } from '../model/trace-panels.js';
import type { TracePanel } from '../model/trace-panels.js';
import { chosenOf } from '../model/traces.js';
import type { TracesWork } from '../model/traces.js';
import { define, View } from './base.js';
import './recordings.js';
import { chartStyles } from './chart.styles.js';
import { shared } from './shared.styles.js';
import './trace-chart.js';
import './trace-chooser.js';
import { saveTraces } from './trace-files.js';
import type { FileKind } from './trace-files.js';
import { traceValues } from './trace-values.js';
import { tracesStyles } from './traces.styles.js';

type Pane = '' | 'choose' | 'values' | 'recordings' | 'save';

/** What the panels depend on. */
const DRAWN = ['picture', 'series', 'system', 'traces'] as const;

/** Channels of the run over time, chosen by name, with recordings laid over; saved as files. */
export class Traces extends View {
  static override properties = {
    ...View.properties,
    work: { attribute: false },
    pane: { state: true },
    fit: { state: true },
    marking: { state: true },
  };
  static override styles = [shared, chartStyles, tracesStyles];

  declare work: TracesWork;
  /** What is open beside the chart. */
  declare pane: Pane;
  declare fit: boolean;
  declare marking: boolean;

  protected readonly watches: readonly (keyof State)[] = [...DRAWN, 'time', 'span'];

  #panels: readonly TracePanel[] = [];
  #from: readonly unknown[] = [];
  #recordings = 0;

  constructor() {
    super();
    this.pane = '';
    this.fit = false;
    this.marking = false;
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { state } = this;
    this.store.series.want(
      chosenOf(state).map((c) => c.name),
      true,
    );
    const from = DRAWN.map((key) => state[key]);
    if (from.some((x, i) => x !== this.#from[i])) {
      this.#panels = tracePanels(state);
      this.#from = from;
    }
    // A file that was dropped shows what became of it.
    const { length } = state.traces.recordings;
    if (length > this.#recordings) this.pane = 'recordings';
    this.#recordings = length;
  }

  protected override render(): TemplateResult {
    const { picture, traces } = this.state;
    if (picture === undefined) return html``;
    const panels = this.#panels;
    const shown = panels.reduce((n, p) => n + p.lines.length, 0);
    const { pane } = this;
    return html`
      <div class="tools">
        ${this.#paneButton('choose', 'Choose', String(shown))}
        ${this.#paneButton('values', 'Values', '')}
        ${this.#paneButton('recordings', 'Recordings', traces.recordings.length === 0 ? '' : String(traces.recordings.length))}
        ${this.#paneButton('save', 'Save', '')}
        <span class="spread"></span>
        <label title="Axes from what is shown, not from the whole run"
          ><input type="checkbox" .checked=${this.fit} @change=${() => (this.fit = !this.fit)} />fit
          heights</label
        >
        <button
          aria-pressed=${this.marking}
          title="Dragging marks a stretch to go closer to (or hold Shift)"
          @click=${() => (this.marking = !this.marking)}
        >
          Drag to zoom
        </button>
        <span role="group" aria-label="Time shown">
          <button
            @click=${() => this.store.zoom(0.5)}
            aria-label="Show more time"
            title="Show more time (−)"
          >
            −
          </button>
          <button @click=${() => this.store.zoom(2)} aria-label="Closer" title="Closer (+)">
            +
          </button>
          <button @click=${() => this.store.showAll()} title="Show the whole run (0)">All</button>
        </span>
      </div>
      <div class=${pane === '' ? 'split' : 'split with-pane'}>
        ${
          shown === 0
            ? html`<p class="empty soft">No traces are shown. Choose some.</p>`
            : html`<ww-trace-chart
                .store=${this.store}
                .panels=${panels}
                .fit=${this.fit}
                .marking=${this.marking}
              ></ww-trace-chart>`
        }
        ${
          pane === ''
            ? nothing
            : html`<div class="pane" role="region" aria-label=${TITLES[pane]}>
                ${this.#inPane(pane)}
              </div>`
        }
      </div>
      ${pane === 'values' ? nothing : html`<div class="aside">${traceValues(panels, this.state)}</div>`}
    `;
  }

  #paneButton(pane: Exclude<Pane, ''>, title: string, badge: string): TemplateResult {
    const open = this.pane === pane;
    return html`<button
      data-pane=${pane}
      aria-expanded=${open}
      @click=${() => (this.pane = open ? '' : pane)}
    >
      ${title}${badge === '' ? nothing : html` <span class="badge">${badge}</span>`}
    </button>`;
  }

  #inPane(pane: Exclude<Pane, ''>): TemplateResult {
    const { store, work } = this;
    if (pane === 'choose')
      return html`<ww-trace-chooser .store=${store} .work=${work}></ww-trace-chooser>`;
    if (pane === 'recordings')
      return html`<ww-recordings .store=${store} .work=${work}></ww-recordings>`;
    if (pane === 'values')
      return html`<div class="scroll" tabindex="0" role="region" aria-label="Table of values">
        ${traceValues(this.#panels, this.state)}
      </div>`;
    return html`<div class="save">
      <p class="soft">What is chosen; pictures have the stretch of time that is shown.</p>
      ${this.#save('png', 'Picture')} ${this.#save('svg', 'Drawing')}
      ${this.#save('csv', 'Figures')}
    </div>`;
  }

  #save(kind: FileKind, what: string): TemplateResult {
    return html`<button @click=${() => void saveTraces(kind, this.#panels, this.state, this.fit)}>
      ${what} (${kind.toUpperCase()})
    </button>`;
  }
}

const TITLES: Readonly<Record<Exclude<Pane, ''>, string>> = {
  choose: 'Choose traces',
  values: 'Values',
  recordings: 'Recordings',
  save: 'Save as a file',
};

define('ww-traces', Traces);
