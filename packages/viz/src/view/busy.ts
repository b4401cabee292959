import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';

/** How far a long simulation is, over the page so that nothing moves; short ones are over before it shows. */
export class Busy extends View {
  static override styles = [
    shared,
    css`
      :host {
        position: relative;
      }
      div {
        position: absolute;
        z-index: 7;
        top: 0.5rem;
        left: 50%;
        transform: translateX(-50%);
        display: flex;
        gap: 0.7rem;
        align-items: center;
        padding: 0.4rem 0.4rem 0.4rem 0.9rem;
        background: var(--sheet);
        border: 1px solid var(--rule-strong);
        border-radius: var(--round);
        box-shadow: 0 4px 16px rgb(0 0 0 / 25%);
        white-space: nowrap;
        animation: appear 0s 0.25s both;
      }
      /* A run is on show: that it is made more exact is told only where this takes long. */
      .exact {
        animation: appear-late 0s 1s both;
      }
      progress {
        accent-color: var(--accent);
        width: 9rem;
      }
      output {
        min-width: 2.6rem;
      }
      @keyframes appear {
        from {
          visibility: hidden;
        }
      }
      @keyframes appear-late {
        from {
          visibility: hidden;
        }
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['asked', 'busy', 'progress'];

  protected override render(): TemplateResult | typeof nothing {
    const { asked, busy, progress } = this.state;
    if (!busy) return nothing;
    return html`<div data-busy class=${asked === undefined ? 'exact' : ''}>
      Simulating${asked === undefined ? ' more exactly' : ''}…
      <progress max="1" value=${progress} aria-label="Share of the card simulated"></progress>
      <output>${Math.floor(progress * 100)} %</output>
      <button @click=${() => this.store.stop()}>Stop</button>
    </div>`;
  }
}

define('ww-busy', Busy);
