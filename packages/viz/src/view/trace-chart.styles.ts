import { css } from 'lit';

export const traceChartStyles = css`
  .scroll {
    min-height: 0;
  }
  .body {
    cursor: ew-resize;
  }
  .body.marking {
    cursor: crosshair;
    touch-action: none;
  }
  .body:focus-visible {
    outline-offset: -3px;
  }
  canvas {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    pointer-events: none;
  }
  .front {
    position: absolute;
    inset: 0;
    pointer-events: none;
  }
  .front .label {
    pointer-events: auto;
  }
  text {
    fill: var(--ink);
    font-size: 11.5px;
  }
  .axis text,
  .tick {
    fill: var(--ink-soft);
    font-size: 11px;
    font-variant-numeric: tabular-nums;
  }
  .axis .now {
    fill: var(--on-accent);
    font-weight: 600;
  }
  .axis .now-box {
    fill: var(--accent);
  }
  .title {
    font-weight: 700;
  }
  .label path {
    fill: none;
  }
  .value {
    font-weight: 600;
    font-variant-numeric: tabular-nums;
  }
  .grid {
    stroke: var(--rule);
    stroke-width: 1;
  }
  .play-head {
    stroke: var(--accent);
    stroke-width: 2;
  }
  .dot {
    stroke: var(--sheet);
    stroke-width: 1;
  }
  .mark {
    fill: var(--accent);
    fill-opacity: 0.18;
    stroke: var(--accent);
  }
`;
