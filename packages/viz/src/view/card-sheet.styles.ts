/** The test card as a page of paper, and its preview on the screen. */
import { css } from 'lit';

export const cardSheetStyles = css`
  :host {
    padding: 0.5rem 0.7rem 0.8rem;
    font-size: 0.84rem;
    line-height: 1.3;
  }
  header {
    display: flex;
    gap: 0.6rem;
    align-items: flex-start;
    justify-content: space-between;
  }
  button {
    min-height: 44px;
  }
  .cautions {
    border: 1px solid var(--caution);
    background: var(--caution-soft);
    border-radius: var(--round);
    padding: 0.3rem 0.6rem;
    margin-top: 0.4rem;
  }
  ul {
    margin: 0;
    padding-left: 1.1rem;
  }
  .lead {
    margin: 0.4rem 0;
  }
  h3 {
    margin-top: 0.6rem;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    margin-top: 0.2rem;
  }
  th,
  td {
    border: 1px solid var(--rule-strong);
    padding: 0.08rem 0.3rem;
    text-align: right;
    font-weight: 400;
  }
  th:first-child {
    text-align: left;
  }
  tbody th::first-letter {
    text-transform: uppercase;
  }
  thead th {
    font-weight: 700;
  }
  .room {
    min-width: 3.2rem;
  }
  .line {
    height: 1.7rem;
    border-bottom: 1px solid var(--rule-strong);
  }
  .rule {
    display: flex;
    gap: 0.5rem;
    align-items: end;
    margin-top: 0.7rem;
  }
  .rule span {
    flex: 1;
    min-width: 2.5rem;
    border-bottom: 1px solid var(--ink);
  }
  @media print {
    :host {
      color: #000000;
      padding: 0;
      font-size: 8.6pt;
      line-height: 1.22;
    }
    button {
      display: none;
    }
    .cautions {
      background: none;
      border: 1.5pt solid #000000;
    }
    th,
    td {
      border-color: #555555;
      padding: 2.4pt 4pt;
    }
    .room {
      width: 14%;
    }
    .block,
    .cautions,
    tr {
      break-inside: avoid;
    }
    h2,
    h3 {
      break-after: avoid;
    }
  }
`;
