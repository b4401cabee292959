/** The page's mark: a leg and its wheel under a wing. */
import { html } from 'lit';

export const MARK = html`<svg viewBox="0 0 32 32" aria-hidden="true">
  <rect width="32" height="32" fill="var(--accent)"></rect>
  <path
    d="M5 8h22M9 8v3M23 8v3M16 8v9"
    stroke="var(--on-accent)"
    stroke-width="2.5"
    stroke-linecap="round"
  ></path>
  <circle cx="16" cy="21.5" r="5.6" fill="none" stroke="var(--on-accent)" stroke-width="3"></circle>
</svg>`;
