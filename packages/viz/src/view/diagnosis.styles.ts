import { css } from 'lit';

/** After the styles of the test card, whose tools and boxes the bench has, too. */
export const diagnosisStyles = css`
  .empty {
    padding: 1.5rem 0.5rem;
    text-align: center;
    color: var(--ink-soft);
  }
  .progress {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 0.6rem;
    align-items: center;
    min-height: 44px;
    font-size: 0.86rem;
  }
  .progress button,
  .fail button {
    min-height: 44px;
  }
  progress {
    accent-color: var(--accent);
    flex: 1 1 6rem;
    max-width: 12rem;
  }
  .verdict {
    padding: 0.4rem 0.6rem;
    border: 1px solid var(--rule-strong);
    border-left-width: 6px;
    border-radius: var(--round);
  }
  .verdict[data-standing='established'] {
    border-color: var(--note);
    background: var(--note-soft);
  }
  .verdict[data-standing='none fits'] {
    border-color: var(--fail);
    background: var(--fail-soft);
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .checks {
    gap: 0.35rem;
  }
  .ranking {
    gap: 0.2rem;
  }
  ol li {
    display: block;
  }
  .ranking .cause {
    display: grid;
    grid-template-columns: minmax(3.5rem, 22%) 3.4rem minmax(0, 1fr);
    gap: 0.1rem 0.6rem;
    align-items: center;
    width: 100%;
    min-height: 48px;
    padding: 0.35rem 0.6rem;
    text-align: left;
    white-space: normal;
    border: 1px solid var(--rule);
    border-radius: var(--round);
    background: var(--sheet);
    color: var(--ink);
  }
  .ranking .cause[aria-pressed='true'] {
    background: var(--accent-soft);
    color: var(--ink);
    border-color: var(--accent);
    box-shadow: inset 5px 0 0 var(--accent);
  }
  .bar {
    width: 100%;
    height: 12px;
    fill: var(--accent);
  }
  .bar .all {
    fill: var(--sunk);
    stroke: var(--rule-strong);
    vector-effect: non-scaling-stroke;
  }
  .percent {
    font-weight: 700;
    text-align: right;
    white-space: nowrap;
    font-variant-numeric: tabular-nums;
  }
  .what b::first-letter {
    text-transform: uppercase;
  }
  .fitted {
    grid-column: 3;
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 0.5rem;
    align-items: center;
    font-size: 0.84rem;
  }
  .range {
    width: 5.5rem;
    height: 10px;
    fill: var(--ink);
    stroke: var(--accent);
    stroke-width: 4;
  }
  .range path {
    vector-effect: non-scaling-stroke;
  }
  .range .axis {
    stroke: var(--rule-strong);
    stroke-width: 1;
  }
  .range rect {
    stroke: none;
  }
  details {
    font-size: 0.86rem;
  }
  summary {
    padding: 0.3rem 0.6rem;
    cursor: pointer;
    color: var(--ink-soft);
  }
  @media (pointer: coarse) {
    summary {
      padding-block: 0.8rem;
    }
  }
  details li > button {
    width: 100%;
    min-height: 44px;
    text-align: left;
    white-space: normal;
    margin-bottom: 0.2rem;
  }
  .checks li {
    border: 1px solid var(--rule);
    border-radius: var(--round);
    padding: 0.4rem 0.6rem 0.5rem;
    font-size: 0.88rem;
  }
  .journal li {
    display: flex;
    gap: 0.6rem;
    align-items: center;
    justify-content: space-between;
    font-size: 0.88rem;
    border-bottom: 1px solid var(--rule);
    padding: 0.15rem 0;
  }
  @media (max-width: 560px) {
    .ranking .cause {
      grid-template-columns: minmax(0, 1fr) 3.4rem;
    }
    .what,
    .fitted {
      grid-column: 1 / -1;
    }
  }
`;
