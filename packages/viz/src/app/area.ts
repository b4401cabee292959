/** An area of the page: one view fills it, several share it as tabs. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import type { Store } from '../model/store.js';
import { views } from '../view/index.js';
import type { Area, ViewEntry, Works } from '../view/index.js';
import type { LateViews } from './late.js';

export interface AreaParts {
  readonly area: Area;
  /** Name of the view that was chosen to be on top. */
  readonly chosen: string | undefined;
  readonly store: Store;
  readonly works: Works;
  readonly late: LateViews;
  /** `focus`: the tab is to have the focus. */
  readonly choose: (name: string, focus: boolean) => void;
}

/** The bench at work; undefined for the plain swing and where it has nothing to do. */
export function benchOf(store: Store): ViewEntry | undefined {
  const { state } = store;
  return views.find((v) => v.area === 'bench' && v.name === state.bench);
}

export function areaOf(parts: AreaParts): TemplateResult {
  const { area, chosen, store, works, late, choose } = parts;
  const bench = benchOf(store);
  const charts = area === 'stage' && bench?.charts === true;
  const here = views.filter(
    (v) =>
      (v.area === area || (charts && v.area === 'chart')) &&
      (v.on === undefined || v.on === bench?.name),
  );
  const top =
    here.find((v) => v.name === chosen) ??
    here.find((v) => v.on !== undefined || (charts && v.area === 'chart')) ??
    here[0];
  if (top === undefined) return html``;
  if (here.length === 1) return html`<div class="content">${late.show(top, store, works)}</div>`;
  return html`
    <div
      role="tablist"
      aria-label="What to show"
      @keydown=${(e: KeyboardEvent) => tabKey(e, here, top, choose)}
    >
      ${here.map((v) => html`<button role="tab" id="tab-${v.name}" aria-controls="panel-${area}" aria-selected=${v === top} tabindex=${v === top ? 0 : -1} @click=${() => choose(v.name, false)}>${v.title} <span class="badge">${v.badge?.(store.state)}</span></button>`)}
    </div>
    ${keyed(top.name, html`<div class="content" role="tabpanel" id="panel-${area}" aria-labelledby="tab-${top.name}" tabindex="0">${late.show(top, store, works)}</div>`)}
  `;
}

function tabKey(
  e: KeyboardEvent,
  here: readonly ViewEntry[],
  top: ViewEntry,
  choose: AreaParts['choose'],
): void {
  const by = { ArrowLeft: -1, ArrowRight: 1, Home: -Infinity, End: Infinity }[e.key];
  if (by === undefined) return;
  const at = Number.isFinite(by)
    ? (here.indexOf(top) + by + here.length) % here.length
    : by < 0
      ? 0
      : here.length - 1;
  const next = here[at];
  if (next === undefined) return;
  e.preventDefault();
  choose(next.name, true);
}

/** Which workplace: the plain swing, or one of the benches. */
export function benchBar(store: Store, choose: (name: string) => void): TemplateResult {
  const now = benchOf(store)?.name ?? '';
  const button = (name: string, title: string, fits: boolean): TemplateResult =>
    html`<button
      aria-pressed=${now === name}
      ?disabled=${!fits && now !== name}
      title=${fits ? '' : 'This aircraft has nothing for it'}
      @click=${() => choose(name)}
    >
      ${title}
    </button>`;
  return html`<span class="benches" role="group" aria-label="Workplace"
    >${button('', 'Swing', true)}${views
      .filter((v) => v.area === 'bench')
      .map((v) => button(v.name, v.title, v.fits?.(store.state) ?? true))}</span
  >`;
}
