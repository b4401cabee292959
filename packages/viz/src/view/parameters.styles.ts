import { css } from 'lit';

export const parametersStyles = css`
  .tools {
    position: sticky;
    top: 0;
    z-index: 1;
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    padding: 0.5rem 0.7rem;
    background: var(--sheet);
    border-bottom: 1px solid var(--rule);
  }
  input:not([type]),
  input[type='search'],
  textarea {
    min-height: 32px;
    min-width: 0;
    padding: 0 0.5rem;
    color: var(--ink);
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  input[type='search'] {
    flex: 1 1 10rem;
  }
  textarea {
    grid-column: 1 / -1;
    width: 100%;
    padding: 0.3rem 0.5rem;
    font-family: ui-monospace, Consolas, 'DejaVu Sans Mono', monospace;
    font-size: 0.82rem;
    resize: vertical;
  }
  .one {
    display: flex;
    gap: 0.5rem;
    align-items: center;
    justify-content: space-between;
    padding: 0.5rem 0.7rem 0.2rem;
  }
  summary {
    display: flex;
    gap: 0.5rem;
    align-items: baseline;
    min-height: 32px;
    padding: 0.35rem 0.7rem;
    cursor: pointer;
    border-bottom: 1px solid var(--rule);
  }
  summary::before {
    content: '▸';
    color: var(--ink-soft);
  }
  details[open] > summary::before {
    content: '▾';
  }
  summary::-webkit-details-marker {
    display: none;
  }
  summary:focus-visible {
    outline-offset: -3px;
  }
  summary .soft {
    font-size: 0.86rem;
  }
  summary .count {
    margin-left: auto;
    font-size: 0.82rem;
    font-weight: 700;
    white-space: nowrap;
  }
  .note {
    padding: 0.4rem 0.7rem 0;
    font-size: 0.84rem;
    color: var(--ink-soft);
  }
  .row {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(7.5rem, auto) auto;
    gap: 0.1rem 0.5rem;
    align-items: center;
    padding: 0.35rem 0.7rem;
    border-bottom: 1px solid var(--rule);
    border-left: 4px solid transparent;
  }
  .row.changed {
    border-left-color: var(--accent);
    background: var(--accent-soft);
  }
  .row.wrong {
    border-left-color: var(--fail);
  }
  .row label {
    font-size: 0.9rem;
    line-height: 1.3;
    overflow-wrap: anywhere;
  }
  .row select {
    min-width: 0;
    max-width: 11rem;
  }
  .row > :is(.field, .switch, select) {
    grid-column: 2;
  }
  .row > .reset {
    grid-column: 3;
    padding: 0 0.45rem;
    font-size: 0.85rem;
  }
  .field {
    display: inline-flex;
    gap: 0.35rem;
    align-items: center;
    justify-content: flex-end;
  }
  .field input {
    width: 5.4rem;
    text-align: right;
    font-variant-numeric: tabular-nums;
  }
  .field .unit {
    min-width: 2rem;
    font-size: 0.86rem;
    white-space: nowrap;
  }
  [aria-invalid='true'] {
    border: 2px solid var(--fail);
  }
  .switch {
    display: inline-flex;
    gap: 0.4rem;
    align-items: center;
  }
  .row > :is(.about, .why-not, .why, input[type='range']) {
    grid-column: 1 / -1;
  }
  .about,
  .why {
    font-size: 0.8rem;
    color: var(--ink-soft);
  }
  .row.changed :is(.about, .why) {
    color: var(--ink);
  }
  .why-not {
    font-size: 0.86rem;
    color: var(--fail);
  }
  .why-not .soft {
    color: var(--ink-soft);
  }
  code {
    font-family: ui-monospace, Consolas, 'DejaVu Sans Mono', monospace;
    font-size: 0.92em;
    overflow-wrap: anywhere;
  }
  .empty {
    padding: 0.7rem;
  }
  @media (pointer: coarse) {
    .row :is(input, select, button),
    .tools :is(input, button),
    summary {
      min-height: 44px;
    }
    input[type='checkbox'] {
      min-width: 28px;
    }
  }
`;
