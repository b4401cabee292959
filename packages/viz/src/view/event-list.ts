import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { effectsOf, eventAt, isStart } from '../model/history.js';
import { count, plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { LogEntry, Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { listStyles } from './list.styles.js';
import { reveal } from './reveal.js';
import { shared } from './shared.styles.js';

/** A hand pump's swing has thousands of events: this many around the play head are listed. */
const MOST = 160;

/** Every event of the run with its cause; the one at the play head is marked. */
export class EventList extends View {
  static override styles = [
    shared,
    listStyles,
    css`
      summary,
      .cut,
      .start {
        padding: 0.3rem 0.7rem;
        font-size: 0.86rem;
        color: var(--ink-soft);
      }
      summary {
        cursor: pointer;
      }
      .t {
        flex: 0 0 4rem;
        text-align: right;
        font-variant-numeric: tabular-nums;
      }
      .current .t {
        font-weight: 700;
      }
      .current {
        box-shadow: inset 4px 0 var(--accent);
      }
      .links {
        padding: 0 0.7rem 0.5rem 5.3rem;
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem;
      }
      .links button {
        font-size: 0.82rem;
        min-height: 28px;
        text-align: left;
        white-space: normal;
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'time', 'selection'];

  protected override updated(): void {
    const { selection, picture, time } = this.state;
    const at =
      selection.kind === 'event'
        ? selection.index
        : picture === undefined
          ? -1
          : eventAt(picture.log, time);
    if (at === this.#followed) return;
    this.#followed = at;
    reveal(
      this.renderRoot.querySelector('li.chosen') ?? this.renderRoot.querySelector('li.current'),
    );
  }
  #followed = -1;

  protected override render(): TemplateResult {
    const { picture, time, selection } = this.state;
    if (picture === undefined) return html``;
    if (picture.log.length === 0) return html`<p class="soft">Nothing happened in this run.</p>`;
    const starts = picture.log.filter(isStart);
    // Before the first event that one is the way into the list.
    const current = Math.max(eventAt(picture.log, time), starts.length);
    const chosen = selection.kind === 'event' ? selection.index : -1;
    const events = picture.log.slice(starts.length);
    const at = Math.max((chosen >= 0 ? chosen : current) - starts.length, 0);
    const from = Math.max(Math.min(at - MOST / 2, events.length - MOST), 0);
    const shown = events.slice(from, from + MOST);
    const later = events.length - from - shown.length;
    return html`
      <details>
        <summary>How things stood at the start</summary>
        <ol>
          ${guard([picture], () => starts.map((e) => html`<li class="start">${plain(e.device)}: ${e.to}</li>`))}
        </ol>
      </details>
      ${from > 0 ? html`<p class="cut">${count(from, 'earlier event')}: step back to see them</p>` : nothing}
      <ol @keydown=${this.#walk}>
        ${guard([picture, current, chosen, from], () => shown.map((e) => this.#item(picture, e, current, chosen)))}
      </ol>
      ${later > 0 ? html`<p class="cut">${count(later, 'later event')}: step on to see them</p>` : nothing}
    `;
  }

  /** One stop for Tab; the arrows up and down walk through the list. */
  #walk = (e: KeyboardEvent): void => {
    const by = e.key === 'ArrowDown' ? 1 : e.key === 'ArrowUp' ? -1 : 0;
    const here = Number(
      (e.target as Element).closest<HTMLElement>('[data-event]')?.dataset['event'] ?? NaN,
    );
    if (by === 0 || Number.isNaN(here)) return;
    e.preventDefault();
    this.store.selectEvent(here + by);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('li.chosen .row')?.focus(),
    );
  };

  #item(picture: Picture, e: LogEntry, current: number, chosen: number): TemplateResult {
    const open = e.index === chosen;
    const was = e.from === '' ? '' : `was ${e.from}; `;
    return html`<li
      class="${open ? 'chosen' : ''} ${e.index === current ? 'current' : ''}"
      data-event=${e.index}
    >
      <button
        class="row"
        aria-current=${e.index === current ? 'step' : 'false'}
        aria-expanded=${open}
        tabindex=${e.index === (chosen >= 0 ? chosen : current) ? 0 : -1}
        @click=${() => this.store.selectEvent(e.index)}
      >
        <span class="t">${e.t.toFixed(3)}</span>
        <span
          ><b>${plain(e.device)}</b> ${e.to}<br /><span class="soft">${was}${e.cause}</span></span
        >
      </button>
      ${open ? this.#links(picture, e) : nothing}
    </li>`;
  }

  #links(picture: Picture, e: LogEntry): TemplateResult | typeof nothing {
    const cause = picture.log[e.by];
    const effects = effectsOf(picture.log, e.index);
    if (cause === undefined && effects.length === 0) return nothing;
    const link = (word: string, to: LogEntry | undefined): unknown =>
      to === undefined
        ? nothing
        : html`<button @click=${() => this.store.selectEvent(to.index)}>
            ${word}: ${plain(to.device)} ${to.to}
          </button>`;
    return html`<div class="links">
      ${link('Caused by', cause)}${effects.map((i) => link('Led to', picture.log[i]))}
    </div>`;
  }
}

define('ww-event-list', EventList);
