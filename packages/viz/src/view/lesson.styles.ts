import { css } from 'lit';

export const lessonStyles = css`
  :host {
    padding: 0.8rem 1rem 1rem;
    display: flex;
    flex-direction: column;
    gap: 0.7rem;
  }
  header {
    display: flex;
    gap: 0.5rem;
    align-items: flex-start;
  }
  header > div {
    flex: 1;
    min-width: 0;
  }
  h2 {
    font-size: 1.1rem;
  }
  ul,
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    align-items: center;
  }
  .row button,
  nav button,
  .lessons button {
    min-height: 44px;
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
  input[type='file'] {
    display: none;
  }
  .lessons {
    display: grid;
    gap: 0.5rem;
  }
  .lessons button {
    display: grid;
    width: 100%;
    text-align: left;
    white-space: normal;
    padding: 0.5rem 0.8rem;
  }
  .lessons span {
    font-size: 0.9rem;
    color: var(--ink-soft);
  }
  .issues li {
    padding: 0.4rem 0;
    border-top: 1px solid var(--rule);
    overflow-wrap: anywhere;
  }
  .step {
    display: flex;
    flex-direction: column;
    gap: 0.7rem;
  }
  .tell,
  .ask,
  .why {
    max-width: 44em;
    font-size: 1.05rem;
    white-space: pre-line;
    overflow-wrap: anywhere;
  }
  .ask {
    font-weight: 700;
    font-size: 1.15rem;
    line-height: 1.3;
  }
  .run {
    font-size: 0.92rem;
  }
  .pair {
    display: inline-flex;
  }
  .pair button + button {
    margin-left: -1px;
  }
  form {
    display: flex;
    flex-direction: column;
    gap: 0.7rem;
  }
  fieldset {
    border: 0;
    margin: 0;
    padding: 0;
    display: grid;
    gap: 0.35rem;
    min-width: 0;
  }
  .choice,
  .arrange li,
  .room li {
    display: flex;
    gap: 0.6rem;
    align-items: center;
    min-height: 44px;
    padding: 0.35rem 0.7rem;
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
    overflow-wrap: anywhere;
  }
  .choice:has(:checked) {
    border-color: var(--accent);
    background: var(--accent-soft);
  }
  .choice input {
    width: 1.2rem;
    height: 1.2rem;
    flex: none;
    accent-color: var(--accent);
    margin: 0;
  }
  .choice span,
  .arrange span,
  .room span {
    flex: 1;
    min-width: 0;
  }
  small {
    display: block;
    font-size: 0.86rem;
    color: var(--ink-soft);
  }
  .right,
  .choice.right:has(:checked) {
    border-color: var(--note);
    border-width: 2px;
    background: var(--note-soft);
  }
  .choice.missed:has(:checked) {
    border-color: var(--rule-strong);
    background: none;
    border-style: dashed;
  }
  .tag {
    color: var(--note);
    white-space: nowrap;
  }
  .arrange,
  .room,
  .offers {
    display: grid;
    gap: 0.35rem;
  }
  .arrange {
    counter-reset: place;
  }
  .arrange li {
    counter-increment: place;
    cursor: grab;
  }
  .arrange li.right {
    cursor: default;
  }
  .arrange li::before {
    content: counter(place);
    font-weight: 700;
    width: 1.2em;
    text-align: right;
    color: var(--ink-soft);
  }
  .arrange button {
    min-width: 44px;
    min-height: 44px;
    font-size: 1.1rem;
  }
  .verdict {
    display: block;
  }
  .no {
    color: var(--fail);
  }
  .yes,
  .answer h3 {
    font-size: 1.05rem;
  }
  .answer {
    display: grid;
    gap: 0.5rem;
    border-top: 2px solid var(--rule);
    padding-top: 0.6rem;
  }
  .answer h3 span {
    font-weight: 400;
  }
  .why {
    border-left: 4px solid var(--accent);
    padding-left: 0.7rem;
  }
  .told {
    display: grid;
    gap: 0.25rem;
    font-size: 0.95rem;
    overflow-wrap: anywhere;
  }
  .told li {
    display: flex;
    gap: 0.5rem;
    align-items: baseline;
  }
  .told li.word,
  .told li.figure,
  .told li.margin {
    padding-left: 0.2rem;
  }
  .told .cause {
    color: var(--ink-soft);
  }
  .told .margin::before {
    content: '✓';
    width: 1em;
    flex: none;
    color: var(--note);
    font-weight: 700;
  }
  .told .bad::before {
    content: '✗';
    color: var(--fail);
  }
  .told .time {
    min-height: 28px;
    padding: 0 0.4rem;
    flex: none;
    font-size: 0.88rem;
  }
  .checks {
    display: grid;
    gap: 0.5rem;
  }
  .reading {
    padding: 0.4rem 0.7rem;
    background: var(--sunk);
    border-radius: var(--round);
  }
  .offers {
    grid-template-columns: repeat(auto-fill, minmax(13rem, 1fr));
  }
  .offers button {
    min-height: 44px;
    white-space: normal;
    text-align: left;
    line-height: 1.2;
  }
  nav {
    display: flex;
    justify-content: space-between;
    gap: 0.5rem;
    position: sticky;
    bottom: 0;
    padding: 0.4rem 0;
    background: var(--sheet);
  }
  .results {
    border-top: 1px solid var(--rule);
    padding-top: 0.5rem;
  }
  .results > * + * {
    margin-top: 0.5rem;
  }
  .results summary {
    min-height: 44px;
    display: list-item;
    align-content: center;
    cursor: pointer;
  }
  .results label {
    display: grid;
    gap: 0.2rem;
    font-size: 0.9rem;
  }
  .results input {
    max-width: 22rem;
    min-height: 40px;
    padding: 0 0.5rem;
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
  }
  /* To be read from the back of a room. */
  .step[data-room] {
    font-size: 1.25rem;
  }
  .step[data-room] .ask {
    font-size: 1.6rem;
  }
  .step[data-room] :is(.tell, .why, .told) {
    font-size: 1.3rem;
  }
  .room b:first-child {
    width: 1.4em;
    text-align: center;
    font-size: 1.2em;
  }
`;
