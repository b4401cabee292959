import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { CAUTIONS } from '@wheelwell/core';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** What can hurt people, and what this page is not. Always in sight; the rest one step away. */
export class Cautions extends View {
  static override styles = [
    shared,
    css`
      :host {
        background: var(--caution-soft);
        border-bottom: 1px solid var(--caution);
        font-size: 0.85rem;
        position: relative;
      }
      summary {
        padding: 0.25rem 0.8rem;
        cursor: pointer;
        display: flex;
        gap: 0.5rem;
        align-items: center;
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      summary b {
        color: var(--caution);
      }
      summary .more {
        margin-left: auto;
        text-decoration: underline;
        white-space: nowrap;
      }
      @media (max-width: 560px) {
        summary {
          display: block;
          font-size: 0.8rem;
          padding-inline: 0.6rem;
        }
        summary .more {
          margin-left: 0.3rem;
        }
      }
      @media (max-width: 1400px) {
        .large .third {
          display: none;
        }
      }
      ul {
        position: absolute;
        z-index: 5;
        left: 0;
        right: 0;
        margin: 0;
        padding: 0.5rem 1rem 0.8rem 2.2rem;
        background: var(--caution-soft);
        border-bottom: 2px solid var(--caution);
        max-height: 60vh;
        overflow: auto;
      }
      li {
        margin: 0.25rem 0;
        max-width: 75rem;
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['large'];

  protected override render(): TemplateResult {
    return html`<details>
      <summary class=${this.state.large ? 'large' : ''}>
        ${sign('caution')}
        <span
          ><b>${CAUTIONS[0].head}</b> ${CAUTIONS[1].head}
          <span class="third">${CAUTIONS[2].head}</span></span
        >
        <span class="more">All cautions</span>
      </summary>
      <ul>
        ${CAUTIONS.map((c) => html`<li><b>${c.head}</b> ${c.text}</li>`)}
      </ul>
    </details>`;
  }
}

define('ww-cautions', Cautions);
