import { css } from 'lit';

export const tracesStyles = css`
  :host {
    position: relative;
    container-type: inline-size;
  }
  .tools [aria-expanded='true'] {
    background: var(--accent-soft);
    border-color: var(--accent);
    box-shadow: inset 0 -3px 0 var(--accent);
  }
  .badge {
    color: var(--ink-soft);
    font-variant-numeric: tabular-nums;
  }
  .spread {
    margin: 0 -0.3rem;
  }
  .split {
    flex: 1;
    min-height: 0;
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr);
  }
  .split.with-pane {
    grid-template-columns: minmax(0, 1fr) 20rem;
  }
  .pane {
    display: flex;
    flex-direction: column;
    min-width: 0;
    min-height: 0;
    border-left: 1px solid var(--rule);
  }
  .pane > * {
    flex: 1;
    min-height: 0;
  }
  .scroll {
    overflow: auto;
    padding: 0.4rem 0.5rem;
  }
  .save {
    display: flex;
    flex-direction: column;
    gap: 0.5rem;
    padding: 0.5rem;
    font-size: 0.82rem;
  }
  .save button {
    flex: none;
  }
  .empty {
    padding: 1rem;
  }
  .values {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.8rem;
  }
  .values caption {
    text-align: start;
    padding-bottom: 0.3rem;
    color: var(--ink-soft);
  }
  .values th,
  .values td {
    padding: 0.12rem 0.3rem 0.12rem 0;
    text-align: end;
    border-bottom: 1px solid var(--rule);
  }
  .values th:first-child {
    text-align: start;
    font-weight: 400;
  }
  .values thead th {
    color: var(--ink-soft);
    font-weight: 400;
  }
  .values .kind {
    font-weight: 700;
    padding-top: 0.4rem;
  }
  @container (max-width: 40rem) {
    .split.with-pane {
      grid-template-columns: minmax(0, 1fr);
    }
    .with-pane > :first-child {
      display: none;
    }
    .pane {
      border-left: 0;
    }
  }
  @media (pointer: coarse) {
    .tools button {
      min-height: 40px;
    }
  }
`;
