import { css } from 'lit';

/** What the order chart and the traces look alike in: a column with tools over a chart. */
export const chartStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 0.6rem;
    align-items: center;
    padding: 0.3rem 0.6rem;
    font-size: 0.78rem;
    border-bottom: 1px solid var(--rule);
  }
  .tools label {
    display: inline-flex;
    gap: 0.3rem;
    align-items: center;
  }
  .tools button {
    min-height: 28px;
    min-width: 28px;
  }
  .spread {
    flex: 1;
  }
  .scroll {
    flex: 1;
    overflow: hidden auto;
    position: relative;
    background: var(--sheet);
  }
  .axis {
    position: sticky;
    top: 0;
    z-index: 2;
    background: var(--sheet);
    border-bottom: 1px solid var(--rule);
  }
  .body {
    position: relative;
    touch-action: pan-y;
    user-select: none;
  }
`;
