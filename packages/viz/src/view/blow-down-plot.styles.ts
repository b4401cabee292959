import { css } from 'lit';

export const momentPlotStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
    border-top: 1px solid var(--rule);
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 0.6rem;
    align-items: center;
    padding: 0.3rem 0.6rem;
    font-size: 0.78rem;
  }
  .tools label,
  .key {
    display: inline-flex;
    gap: 0.3rem;
    align-items: center;
  }
  .tools select {
    min-height: 28px;
    padding: 0 0.2rem;
  }
  .key svg {
    width: 26px;
    height: 10px;
  }
  .plot {
    flex: 1;
    min-height: 150px;
    position: relative;
  }
  @media (max-height: 820px) {
    .plot {
      min-height: 112px;
    }
  }
  .plot > svg {
    position: absolute;
    inset: 0;
  }
  p {
    font-size: 0.8rem;
    padding: 0 0.6rem 0.35rem;
  }
  text {
    fill: var(--ink);
    font-size: 12px;
    font-variant-numeric: tabular-nums;
  }
  .grid {
    stroke: var(--rule);
    fill: none;
  }
  .available,
  .needed,
  .bottle {
    fill: none;
    stroke-width: 2.4;
    stroke-linejoin: round;
  }
  .available {
    stroke: var(--rising);
  }
  .needed {
    stroke: var(--fail);
    stroke-dasharray: 7 3;
  }
  .bottle {
    stroke: var(--falling);
    stroke-dasharray: 11 3 2 3;
  }
  .held {
    stroke-width: 1.2;
    opacity: 0.75;
  }
  .worst {
    stroke: var(--ink);
    stroke-width: 2;
    fill: none;
  }
  .worst-word {
    font-weight: 700;
  }
  .worst-word,
  .unit {
    paint-order: stroke;
    stroke: var(--sheet);
    stroke-width: 4px;
    stroke-linejoin: round;
  }
  .head {
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .dot {
    stroke: var(--sheet);
    stroke-width: 1.5;
  }
  .dot.available {
    fill: var(--rising);
  }
  .dot.needed {
    fill: var(--fail);
    stroke-dasharray: none;
  }
  .dot.bottle {
    fill: var(--falling);
    stroke-dasharray: none;
  }
`;
