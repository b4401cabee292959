import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { causesOf } from '../model/history.js';
import { margin, plain, seconds, SEVERITY_WORD } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** Causes told in a row; the chart shows the rest. */
const MOST = 4;

/** What is picked out, in sentences large enough for a room: a flag and its reason, or an event and what led to it. */
export class Told extends View {
  static override styles = [
    shared,
    css`
      :host {
        padding: 0.4rem 0.8rem;
        min-height: 3.8rem;
        max-height: 9rem;
        overflow: auto;
      }
      ol {
        list-style: none;
        margin: 0.1rem 0 0;
        padding: 0;
        display: flex;
        flex-wrap: wrap;
        gap: 0 0.6rem;
      }
      li + li::before {
        content: '← ';
        color: var(--ink-soft);
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'selection', 'system'];

  protected override render(): TemplateResult {
    const { picture, selection } = this.state;
    if (picture === undefined) return html``;
    if (selection.kind === 'flag') return this.#flag(picture, selection.index);
    if (selection.kind === 'event') return this.#event(picture, selection.index);
    const card = picture.cards.find((c) => c.name === picture.card);
    return html`<p><b>${card?.title}.</b> ${card?.note}</p>
      <p class="soft">F goes to the next flag, → to the next event and why it happened.</p>`;
  }

  #flag(picture: Picture, index: number): TemplateResult {
    const f = picture.flags[index];
    if (f === undefined) return html``;
    const how = margin(f.margin, f.marginQuantity, picture, this.state.system);
    return html`<p class=${f.severity}>
        ${sign(f.severity)} <b>${SEVERITY_WORD[f.severity]}: ${f.title}</b>, ${how}
      </p>
      <p>${f.explanation}</p>`;
  }

  #event(picture: Picture, index: number): TemplateResult {
    const { log } = picture;
    const e = log[index];
    if (e === undefined) return html``;
    const causes = causesOf(log, index);
    const later = causes.length - MOST;
    return html`<p>${seconds(e.t)}: <b>${plain(e.device)} ${e.to}</b>, because ${e.cause}</p>
      <ol aria-label="What led to it, latest first">
        ${causes.slice(0, MOST).map((i) => html`<li>${plain(log[i]?.device ?? '')} ${log[i]?.to}</li>`)}
        ${later > 0 ? html`<li class="soft">${later} more</li>` : ''}
      </ol>`;
  }
}

define('ww-told', Told);
