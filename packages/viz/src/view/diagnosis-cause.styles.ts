import { css } from 'lit';

export const causeStyles = css`
  :host {
    padding: 0.5rem 0.7rem 0.9rem;
    font-size: 0.88rem;
  }
  h3 {
    margin-top: 0.7rem;
  }
  button {
    min-height: 44px;
    margin-top: 0.4rem;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    margin-top: 0.2rem;
  }
  th,
  td {
    border-bottom: 1px solid var(--rule);
    padding: 0.12rem 0.35rem;
    text-align: right;
    font-weight: 400;
  }
  tbody th,
  thead th:nth-child(2) {
    text-align: left;
  }
  tbody th::first-letter {
    text-transform: uppercase;
  }
  thead th,
  .off > * {
    font-weight: 700;
  }
  section p {
    margin-top: 0.25rem;
  }
`;

/** On paper, beside the styles of the test card. */
export const reportStyles = css`
  .verdict {
    font-weight: 700;
  }
  ol {
    margin: 0.2rem 0;
    padding-left: 1.3rem;
  }
  .off > * {
    font-weight: 700;
  }
  li,
  section {
    break-inside: avoid;
  }
  table.beside th:nth-child(2) {
    text-align: left;
  }
`;
