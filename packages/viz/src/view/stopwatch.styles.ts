import { css } from 'lit';

export const stopwatchStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: 0.4rem;
  }
  .bar,
  .after {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem 0.8rem;
    align-items: center;
    justify-content: space-between;
  }
  .ways {
    display: inline-flex;
  }
  .ways button {
    min-height: 48px;
    min-width: 64px;
    border-radius: 0;
  }
  .ways button + button {
    margin-left: -1px;
  }
  .ways button:first-child {
    border-radius: var(--round) 0 0 var(--round);
  }
  .ways button:last-child {
    border-radius: 0 var(--round) var(--round) 0;
  }
  output {
    font-size: 1.9rem;
    font-weight: 700;
    line-height: 1.2;
  }
  .main {
    min-height: 72px;
    font-size: 1.2rem;
    font-weight: 700;
    background: var(--accent);
    color: var(--on-accent);
    border-color: var(--accent);
  }
  .main:hover:not(:disabled) {
    background: var(--accent);
    filter: brightness(1.1);
  }
  .after button {
    min-height: 48px;
    flex: 1 1 auto;
  }
  /* Buttons of one event stand in one row, as high as the one with most to say: a head and five events at most. */
  .taps {
    display: grid;
    grid-auto-flow: column;
    grid-auto-columns: minmax(0, 1fr);
    grid-template-rows: repeat(6, auto);
    gap: 0 0.4rem;
  }
  .taps > div {
    min-width: 0;
    display: grid;
    grid-row: 1 / -1;
    grid-template-rows: subgrid;
  }
  h2 {
    text-transform: capitalize;
  }
  .tap {
    margin-bottom: 0.3rem;
    min-height: 68px;
    padding: 0.2rem 0.4rem;
    text-align: left;
    white-space: normal;
    touch-action: none;
    user-select: none;
    display: flex;
    flex-direction: column;
    justify-content: center;
    font-weight: 700;
  }
  .tap > span {
    position: relative;
    display: flex;
    justify-content: space-between;
    gap: 0.3rem;
  }
  .tap[data-made] {
    background: var(--sunk);
    border-style: dashed;
  }
  small {
    font-weight: 400;
    font-size: 0.78rem;
    line-height: 1.25;
    font-variant-numeric: tabular-nums;
  }
  kbd {
    align-self: flex-start;
    font: inherit;
    font-size: 0.75rem;
    font-weight: 400;
    border: 1px solid currentColor;
    border-radius: 4px;
    padding: 0 0.3rem;
    white-space: nowrap;
  }
  p {
    font-size: 0.84rem;
  }
`;
