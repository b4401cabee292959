/** The buttons of one drawing of the bay: another view, another way to look, all the room. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { VIEWS } from '../drawing/projection.js';
import type { Projection, ViewName } from '../drawing/projection.js';
import { sign } from './sign.js';

const TITLES: Readonly<Record<ViewName, string>> = { front: 'Front', side: 'Side', plan: 'Plan' };

/** Which way a view looks that can be turned. */
export type Facing = Exclude<Projection['name'], 'side'>;

/** Where it looks from next. */
const NEXT: Readonly<Record<Facing, Facing>> = {
  ahead: 'behind',
  behind: 'ahead',
  above: 'below',
  below: 'above',
};

export interface BayTools {
  readonly view: ViewName;
  readonly shown: readonly ViewName[];
  readonly alone: ViewName | undefined;
  readonly facing: Projection['name'];
  readonly choose: (view: ViewName) => void;
  readonly turn: (to: Facing) => void;
  readonly enlarge: (view: ViewName | undefined) => void;
}

export function bayTools(o: BayTools): TemplateResult {
  const { view, shown, alone, facing } = o;
  const others = view === shown.at(-1) ? VIEWS.filter((v) => !shown.includes(v)) : [];
  const to = facing === 'side' ? undefined : NEXT[facing];
  const title = TITLES[view];
  return html`<span class="tools">
    ${others.map(
      (v) =>
        html`<button @click=${() => o.choose(v)} title="Show the ${TITLES[v].toLowerCase()} view">
          ${TITLES[v]}
        </button>`,
    )}
    ${
      to === undefined
        ? nothing
        : html`<button
            class="icon"
            @click=${() => o.turn(to)}
            aria-label="Look from ${to}"
            title="Look from ${to}"
          >
            ${sign('turn')}
          </button>`
    }
    ${
      shown.length === 1 && alone === undefined
        ? nothing
        : html`<button
            class="icon"
            aria-pressed=${alone === view}
            @click=${() => o.enlarge(alone === view ? undefined : view)}
            aria-label="${title} view alone"
            title=${alone === view ? 'All views again (Esc)' : 'This view alone'}
          >
            ${sign('enlarge')}
          </button>`
    }
  </span>`;
}
