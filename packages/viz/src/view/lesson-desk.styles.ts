import { css } from 'lit';

export const deskStyles = css`
  :host {
    padding: 0;
  }
  .field {
    display: grid;
    gap: 0.15rem;
    font-size: 0.86rem;
    color: var(--ink-soft);
  }
  .field input,
  .field textarea,
  .field select {
    font: inherit;
    font-size: 0.95rem;
    color: var(--ink);
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
    padding: 0.4rem 0.5rem;
    min-height: 40px;
    min-width: 0;
    width: 100%;
  }
  .field textarea {
    resize: vertical;
  }
  .short {
    max-width: 20rem;
  }
  .adder {
    display: grid;
    gap: 0.4rem;
    padding: 0.6rem 0.7rem;
    background: var(--sunk);
    border-radius: var(--round);
  }
  .steps {
    display: grid;
    gap: 0.4rem;
  }
  .steps > li {
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  .steps > li.chosen {
    border-color: var(--accent);
  }
  .bar {
    display: flex;
    gap: 0.25rem;
    padding: 0.2rem;
  }
  .bar button {
    min-height: 44px;
    min-width: 40px;
    border-color: transparent;
  }
  .bar .name {
    flex: 1;
    min-width: 0;
    display: flex;
    gap: 0.5rem;
    align-items: center;
    text-align: left;
    white-space: normal;
  }
  .name span {
    flex: 1;
    min-width: 0;
  }
  .name small {
    max-height: 2.6em;
    overflow: hidden;
    overflow-wrap: anywhere;
  }
  .name .sign {
    color: var(--fail);
  }
  .form {
    display: grid;
    gap: 0.6rem;
    padding: 0.4rem 0.8rem 0.8rem;
  }
  .form .row {
    font-size: 0.92rem;
  }
  .chips {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem;
  }
  .chips li {
    display: inline-flex;
    align-items: center;
    background: var(--sunk);
    border-radius: var(--round);
    padding-left: 0.5rem;
  }
  .chips button {
    border: 0;
    background: none;
    min-width: 36px;
    min-height: 36px;
  }
  .truth {
    border-left: 4px solid var(--note);
    padding-left: 0.6rem;
  }
`;
