import type { LitElement, ReactiveController } from 'lit';
import { textScale } from './scale.js';

/**
 * Measures the part of a view that a drawing fills, and has the view drawn anew when it changes.
 * Width and height are in the drawing's own units, `scale` is how many pixels one of them has.
 */
export class Measured implements ReactiveController {
  width = 0;
  height = 0;
  scale = 1;
  #seen: Element | null = null;
  #observer = new ResizeObserver(([entry]) => {
    if (entry === undefined) return;
    this.scale = textScale();
    this.width = entry.contentRect.width / this.scale;
    this.height = entry.contentRect.height / this.scale;
    this.host.requestUpdate();
  });

  constructor(
    private readonly host: LitElement,
    private readonly selector: string,
  ) {
    host.addController(this);
  }

  hostUpdated(): void {
    const part = this.host.renderRoot.querySelector(this.selector);
    if (part === this.#seen) return;
    this.#observer.disconnect();
    this.#seen = part;
    if (part !== null) this.#observer.observe(part);
  }
}
