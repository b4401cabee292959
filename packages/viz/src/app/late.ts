/** Views that bring their code later: when one is first shown, or when the page has come to rest. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { Store } from '../model/store.js';
import { views } from '../view/index.js';
import type { ViewEntry, Works } from '../view/index.js';
import { whyOf } from '../worker/why.js';

/** After the first run the second worker is made ready, which is more urgent, ms. */
const REST = 1500;

export class LateViews {
  readonly #there = new Set<ViewEntry>();
  readonly #failed = new Map<ViewEntry, string>();
  #begun = false;

  /** @param redraw called when a view that was to be shown can be, or never will */
  constructor(private readonly redraw: () => void) {}

  show(view: ViewEntry, store: Store, works: Works): TemplateResult {
    if (view.load === undefined || this.#there.has(view)) return view.show(store, works);
    const failure = this.#failed.get(view);
    if (failure === undefined) {
      void this.#load(view)
        .catch((error: unknown) => {
          this.#failed.set(view, whyOf(error));
        })
        .then(this.redraw);
      return html`<p class="coming" role="status">${view.title} is being loaded …</p>`;
    }
    // Browsers remember that a script did not come as long as the page is open.
    return html`<div class="coming" role="alert">
      <p>${view.title} could not be loaded: ${failure}.</p>
      <p>What you entered is kept.</p>
      <button @click=${() => location.reload()}>Load the page anew</button>
    </div>`;
  }

  /** Brings all of them, so that none is waited for, or missed where there is no network. */
  ahead(): void {
    if (this.#begun) return;
    this.#begun = true;
    setTimeout(() => void this.#all(), REST);
  }

  async #all(): Promise<void> {
    for (const view of views) {
      // Who opens one that did not come asks for it again, and is told why it does not.
      await this.#load(view).catch(() => undefined);
    }
  }

  async #load(view: ViewEntry): Promise<void> {
    if (view.load === undefined || this.#there.has(view)) return;
    await view.load();
    this.#there.add(view);
  }
}
