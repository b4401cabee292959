import { css } from 'lit';

export const bayStyles = css`
  :host {
    container-type: inline-size;
    display: flex;
    flex-direction: column;
    min-height: 0;
  }
  .drawings {
    display: grid;
    grid-template-columns: 3fr 2fr;
    gap: 1px;
    flex: 1;
    min-height: 170px;
    background: var(--rule);
  }
  figure {
    margin: 0;
    position: relative;
    min-width: 0;
    min-height: 0;
    background: var(--sheet);
    overflow: hidden;
  }
  figure > svg {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
  }
  figcaption {
    position: absolute;
    z-index: 1;
    left: 0.6rem;
    top: 0.3rem;
    right: 0.6rem;
    display: flex;
    justify-content: space-between;
    align-items: start;
    gap: 0.5rem;
    font-size: 0.8rem;
    line-height: 1.3;
    color: var(--ink-soft);
  }
  figcaption small {
    display: block;
    font-size: 0.76rem;
  }
  figcaption button {
    font-size: 0.8rem;
    min-height: 26px;
  }
  .slider,
  .cylinder {
    fill: none;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  .slider {
    stroke: var(--metal-light);
  }
  .cylinder {
    stroke: var(--metal);
  }
  .pivot,
  .hinge {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 1.5;
    vector-effect: non-scaling-stroke;
  }
  .tyre {
    fill: var(--tyre);
    stroke: var(--tyre);
    stroke-width: 1;
    vector-effect: non-scaling-stroke;
  }
  .tread,
  .rim,
  .hub {
    fill: none;
    stroke: var(--tyre-line);
    stroke-width: 1;
    vector-effect: non-scaling-stroke;
  }
  .rim {
    fill: var(--metal-light);
    stroke: var(--metal);
  }
  .hub {
    fill: var(--metal);
    stroke: none;
  }
  .door {
    fill: var(--panel);
    fill-opacity: 0.6;
    stroke: var(--ink);
    stroke-width: 2.5;
    stroke-linejoin: round;
    vector-effect: non-scaling-stroke;
  }
  .far {
    opacity: 0.32;
  }
  .ghost {
    fill: none;
    stroke: var(--rule-strong);
    stroke-width: 1;
    stroke-dasharray: 2 4;
    vector-effect: non-scaling-stroke;
  }
  .well {
    fill: none;
    stroke: var(--rule-strong);
    stroke-width: 1;
    vector-effect: non-scaling-stroke;
  }
  .flagged-fail,
  .flagged-caution,
  .flagged-note {
    stroke-width: 4;
    stroke-dasharray: 9 4;
  }
  /* Too small for dashes. */
  .pivot.flagged-fail,
  .pivot.flagged-caution,
  .pivot.flagged-note {
    stroke-width: 3;
    stroke-dasharray: none;
  }
  .flagged-fail {
    stroke: var(--fail);
  }
  .flagged-caution {
    stroke: var(--caution);
  }
  .flagged-note {
    stroke: var(--note);
  }
  /* A rim of paper keeps signs and letters clear of the lines behind them. */
  .sign-at {
    fill: currentColor;
    fill-rule: evenodd;
    stroke: var(--sheet);
    stroke-width: 2.4;
    paint-order: stroke;
  }
  .sign-at.engaged {
    color: var(--ink);
  }
  .sign-at.open {
    color: var(--ink-soft);
  }
  text {
    stroke: var(--sheet);
    paint-order: stroke;
    fill: var(--ink);
    font-weight: 600;
    text-transform: capitalize;
  }
  text.cut {
    fill: var(--ink-soft);
    font-weight: 400;
    text-transform: none;
  }
  .break {
    stroke: var(--rule-strong);
    stroke-width: 1.5;
    vector-effect: non-scaling-stroke;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    font-size: 0.87rem;
    border-top: 1px solid var(--rule);
    table-layout: fixed;
  }
  th,
  td {
    text-align: left;
    padding: 0.14rem 0.5rem;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  thead th {
    font-weight: 400;
    font-size: 0.8rem;
    color: var(--ink-soft);
    padding-bottom: 0;
  }
  th:first-child {
    width: 4.4rem;
    text-transform: capitalize;
  }
  th.phase {
    width: 18%;
  }
  th.angle {
    width: 9.5%;
  }
  th.doors {
    width: 15.5%;
  }
  th.lock {
    width: 12.5%;
  }
  td.flags {
    font-weight: 600;
  }
  td:nth-child(2) {
    font-weight: 600;
  }
  /* Beside a bench. */
  @container (max-width: 660px) {
    table {
      font-size: 0.76rem;
    }
    th,
    td {
      padding-inline: 0.3rem;
    }
    th.phase {
      width: 20.5%;
    }
    th.angle {
      width: 12%;
    }
    th.doors {
      width: 15%;
    }
    th.lock {
      width: 14%;
    }
    th:first-child {
      width: 3.6rem;
    }
  }
`;
