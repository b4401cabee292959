import { css } from 'lit';

export const transportStyles = css`
  :host {
    display: grid;
    grid-template-columns: auto auto 1fr auto auto auto;
    gap: 0.3rem 0.8rem;
    align-items: center;
    padding: 0.45rem 0.8rem;
  }
  .buttons {
    display: flex;
    gap: 0.3rem;
  }
  button {
    min-width: 44px;
    min-height: 40px;
    display: inline-flex;
    align-items: center;
    justify-content: center;
    padding: 0 0.5rem;
  }
  button svg {
    width: 22px;
    height: 18px;
    fill: currentColor;
  }
  .play {
    min-width: 64px;
    background: var(--accent);
    color: var(--on-accent);
    border-color: var(--accent);
  }
  .play:hover:not(:disabled) {
    background: var(--accent);
    filter: brightness(1.12);
  }
  .clock {
    font-size: 1.35rem;
    font-weight: 700;
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  .clock small {
    font-size: 0.8rem;
    font-weight: 400;
    color: var(--ink-soft);
  }
  .scrub {
    min-width: 0;
  }
  input {
    width: 100%;
    margin: 0;
    height: 24px;
  }
  /* One line: a cause that does not fit whole is left to the list of events. */
  .last {
    display: flex;
    flex-wrap: wrap;
    height: 1.4em;
    overflow: hidden;
    font-size: 0.84rem;
    color: var(--ink-soft);
  }
  .last span {
    white-space: nowrap;
    min-width: 0;
    max-width: 100%;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .last b {
    color: var(--ink);
  }
  /* The track begins and ends half a thumb inside the slider's box. */
  .band {
    display: block;
    width: calc(100% - 16px);
    margin: -3px 8px 0;
    height: 7px;
    overflow: visible;
  }
  .band rect {
    fill: none;
    stroke: var(--accent);
    stroke-dasharray: 3 2;
  }
  .band.on rect {
    fill: var(--accent);
    stroke-dasharray: none;
  }
  .loop {
    display: flex;
  }
  .loop button {
    border-radius: 0;
    font-weight: 700;
  }
  .loop button + button {
    margin-left: -1px;
  }
  .loop button:first-child {
    border-radius: var(--round) 0 0 var(--round);
  }
  .loop button:last-child {
    border-radius: 0 var(--round) var(--round) 0;
  }
  .rate {
    display: flex;
    flex-direction: column;
    font-size: 0.78rem;
    color: var(--ink-soft);
  }
  select {
    color: var(--ink);
    font-size: 0.95rem;
  }
  @media (max-width: 900px) {
    :host {
      grid-template-columns: auto 1fr auto auto auto;
    }
    .scrub {
      grid-column: 1 / -1;
      grid-row: 1;
    }
    .clock {
      text-align: center;
    }
  }
  @media (max-width: 700px) {
    :host {
      grid-template-columns: 1fr auto auto;
      gap: 0.3rem 0.5rem;
      padding: 0.3rem 0.6rem;
    }
    .buttons {
      grid-column: 1 / 3;
    }
    .rate {
      grid-column: 3;
      grid-row: 2;
    }
    .rate span {
      display: none;
    }
    .clock {
      grid-row: 3;
      text-align: left;
    }
  }
`;
