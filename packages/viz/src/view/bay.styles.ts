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
    gap: 1px;
    flex: 1;
    min-height: 170px;
    background: var(--rule);
  }
  .of-2 {
    grid-template-columns: 3fr 2fr;
  }
  .of-3 {
    grid-template-columns: 4fr 3fr 3fr;
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
  .tools {
    display: flex;
    gap: 0.25rem;
  }
  figcaption button {
    font-size: 0.8rem;
    min-height: 26px;
  }
  .icon {
    min-width: 28px;
    padding: 0 0.3rem;
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
  /* What stands behind: paler, without the cost of a see-through group. */
  .far .slider {
    stroke: color-mix(in srgb, var(--metal-light) 40%, var(--sheet));
  }
  .far .cylinder {
    stroke: color-mix(in srgb, var(--metal) 36%, var(--sheet));
  }
  .far :is(.tyre, .hub) {
    fill: color-mix(in srgb, var(--tyre) 32%, var(--sheet));
    stroke: none;
  }
  .far .rim {
    fill: color-mix(in srgb, var(--metal-light) 40%, var(--sheet));
    stroke: none;
  }
  .far :is(.tread) {
    stroke: none;
  }
  .far :is(.door, .pivot, .hinge) {
    fill: color-mix(in srgb, var(--panel) 25%, var(--sheet));
    stroke: color-mix(in srgb, var(--ink) 32%, var(--sheet));
  }
  .brace {
    fill: none;
    stroke: var(--metal);
    stroke-width: 28;
    stroke-linejoin: round;
    stroke-linecap: round;
  }
  .drive {
    fill: none;
    stroke: var(--ink-soft);
    stroke-width: 1.2;
    vector-effect: non-scaling-stroke;
  }
  .linkage {
    stroke-dasharray: 8 3 2 3;
  }
  .chain {
    stroke-width: 2.4;
    stroke-dasharray: 3 2;
  }
  .ramp {
    fill: var(--sunk);
    stroke: var(--rule-strong);
    stroke-width: 1.2;
    vector-effect: non-scaling-stroke;
  }
  .ramp.bears {
    fill: var(--caution);
    stroke: var(--ink);
  }
  .none {
    display: none;
  }
  .measure path {
    fill: none;
    vector-effect: non-scaling-stroke;
  }
  .measure .halo {
    stroke: var(--sheet);
    stroke-width: 4.5;
  }
  .line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.3;
  }
  .measure text {
    font-weight: 400;
    text-transform: none;
    font-variant-numeric: tabular-nums;
  }
  .strut.far .line {
    stroke: var(--ink-soft);
  }
  .strut.far text,
  .least text {
    fill: var(--ink-soft);
  }
  .least .line,
  .line.least {
    stroke: var(--ink-soft);
    stroke-dasharray: 3 2;
  }
  .gap:not(.least) text {
    font-weight: 700;
  }
  .short .line {
    stroke: var(--fail);
    stroke-width: 2;
  }
  .measure .warning,
  .short text {
    fill: var(--fail);
    fill-rule: evenodd;
  }
  .ring {
    fill: var(--sheet);
    stroke-width: 3;
    vector-effect: non-scaling-stroke;
  }
  .stem {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .body {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 1.6;
  }
  .body.opening {
    fill: var(--rule-strong);
  }
  .body.open {
    fill: var(--ink);
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
  :is(.pivot, .ring):is(.flagged-fail, .flagged-caution, .flagged-note) {
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
  .foot {
    position: relative;
    display: flex;
    gap: 0.6rem;
    align-items: center;
    padding: 0.1rem 0.6rem;
    font-size: 0.84rem;
    border-top: 1px solid var(--rule);
  }
  .foot p {
    flex: 1;
    min-width: 0;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    font-variant-numeric: tabular-nums;
  }
  .foot button {
    min-height: 26px;
    font-variant-numeric: tabular-nums;
  }
  summary {
    cursor: pointer;
    min-height: 26px;
    padding: 0.15rem 0.3rem;
  }
  details ul {
    position: absolute;
    z-index: 3;
    right: 0.4rem;
    bottom: 100%;
    margin: 0;
    padding: 0.4rem 0.8rem 0.4rem 0.5rem;
    columns: 2;
    list-style: none;
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  details li {
    display: flex;
    gap: 0.5rem;
    align-items: center;
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
  /* On a phone words take two lines, and flags are listed below. */
  @container (max-width: 480px) {
    :is(th, td).flags {
      display: none;
    }
    table {
      table-layout: auto;
    }
    th,
    td {
      white-space: normal;
    }
    .foot p {
      white-space: normal;
      line-height: 1.2;
    }
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
