/** The bay's layout, its foot and its table; bay-parts.styles.ts has the drawings. */
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
    /* What moves in it is laid out and painted alone. */
    contain: strict;
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
  /* On a phone signs stand without their words, and flags are listed below. */
  @container (max-width: 480px) {
    :is(th, td).flags {
      display: none;
    }
    table {
      table-layout: auto;
      font-size: 0.72rem;
    }
    thead th {
      font-size: 0.68rem;
    }
    th:is(.phase, .angle, .doors, .lock, :first-child) {
      width: auto;
    }
    th,
    td {
      padding-inline: 0.15rem;
    }
    td .word {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .foot {
      gap: 0.2rem;
      padding-inline: 0.4rem;
      font-size: 0.76rem;
    }
    .foot p {
      white-space: normal;
      line-height: 1.2;
    }
    .drawings {
      min-height: 150px;
    }
  }
  @media (pointer: coarse) {
    figcaption {
      top: 0.1rem;
      right: 0.1rem;
    }
    figcaption button,
    .foot :is(button, summary) {
      min-height: 44px;
      min-width: 44px;
    }
  }
`;
