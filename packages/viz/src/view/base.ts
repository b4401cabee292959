/** What every view has: the store, a redraw when what it watches changes, and the shared look. */
import { LitElement } from 'lit';
import type { CSSResultGroup, PropertyDeclarations, PropertyValues } from 'lit';
import type { State } from '../model/state.js';
import type { Store } from '../model/store.js';
import { shared } from './shared.styles.js';

export abstract class View extends LitElement {
  static override properties: PropertyDeclarations = { store: { attribute: false } };
  static override styles: CSSResultGroup = shared;

  /** Set by whoever places the view. */
  declare store: Store;

  /** Keys of the state whose change redraws the view. */
  protected abstract readonly watches: readonly (keyof State)[];

  #unwatch: (() => void) | undefined;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unwatch?.();
    this.#unwatch = undefined;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) this.#watch();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('store')) this.#watch();
  }

  get state(): State {
    return this.store.state;
  }

  #watch(): void {
    this.#unwatch?.();
    this.#unwatch = this.store.watch((keys) => {
      if (this.watches.some((key) => keys.has(key))) this.requestUpdate();
    });
  }
}

/** Registers an element once; a second load of the page's code in one document is harmless. */
export function define(tag: string, element: CustomElementConstructor): void {
  if (customElements.get(tag) === undefined) customElements.define(tag, element);
}
