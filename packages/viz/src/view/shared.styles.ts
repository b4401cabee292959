/** The look that all views share. */
import { css } from 'lit';

export const shared = css`
  :host {
    display: block;
    box-sizing: border-box;
    min-width: 0;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h2,
  h3 {
    margin: 0;
    font-size: 0.93rem;
    font-weight: 700;
    letter-spacing: 0.01em;
  }
  p {
    margin: 0;
  }
  .soft {
    color: var(--ink-soft);
  }
  .number,
  td,
  output {
    font-variant-numeric: tabular-nums;
  }
  button,
  select,
  input,
  summary {
    font: inherit;
    color: inherit;
  }
  button,
  select {
    min-height: 32px;
    padding: 0 0.6rem;
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  button {
    white-space: nowrap;
    cursor: pointer;
  }
  button:hover:not(:disabled) {
    background: var(--accent-soft);
  }
  button:disabled {
    opacity: 0.55;
    cursor: default;
  }
  button[aria-pressed='true'],
  button[aria-pressed='true']:hover:not(:disabled) {
    background: var(--accent);
    color: var(--on-accent);
    border-color: var(--accent);
  }
  input[type='range'] {
    accent-color: var(--accent);
    min-width: 0;
  }
  :focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 1px;
    border-radius: 3px;
  }
  svg {
    display: block;
  }
  .sign {
    display: inline-block;
    vertical-align: -0.15em;
    width: 1.05em;
    height: 1.05em;
    flex: none;
    fill: currentColor;
    fill-rule: evenodd;
  }
  .fail {
    color: var(--fail);
  }
  .caution {
    color: var(--caution);
  }
  .note {
    color: var(--note);
  }
  .aside {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  /* For a gloved finger: no view makes them smaller. */
  @media (pointer: coarse) {
    button,
    select,
    summary {
      min-height: 44px !important;
      align-content: center;
    }
    :is(input[type='checkbox'], input[type='radio']) {
      width: 24px;
      height: 24px;
    }
    label:has(> :is(input[type='checkbox'], input[type='radio'])) {
      display: inline-flex;
      align-items: center;
      gap: 0.4rem;
      min-height: 44px;
    }
  }
`;
