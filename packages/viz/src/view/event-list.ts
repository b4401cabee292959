import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { effectsOf, eventAt } from '../model/history.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { LogEntry, Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { listStyles } from './list.styles.js';
import { shared } from './shared.styles.js';

/** Every event of the run with its cause; the one at the play head is marked. */
export class EventList extends View {
  static override styles = [
    shared,
    listStyles,
    css`
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
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'time', 'selection'];

  protected override updated(): void {
    const { selection, picture, time } = this.state;
    const at = selection.kind === 'event' ? selection.index : picture === undefined ? -1 : eventAt(picture.log, time);
    if (at === this.#followed) return;
    this.#followed = at;
    this.renderRoot.querySelector('li.chosen, li.current')?.scrollIntoView({ block: 'nearest' });
  }
  #followed = -1;

  protected override render(): TemplateResult {
    const { picture, time, selection } = this.state;
    if (picture === undefined) return html``;
    if (picture.log.length === 0) return html`<p class="soft">Nothing happened in this run.</p>`;
    const current = eventAt(picture.log, time);
    const chosen = selection.kind === 'event' ? selection.index : -1;
    return html`<ol>${guard([picture, current, chosen], () => picture.log.map((e) => this.#item(picture, e, current, chosen)))}</ol>`;
  }

  #item(picture: Picture, e: LogEntry, current: number, chosen: number): TemplateResult {
    const open = e.index === chosen;
    const was = e.from === '' ? '' : `was ${e.from}; `;
    return html`<li class="${open ? 'chosen' : ''} ${e.index === current ? 'current' : ''}" data-event=${e.index}>
      <button class="row" aria-current=${e.index === current ? 'step' : 'false'} aria-expanded=${open} @click=${() => this.store.selectEvent(e.index)}>
        <span class="t">${e.t.toFixed(3)}</span>
        <span><b>${plain(e.device)}</b> ${e.to}<br /><span class="soft">${was}${e.cause}</span></span>
      </button>
      ${open ? this.#links(picture, e) : nothing}
    </li>`;
  }

  #links(picture: Picture, e: LogEntry): TemplateResult | typeof nothing {
    const cause = picture.log[e.by];
    const effects = effectsOf(picture.log, e.index);
    if (cause === undefined && effects.length === 0) return nothing;
    const link = (word: string, to: LogEntry | undefined): unknown =>
      to === undefined ? nothing : html`<button @click=${() => this.store.selectEvent(to.index)}>${word}: ${plain(to.device)} ${to.to}</button>`;
    return html`<div class="links">${link('Caused by', cause)}${effects.map((i) => link('Led to', picture.log[i]))}</div>`;
  }
}

define('ww-event-list', EventList);
