import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { flagsBySeverity } from '../model/history.js';
import { count, margin, plain, seconds, SEVERITY_WORD } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { listStyles } from './list.styles.js';
import { reveal } from './reveal.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** Flags, worst first, with margin, reason and what to look at next; those within limits below. */
export class FlagList extends View {
  static override styles = [
    shared,
    listStyles,
    css`
      .item {
        border-left: 5px solid currentColor;
      }
      .what {
        color: var(--ink);
        font-weight: 700;
      }
      .margin {
        margin-left: auto;
        font-weight: 700;
        white-space: nowrap;
        font-variant-numeric: tabular-nums;
      }
      .more {
        color: var(--ink);
        padding: 0 0.7rem 0.6rem 2.1rem;
        font-size: 0.9rem;
      }
      .more p + p {
        margin-top: 0.4rem;
      }
      .well {
        padding: 0.8rem;
        display: flex;
        gap: 0.5rem;
        align-items: center;
      }
      summary {
        padding: 0.5rem 0.7rem;
        cursor: pointer;
        color: var(--ink-soft);
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'selection', 'system'];

  protected override updated(): void {
    const { selection } = this.state;
    if (selection === this.#followed) return;
    this.#followed = selection;
    if (selection.kind === 'flag')
      reveal(this.renderRoot.querySelector(`[data-flag="${selection.index}"]`));
  }
  #followed: State['selection'] = { kind: 'none' };

  protected override render(): TemplateResult {
    const { picture, selection } = this.state;
    if (picture === undefined) return html``;
    const order = flagsBySeverity(picture.flags);
    const bad = order.filter((i) => picture.flags[i]?.severity !== 'note');
    const well = order.filter((i) => picture.flags[i]?.severity === 'note');
    const chosen = selection.kind === 'flag' ? selection.index : -1;
    const expect = picture.cards.find((c) => c.name === picture.card)?.expect ?? [];
    return html`
      ${
        bad.length === 0
          ? html`<p class="well note">
              ${sign('note')}
              <span>No flags: every rule that judged this run is within its limits.</span>
            </p>`
          : html`<ul>
              ${bad.map((i) => this.#item(picture, i, chosen, expect))}
            </ul>`
      }
      ${
        well.length === 0
          ? nothing
          : html`<details ?open=${well.includes(chosen)}>
              <summary>${count(well.length, 'check')} within limits</summary>
              <ul>
                ${well.map((i) => this.#item(picture, i, chosen, expect))}
              </ul>
            </details>`
      }
    `;
  }

  #item(
    picture: Picture,
    index: number,
    chosen: number,
    expect: readonly string[],
  ): TemplateResult {
    const f = picture.flags[index];
    const open = index === chosen;
    const how = margin(f.margin, f.marginQuantity, picture, this.state.system);
    const span =
      f.to - f.from > 0.005 ? `${f.from.toFixed(2)} to ${seconds(f.to)}` : seconds(f.from);
    return html`<li
      class="item ${f.severity} ${open ? 'chosen' : ''}"
      data-flag=${index}
      data-rule=${f.rule}
    >
      <button
        class="row"
        aria-expanded=${open}
        @click=${() => (open ? this.store.select({ kind: 'none' }) : this.store.selectFlag(index))}
      >
        ${sign(f.severity)}
        <span
          ><span class="aside">${SEVERITY_WORD[f.severity]}: </span
          ><span class="what">${f.title}</span
          >${f.severity === 'note' ? '' : ': not kept'}<br /><span class="soft"
            >${f.devices.map(plain).join(', ')} ·
            ${span}${expect.includes(f.rule) && f.severity !== 'note' ? ' · this card is meant to show it' : ''}</span
          ></span
        >
        <span class="margin"><span class="aside">margin </span>${how}</span>
      </button>
      ${
        open
          ? html`<div class="more">
              <p>${f.explanation}</p>
              <p><b>Look at next:</b> ${f.suggestion}</p>
            </div>`
          : nothing
      }
    </li>`;
  }
}

define('ww-flag-list', FlagList);
