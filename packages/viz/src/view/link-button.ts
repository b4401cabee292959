import { css, html, LitElement, nothing } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import { LONG, LONGEST } from '../model/link-work.js';
import type { LinkWork } from '../model/link-work.js';
import { count } from '../model/sentence.js';
import { define } from './base.js';
import { shared } from './shared.styles.js';

/** Two links of a chain. */
const CHAIN =
  'M-1.5,-4L1,-6.5A3.9,3.9 0 0 1 6.5,-1L4,1.5M1.5,4L-1,6.5A3.9,3.9 0 0 1 -6.5,1L-4,-1.5M-2.5,2.5L2.5,-2.5';

/** Copies a link to what is shown, and tells what came of it. */
export class LinkButton extends LitElement {
  static override properties: PropertyDeclarations = {
    work: { attribute: false },
    link: { state: true },
    copied: { state: true },
  };
  static override styles = [
    shared,
    css`
      .chain {
        min-width: 44px;
        min-height: 40px;
        display: inline-flex;
        align-items: center;
        justify-content: center;
        padding: 0;
      }
      .chain svg {
        width: 20px;
        height: 20px;
        fill: none;
        stroke: currentColor;
        stroke-width: 2;
        stroke-linecap: round;
      }
      [popover] {
        position: fixed;
        inset: auto 0.7rem 5rem auto;
        margin: 0;
        width: min(30rem, calc(100vw - 1.4rem));
        padding: 0.7rem 0.9rem 0.9rem;
        color: var(--ink);
        background: var(--sheet);
        border: 1px solid var(--rule-strong);
        border-radius: 10px;
        box-shadow: 0 6px 24px rgb(0 0 0 / 25%);
        font-size: 0.92rem;
      }
      p + p,
      input {
        margin-top: 0.4rem;
      }
      input {
        width: 100%;
        min-height: 36px;
        padding: 0 0.5rem;
        background: var(--sunk);
        border: 1px solid var(--rule-strong);
        border-radius: var(--round);
      }
      .end {
        display: flex;
        justify-content: flex-end;
        margin-top: 0.6rem;
      }
    `,
  ];

  declare work: LinkWork;
  /** The whole address; empty when it would be too long. */
  declare link: string;
  declare copied: boolean;
  #length = 0;

  constructor() {
    super();
    this.link = '';
    this.copied = false;
  }

  protected override render(): TemplateResult {
    return html`<button
        class="chain"
        aria-label="Copy link"
        title="Copy a link that brings back what is shown now (C)"
        @click=${() => this.copy()}
      >
        <svg viewBox="-9 -9 18 18" aria-hidden="true"><path d=${CHAIN}></path></svg>
      </button>
      <div popover role="dialog" aria-labelledby="told">
        ${this.link === '' ? this.#tooLong() : this.#told()}
        <div class="end"><button @click=${this.#close}>Close</button></div>
      </div>`;
  }

  #told(): TemplateResult {
    return html`<p id="told">
        <b
          >${this.copied ? 'The link is copied.' : 'Copy the link from here or from the address bar.'}</b
        >
      </p>
      <p>
        It brings back aircraft, card, faults, changed figures, time and view, in any browser.
        Nothing is sent anywhere: all of it is in the link.
      </p>
      ${
        this.#length > LONG
          ? html`<p>
              The file is packed into it, which makes ${count(this.#length, 'letter')}: some mail
              and chat programs cut so long a link.
            </p>`
          : nothing
      }
      <input
        readonly
        aria-label="Link"
        .value=${this.link}
        @focus=${(e: Event) => (e.target as HTMLInputElement).select()}
      />`;
  }

  #tooLong(): TemplateResult {
    return html`<p id="told"><b>No link was made.</b></p>
      <p>
        With the file packed into it, it would have ${count(this.#length, 'letter')}, and programs
        do not pass on more than ${LONGEST}. Send the file itself, and say which card to choose.
      </p>`;
  }

  copy(): void {
    void this.#copy();
  }

  async #copy(): Promise<void> {
    const hash = await this.work.make();
    if (hash === undefined) return;
    this.copied = false;
    const address = new URL(location.href);
    address.hash = hash;
    this.#length = address.href.length;
    this.link = this.#length > LONGEST ? '' : address.href;
    if (this.link !== '') {
      // Also where a reload finds it.
      history.replaceState(null, '', `#${hash}`);
      this.copied = await onClipboard(this.link);
    }
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('[popover]')?.showPopover();
  }

  #close = (): void => this.renderRoot.querySelector<HTMLElement>('[popover]')?.hidePopover();
}

/** False where the browser keeps the clipboard to itself, e.g. on a plain file server. */
async function onClipboard(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

define('ww-link-button', LinkButton);
