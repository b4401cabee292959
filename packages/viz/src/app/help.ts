import { css, html, LitElement, nothing } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import { define } from '../view/base.js';
import { views } from '../view/index.js';
import { shared } from '../view/shared.styles.js';
import { CHORDS, KEYS } from './keyboard.js';

/** The list of keys, and the switch that turns single keys off. */
export class Help extends LitElement {
  static override properties: PropertyDeclarations = { keys: { attribute: false } };
  static override styles = [
    shared,
    css`
      dialog {
        color: var(--ink);
        background: var(--sheet);
        border: 1px solid var(--rule-strong);
        border-radius: 10px;
        padding: 1rem 1.3rem 1.2rem;
        max-width: 34rem;
      }
      dialog::backdrop {
        background: rgb(0 0 0 / 45%);
      }
      h2 {
        font-size: 1.1rem;
        margin-bottom: 0.5rem;
      }
      h3 {
        margin-bottom: 0.3rem;
      }
      dl {
        display: grid;
        grid-template-columns: auto 1fr;
        gap: 0.25rem 1rem;
        margin: 0 0 0.8rem;
        font-size: 0.92rem;
      }
      dd {
        margin: 0;
      }
      kbd {
        font: inherit;
        font-weight: 700;
        background: var(--sunk);
        border: 1px solid var(--rule-strong);
        border-radius: 4px;
        padding: 0 0.4rem;
        white-space: nowrap;
      }
      .end {
        display: flex;
        justify-content: space-between;
        align-items: center;
        gap: 1rem;
      }
      p {
        font-size: 0.9rem;
        margin-bottom: 0.8rem;
      }
    `,
  ];

  /** Whether single keys act. */
  declare keys: boolean;

  protected override render(): TemplateResult {
    return html`<dialog aria-labelledby="title">
      <h2 id="title">Keys</h2>
      <dl>
        ${[...KEYS, ...CHORDS].map(
          (k) =>
            html`<dt><kbd>${k.shown}</kbd></dt>
              <dd>${k.what}</dd>`,
        )}
      </dl>
      ${views.map(({ title, keys }) =>
        keys === undefined
          ? nothing
          : html`<h3>${title}</h3>
              <dl>
                ${keys.map(
                  ([shown, what]) =>
                    html`<dt><kbd>${shown}</kbd></dt>
                      <dd>${what}</dd>`,
                )}
              </dl>`,
      )}
      <p>
        With the pointer: drag in the order chart or on the slider to move the play head; press an
        event or a flag to go to it; hold Ctrl and turn the wheel to bring the chart closer. A
        scenario file can be dropped anywhere. All of it stays in this browser; once it has been
        loaded, the page works without a network.
      </p>
      <div class="end">
        <label
          ><input
            type="checkbox"
            .checked=${this.keys}
            @change=${(e: Event) => this.dispatchEvent(new CustomEvent('keys-change', { detail: (e.target as HTMLInputElement).checked }))}
          />
          Single keys act</label
        >
        <button autofocus @click=${() => this.#dialog?.close()}>Close</button>
      </div>
    </dialog>`;
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  open(): void {
    this.#dialog?.showModal();
  }
}

define('ww-help', Help);
