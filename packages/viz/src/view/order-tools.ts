/** What stands over the order chart: its key, which lanes and pins it shows, how much time. */
import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { DEPTHS } from '../model/depth.js';
import type { Depth } from '../model/depth.js';
import type { Store } from '../model/store.js';
import type { Picture } from '../worker/message.js';
import type { Works } from './index.js';

const DEPTH_WORD: Readonly<Record<Depth, string>> = {
  gear: 'legs, doors, locks',
  working: 'all that work',
  all: 'all there are',
};

export interface OrderTools {
  readonly picture: Picture;
  readonly depth: Depth;
  /** How many lanes are not shown. */
  readonly hidden: number;
  /** Whether flags within limits are pinned. */
  readonly notes: boolean;
  readonly deepen: (depth: Depth | undefined) => void;
  readonly note: () => void;
  /** How many times measured by hand there are. */
  readonly readings: number;
  readonly measure: () => void;
  readonly store: Store;
  readonly works: Works;
}

export function orderTools(o: OrderTools): TemplateResult {
  const { picture, depth, hidden, notes, store } = o;
  const within = picture.flags.filter((f) => f.severity === 'note').length;
  return html`<div class="tools">
    <button
      aria-pressed=${store.state.marks.length === 1}
      @click=${() => o.works.between.hold()}
      title="Hold what is picked out; the time to the next mark is read off (M)"
    >
      Hold mark
    </button>
    <button
      aria-haspopup="dialog"
      @click=${o.measure}
      title="Take down times read off a watch, to lay them over the run"
    >
      Measured (${o.readings})
    </button>
    <span class="spread"></span>
    <label title="Pins of checks that are within their limits"
      ><input type="checkbox" .checked=${notes} @change=${o.note} />within limits (${within})</label
    >
    <label title=${hidden > 0 ? `${hidden} lanes are not shown` : 'Every lane is shown'}
      >Lanes
      <select
        @change=${(e: Event) => o.deepen(DEPTHS.find((d) => d === (e.target as HTMLSelectElement).value))}
      >
        ${DEPTHS.map((d) => html`<option value=${d} .selected=${d === depth}>${DEPTH_WORD[d]}</option>`)}
      </select></label
    >
    <span role="group" aria-label="Time shown">
      <button
        @click=${() => store.zoom(0.5)}
        aria-label="Show more time"
        title="Show more time (−)"
      >
        −
      </button>
      <button @click=${() => store.zoom(2)} aria-label="Closer" title="Closer (+)">+</button>
      <button @click=${() => store.showAll()} title="Show the whole run (0)">All</button>
    </span>
  </div>`;
}

/** What the bars mean; under the last lane. */
export function orderKey(): TemplateResult {
  const key = (kind: string, word: string): TemplateResult =>
    html`<span class="key"
      ><svg viewBox="0 0 22 12" aria-hidden="true">
        <rect class=${kind} x="1" y="1" width="20" height="10" rx="2"></rect>
        ${kind === 'working' ? nothing : svg`<path class="way" d=${kind === 'rising' ? 'M11,2L15,9H7Z' : 'M11,10L15,3H7Z'}></path>`}</svg
      >${word}</span
    >`;
  return html`<p class="keys">
    ${key('rising', 'up, opening')} ${key('falling', 'down, closing')}
    ${key('working', 'working, engaged')}
    <span class="key"
      ><svg viewBox="0 0 22 12" aria-hidden="true">
        <path class="event" d="M11,0l6,6l-6,6l-6,-6Z"></path></svg
      >operator</span
    >
    <span class="key"
      ><svg viewBox="0 0 22 12" aria-hidden="true">
        <path class="event" d="M9.4,0.5h3.2v11h-3.2Z"></path></svg
      >event</span
    >
    <span class="key"
      ><svg viewBox="0 0 22 12" class="measured off" aria-hidden="true">
        <path class="whisker" d="M1,6H21M1,2v8M21,2v8"></path>
        <circle cx="11" cy="6" r="4"></circle></svg
      >measured by hand</span
    >
  </p>`;
}
