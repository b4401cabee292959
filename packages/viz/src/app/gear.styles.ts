import { css, unsafeCSS } from 'lit';
import theme from './theme.css?inline';

/** The page's own colours and type, held by the element instead of the document. */
const themeOfElement = unsafeCSS(
  theme
    .replaceAll(/:root(\[[^\]]*\])?/g, (_, of?: string) =>
      of === undefined ? ':host' : `:host(${of})`,
    )
    .replaceAll('[data-', '['),
);

export const gearStyles = [
  themeOfElement,
  css`
    :host {
      display: flex;
      flex-direction: column;
      gap: 0.4rem;
      min-height: 20rem;
      background: var(--paper);
      color: var(--ink);
    }
    :host([hidden]) {
      display: none;
    }
    .area {
      flex: 1;
      display: flex;
      flex-direction: column;
      min-width: 0;
      min-height: 0;
      background: var(--sheet);
      border: 1px solid var(--rule);
      border-radius: var(--round);
      overflow: hidden;
    }
    .area > * {
      flex: 1;
      min-height: 0;
    }
    .area.fact {
      flex: none;
      padding: 0.35rem 0;
    }
    .area.panel {
      overflow: auto;
    }
    .area.panel > * {
      flex: none;
    }
    .clock {
      background: var(--sheet);
      border: 1px solid var(--rule);
      border-radius: var(--round);
    }
  `,
];
