/** What stands over the order chart: its key, which lanes and pins it shows, how much time. */
import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { DEPTHS } from '../model/depth.js';
import type { Depth } from '../model/depth.js';
import type { Store } from '../model/store.js';
import type { Picture } from '../worker/message.js';

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
  readonly store: Store;
}

export function orderTools(o: OrderTools): TemplateResult {
  const { picture, depth, hidden, notes, store } = o;
  const within = picture.flags.filter((f) => f.severity === 'note').length;
  const key = (kind: string, word: string): TemplateResult =>
    html`<span class="key"
      ><svg viewBox="0 0 22 12" aria-hidden="true">
        <rect class=${kind} x="1" y="1" width="20" height="10" rx="2"></rect>
        ${kind === 'working' ? nothing : svg`<path class="way" d=${kind === 'rising' ? 'M11,2L15,9H7Z' : 'M11,10L15,3H7Z'}></path>`}</svg
      >${word}</span
    >`;
  return html`<div class="tools">
    ${key('rising', 'up, opening')} ${key('falling', 'down, closing')}
    ${key('working', 'working, engaged')}
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
