import { css } from 'lit';

export const swingEntryStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: 0.5rem;
  }
  .wide {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.88rem;
  }
  th,
  td {
    padding: 0.12rem 0.4rem;
    text-align: right;
    border-bottom: 1px solid var(--rule);
  }
  th:first-child {
    text-align: left;
    font-weight: 400;
  }
  th:first-child::first-letter {
    text-transform: uppercase;
  }
  thead th,
  tr.total th {
    font-weight: 700;
  }
  .field {
    width: 7.5rem;
    min-width: 5rem;
  }
  th.words,
  .words {
    text-align: left;
  }
  @media (max-width: 480px) {
    th,
    td {
      padding: 0.12rem 0.2rem;
    }
    .field {
      width: 5rem;
      min-width: 4.4rem;
    }
  }
  .words > span:not(.aside) {
    display: block;
  }
  fieldset {
    margin: 0;
    padding: 0.3rem 0.6rem 0.5rem;
    border: 1px solid var(--rule);
    border-radius: var(--round);
    min-width: 0;
  }
  legend {
    font-weight: 700;
    font-size: 0.9rem;
    padding: 0 0.3rem;
  }
  .gauges {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(7rem, 1fr));
    gap: 0.4rem;
    align-items: end;
  }
  .gauges :is(span, label) {
    font-size: 0.82rem;
    color: var(--ink-soft);
  }
  .gauges select {
    width: 100%;
  }
  .remarks {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr));
    gap: 0.2rem 0.8rem;
  }
  .remarks b {
    text-transform: capitalize;
  }
  .remarks label {
    display: flex;
    gap: 0.5rem;
    align-items: center;
    min-height: 44px;
    font-size: 0.88rem;
  }
  input[type='checkbox'] {
    width: 22px;
    height: 22px;
    flex: none;
    accent-color: var(--accent);
  }
  .note {
    display: block;
    font-size: 0.88rem;
  }
  .note input {
    width: 100%;
    min-height: 44px;
    padding: 0 0.5rem;
    background: var(--sunk);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
`;
