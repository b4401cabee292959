/** A dialog with a form. */
import { css } from 'lit';

export const formStyles = css`
  dialog {
    color: var(--ink);
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: 10px;
    padding: 1rem 1.3rem 1.2rem;
    width: min(34rem, calc(100vw - 1.4rem));
  }
  dialog::backdrop {
    background: rgb(0 0 0 / 45%);
  }
  h2 {
    font-size: 1.1rem;
    margin-bottom: 0.3rem;
  }
  p {
    font-size: 0.9rem;
  }
  form {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 0.7rem;
    align-items: end;
    margin-top: 0.7rem;
  }
  form label {
    display: flex;
    flex-direction: column;
    gap: 0.15rem;
    font-size: 0.84rem;
    color: var(--ink-soft);
    min-width: 0;
    flex: 1 1 8.5rem;
  }
  form select,
  form input {
    color: var(--ink);
    min-height: 44px;
    font-size: 1rem;
    min-width: 0;
    width: 100%;
  }
  form input {
    padding: 0 0.5rem;
    background: var(--sunk);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  form button {
    min-height: 44px;
    flex: 1 1 8.5rem;
  }
  form p {
    flex-basis: 100%;
  }
  .main {
    background: var(--accent);
    color: var(--on-accent);
    border-color: var(--accent);
  }
  .main:hover:not(:disabled) {
    background: var(--accent);
    filter: brightness(1.12);
  }
  .end {
    display: flex;
    justify-content: flex-end;
    gap: 0.6rem;
    margin-top: 0.8rem;
  }
`;
