import { css } from 'lit';

export const listStyles = css`
  ul,
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    border-bottom: 1px solid var(--rule);
  }
  .row {
    display: flex;
    gap: 0.6rem;
    width: 100%;
    padding: 0.45rem 0.7rem;
    text-align: left;
    white-space: normal;
    align-items: flex-start;
    background: none;
    border: 0;
    border-radius: 0;
    font-size: 0.9rem;
    line-height: 1.35;
  }
  .row > .sign {
    margin-top: 0.15em;
  }
  .row:focus-visible {
    outline-offset: -3px;
  }
  .chosen,
  .chosen > .row {
    background: var(--accent-soft);
  }
`;
