import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Whether the page is dark, for what is drawn on a canvas; has the host drawn anew when it changes. */
export class Scheme implements ReactiveController {
  readonly #query = matchMedia('(prefers-color-scheme: dark)');
  readonly #observer = new MutationObserver(() => this.host.requestUpdate());

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  get dark(): boolean {
    const set = document.documentElement.dataset['theme'];
    return set === undefined ? this.#query.matches : set === 'dark';
  }

  #changed = (): void => this.host.requestUpdate();

  hostConnected(): void {
    this.#query.addEventListener('change', this.#changed);
    this.#observer.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  }

  hostDisconnected(): void {
    this.#query.removeEventListener('change', this.#changed);
    this.#observer.disconnect();
  }
}
