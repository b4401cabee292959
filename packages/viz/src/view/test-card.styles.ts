import { css } from 'lit';

export const testCardStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: 0.6rem;
    padding: 0.5rem 0.7rem 0.9rem;
    flex: none !important;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem 0.6rem;
    align-items: center;
    font-size: 0.86rem;
  }
  .tools button {
    min-height: 44px;
  }
  .expect {
    flex-basis: 100%;
  }
  input[type='file'] {
    display: none;
  }
  h2 {
    margin-top: 0.3rem;
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
    display: flex;
    flex-direction: column;
    gap: 0.25rem;
  }
  li > button {
    min-height: 48px;
  }
  ol li {
    display: flex;
    gap: 0.3rem;
  }
  ol li > button:first-child {
    flex: 1;
    min-width: 0;
    text-align: left;
    white-space: normal;
    font-variant-numeric: tabular-nums;
  }
  ol li > button:first-child b::first-letter {
    text-transform: uppercase;
  }
  ol li > button:last-child {
    min-width: 48px;
  }
  .box {
    border: 1px solid var(--caution);
    background: var(--caution-soft);
    border-radius: var(--round);
    padding: 0.4rem 0.7rem;
    font-size: 0.86rem;
  }
  ul {
    margin: 0.2rem 0 0;
    padding-left: 1.1rem;
  }
`;
