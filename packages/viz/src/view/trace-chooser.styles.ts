import { css } from 'lit';

export const traceChooserStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: 0.4rem;
    padding: 0.5rem;
    min-height: 0;
    font-size: 0.82rem;
  }
  input[type='search'],
  select {
    width: 100%;
    min-height: 32px;
    padding: 0 0.5rem;
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  .tools {
    display: flex;
    gap: 0.4rem;
    align-items: center;
  }
  .tools select {
    flex: 1;
    min-width: 0;
  }
  .list {
    flex: 1;
    min-height: 5rem;
    overflow: auto;
    border: 1px solid var(--rule);
    border-radius: var(--round);
  }
  .list:focus-visible {
    outline-offset: -2px;
  }
  .part {
    position: sticky;
    top: 0;
    padding: 0.15rem 0.5rem;
    background: var(--sunk);
    font-weight: 700;
  }
  .option {
    display: grid;
    grid-template-columns: 1.1rem minmax(0, 1fr);
    gap: 0.4rem;
    align-items: center;
    min-height: 30px;
    padding: 0.15rem 0.5rem;
    cursor: pointer;
  }
  .option:hover {
    background: var(--accent-soft);
  }
  .option[aria-selected='true'] {
    font-weight: 600;
  }
  .list:focus-visible .option.at {
    outline: 2px solid var(--focus);
    outline-offset: -2px;
  }
  .box {
    width: 1.05rem;
    height: 1.05rem;
    border: 1.5px solid var(--rule-strong);
    border-radius: 3px;
    fill: none;
    stroke: var(--on-accent);
    stroke-width: 2.2;
  }
  [aria-selected='true'] .box {
    background: var(--accent);
    border-color: var(--accent);
  }
  @media (pointer: coarse) {
    .option {
      min-height: 44px;
    }
  }
`;
