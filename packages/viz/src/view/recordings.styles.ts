import { css } from 'lit';

export const recordingsStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: 0.6rem;
    padding: 0.5rem;
    overflow: auto;
    font-size: 0.82rem;
  }
  input[type='file'] {
    display: none;
  }
  section {
    border-top: 1px solid var(--rule);
    padding-top: 0.4rem;
  }
  header {
    display: flex;
    gap: 0.5rem;
    align-items: center;
    justify-content: space-between;
  }
  h2 {
    overflow-wrap: anywhere;
  }
  ul {
    margin: 0.3rem 0;
    padding: 0;
    list-style: none;
  }
  li {
    padding: 0.15rem 0;
    overflow-wrap: anywhere;
  }
  .columns > div {
    display: grid;
    grid-template-columns: 4.6rem minmax(0, 1fr);
    gap: 0.15rem 0.35rem;
    margin-top: 0.35rem;
  }
  .columns .name {
    grid-column: 1 / -1;
    overflow-wrap: anywhere;
  }
  select {
    width: 100%;
    min-width: 0;
    text-overflow: ellipsis;
  }
  .columns input,
  .offset input[type='number'] {
    width: 100%;
    min-height: 32px;
    padding: 0 0.35rem;
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  .offset {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 5.6rem;
    gap: 0.3rem 0.5rem;
    align-items: center;
    margin-top: 0.4rem;
  }
  .offset input[type='range'] {
    width: 100%;
  }
  .offset > :first-child,
  .offset > :last-child {
    grid-column: 1 / -1;
  }
`;
