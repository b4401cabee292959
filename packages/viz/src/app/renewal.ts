/** Keeps the page on the device for use without a network, and tells when a newer one has come. */
import { css, html, LitElement, nothing } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import { define } from '../view/base.js';
import { shared } from '../view/shared.styles.js';
import type { OfflineWord } from '../worker/offline.js';

/** A page may stay open for days: when it is looked at again after so long, a newer one is asked for, ms. */
const SEEN = 3_600_000;
/** The older page's worker may be busy for long: loaded anew after this, the page is the newer one all the same, ms. */
const PATIENCE = 10_000;

export class Renewal extends LitElement {
  static override properties: PropertyDeclarations = { newer: { state: true } };
  static override styles = [
    shared,
    css`
      :host {
        position: fixed;
        z-index: 8;
        right: 0.7rem;
        bottom: 4.6rem;
        max-width: calc(100vw - 1.4rem);
        box-sizing: border-box;
      }
      p {
        margin: 0;
        display: flex;
        gap: 0.7rem;
        align-items: center;
        padding: 0.4rem 0.4rem 0.4rem 0.9rem;
        background: var(--sheet);
        border: 1px solid var(--rule-strong);
        border-radius: var(--round);
        box-shadow: 0 4px 16px rgb(0 0 0 / 25%);
      }
    `,
  ];

  /** The worker of a newer page, waiting to take over. */
  declare newer: ServiceWorker | undefined;

  #seen = Date.now();

  override connectedCallback(): void {
    super.connectedCallback();
    // While developing, every page is to be the newest.
    if (import.meta.env.PROD && 'serviceWorker' in navigator) void this.#register();
  }

  protected override render(): TemplateResult {
    return html`<div role="status">
      ${
        this.newer === undefined
          ? nothing
          : html`<p>
              A newer version of this page has come.
              <button @click=${this.#takeOver}>Load it</button>
              <button @click=${this.#later}>Later</button>
            </p>`
      }
    </div>`;
  }

  async #register(): Promise<void> {
    const { serviceWorker } = navigator;
    try {
      const registration = await serviceWorker.register(new URL('offline.js', document.baseURI), {
        updateViaCache: 'none',
      });
      if (registration.waiting !== null) this.#judge(registration.waiting);
      registration.addEventListener('updatefound', () => {
        const { installing } = registration;
        installing?.addEventListener('statechange', () => {
          if (installing.state === 'installed' && serviceWorker.controller !== null)
            this.#judge(installing);
        });
      });
      document.addEventListener('visibilitychange', () => {
        if (document.hidden || Date.now() < this.#seen + SEEN) return;
        this.#seen = Date.now();
        registration.update().catch(() => undefined);
      });
    } catch {
      // A server or browser that does not allow it: the page works, but only with a network.
    }
  }

  /** The page may have come from the network already newer than what was kept; then there is nothing to tell. */
  #judge(waiting: ServiceWorker): void {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (e: MessageEvent<boolean>) => {
      if (!e.data) this.newer = waiting;
    };
    const own = document.querySelectorAll<HTMLScriptElement>('script[type=module]');
    const word: OfflineWord = { kind: 'whose', scripts: Array.from(own, ({ src }) => src) };
    waiting.postMessage(word, [port2]);
  }

  #takeOver = (): void => {
    const reload = (): void => location.reload();
    navigator.serviceWorker.addEventListener('controllerchange', reload);
    setTimeout(reload, PATIENCE);
    const word: OfflineWord = { kind: 'take-over' };
    this.newer?.postMessage(word);
  };

  #later = (): void => {
    this.newer = undefined;
  };
}

define('ww-renewal', Renewal);
