import { css } from 'lit';

export const blowDownStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
  }
  .tools,
  .key-row {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 0.6rem;
    align-items: center;
    padding: 0.3rem 0.6rem;
    font-size: 0.78rem;
  }
  .second {
    padding-top: 0;
    min-height: 32px;
    border-bottom: 1px solid var(--rule);
  }
  .key-row {
    padding: 0.1rem 0.6rem 0.3rem;
    gap: 0.1rem 0.8rem;
  }
  .tools label,
  .key {
    display: inline-flex;
    gap: 0.3rem;
    align-items: center;
  }
  .tools select,
  .tools button {
    min-height: 28px;
    padding: 0 0.4rem;
  }
  .spread {
    flex: 1;
    margin: 0 -0.3rem;
  }
  progress {
    accent-color: var(--accent);
    width: 6rem;
  }
  .empty {
    flex: 1.15;
    padding: 0.8rem;
  }
  .empty ul {
    list-style: none;
    margin: 0.5rem 0 0;
    padding: 0;
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
  }
  .empty button {
    white-space: normal;
    text-align: left;
  }
  /* What room is left goes to the map rather than to the plot, which brings its own height. */
  .map {
    flex: 4;
    min-height: 210px;
    position: relative;
    cursor: crosshair;
  }
  .map > svg {
    position: absolute;
    inset: 0;
  }
  .map:focus-visible {
    outline-offset: -3px;
  }
  .cell {
    padding: 0 0.6rem;
    font-size: 0.84rem;
    font-weight: 700;
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  ww-moment-plot {
    flex: 1 0 auto;
  }
  @media (max-height: 820px) {
    .map {
      min-height: 150px;
    }
  }
  .table {
    flex: 4;
    min-height: 210px;
    overflow: auto;
    position: relative;
  }
  table {
    border-collapse: collapse;
    font-size: 0.8rem;
  }
  th,
  td {
    padding: 0.15rem 0.5rem;
    text-align: right;
    white-space: nowrap;
    border-bottom: 1px solid var(--rule);
  }
  thead th {
    position: sticky;
    top: 0;
    background: var(--sheet);
  }
  text {
    fill: var(--ink);
    font-size: 12px;
    font-variant-numeric: tabular-nums;
  }
  .frame {
    fill: none;
    stroke: var(--rule-strong);
  }
  .tick {
    stroke: var(--rule-strong);
  }
  .no-lock-ground {
    fill: var(--sunk);
  }
  .over .no-lock-ground {
    fill: none;
  }
  .no-lock-line {
    fill: var(--rule-strong);
  }
  .no-lock-stroke {
    stroke: var(--rule-strong);
    stroke-width: 2;
  }
  .hatch.over {
    opacity: 0.55;
  }
  .failed {
    font-weight: 700;
  }
  .bound-casing {
    fill: none;
    stroke: #ffffff;
    stroke-width: 5;
    stroke-linecap: square;
  }
  .bound {
    fill: none;
    stroke: #a11d16;
    stroke-width: 2.6;
    stroke-linecap: square;
  }
  .casing {
    fill: none;
    stroke: #ffffff;
    stroke-width: 5.5;
  }
  .cursor-casing {
    fill: none;
    stroke: #ffffff;
    stroke-width: 4;
  }
  .cursor {
    fill: none;
    stroke: #14181a;
    stroke-width: 1.8;
  }
  .least {
    fill: none;
    stroke: #14181a;
    stroke-width: 3;
  }
  .in-hand {
    fill: none;
    stroke: #14181a;
    stroke-width: 2;
    stroke-dasharray: 2 4;
  }
  .own {
    fill: none;
    stroke: #14181a;
    stroke-width: 2.5;
  }
  .own-dot {
    fill: #14181a;
  }
  .played {
    fill: #ffffff;
    stroke: #14181a;
    stroke-width: 2.5;
  }
  .key svg {
    width: 24px;
    height: 16px;
  }
`;
