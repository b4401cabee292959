import { css } from 'lit';

export const circuitStyles = css`
  :host {
    container-type: inline-size;
    display: flex;
    flex-direction: column;
    min-height: 0;
  }
  .desk {
    flex: 1;
    min-height: 0;
    display: flex;
    position: relative;
  }
  .sheet {
    flex: 1;
    min-width: 0;
    position: relative;
    overflow: hidden;
  }
  .sheet > svg {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    /* At its whole size a finger scrolls the page; closer, it moves the drawing. */
    touch-action: pan-y;
    cursor: grab;
  }
  .sheet > svg.closer {
    touch-action: none;
  }
  ww-part-card {
    position: absolute;
    z-index: 1;
    top: 0.4rem;
    right: 0.4rem;
    width: 17.5rem;
    max-height: calc(100% - 0.8rem);
    overflow: auto;
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-radius: var(--round);
    box-shadow: 0 2px 10px rgb(0 0 0 / 0.2);
  }
  ww-part-card.left {
    right: auto;
    left: 0.4rem;
  }
  @container (max-width: 560px) {
    ww-part-card,
    ww-part-card.left {
      inset: auto 0 0;
      width: auto;
      max-height: 60%;
    }
  }
  footer {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1rem;
    align-items: center;
    justify-content: space-between;
    padding: 0.2rem 0.6rem;
    border-top: 1px solid var(--rule);
  }
  .tools {
    display: flex;
    gap: 0.3rem;
    margin-left: auto;
  }
  .tools button {
    font-size: 0.85rem;
    min-height: 30px;
    min-width: 32px;
  }
  @media (pointer: coarse) {
    .tools button {
      min-height: 44px;
      min-width: 44px;
    }
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 0.8rem;
    align-items: center;
    font-size: 0.78rem;
    color: var(--ink-soft);
  }
  .legend text {
    font-size: 10.5px;
    font-weight: 400;
    fill: var(--ink-soft);
  }
  .legend path.rim {
    fill: var(--rule-strong);
    stroke: none;
  }
  .legend .sample path.rim {
    fill: none;
    stroke: var(--rule-strong);
  }
  .sample {
    display: inline-flex;
    gap: 0.35rem;
    align-items: center;
    white-space: nowrap;
  }
  .rim,
  .core,
  .dashes {
    fill: none;
    stroke-linejoin: round;
  }
  .rim {
    stroke: var(--rule-strong);
    stroke-linecap: square;
  }
  .core {
    stroke-linecap: square;
  }
  .core.gas {
    stroke-dasharray: 0.05 0.95;
    stroke-linecap: round;
  }
  .core.sucked {
    stroke-dasharray: 0.6 0.6;
    stroke-linecap: butt;
  }
  /* On the colours of the scale, which are the same by day and night. */
  .dashes {
    stroke: #10202a;
    stroke-width: 0.24;
    stroke-dasharray: 0.7 1.3;
  }
  .dashes.on-dark {
    stroke: #fff6dc;
  }
  .flow {
    fill: var(--ink);
    stroke: var(--sheet);
    stroke-width: 0.25;
    paint-order: stroke;
  }
  .joint {
    fill: var(--ink);
  }
  .part {
    cursor: pointer;
    /* In a drawing an outline is as wide as its modules: the grip is ringed instead. */
    outline: 0 solid transparent;
  }
  .grip {
    fill: transparent;
    stroke: none;
  }
  .part:hover .grip {
    fill: var(--accent-soft);
    fill-opacity: 0.5;
  }
  .part:focus-visible .grip {
    stroke: var(--focus);
    stroke-width: 3;
    vector-effect: non-scaling-stroke;
  }
  .part.told .grip {
    stroke: var(--accent);
    stroke-width: 2;
    stroke-dasharray: 3 3;
    vector-effect: non-scaling-stroke;
  }
  .part.chosen .grip {
    fill: var(--accent-soft);
    fill-opacity: 0.45;
    stroke: var(--accent);
    stroke-width: 2;
    vector-effect: non-scaling-stroke;
  }
  .part.flagged-fail .grip,
  .part.flagged-caution .grip {
    stroke-width: 2.5;
    stroke-dasharray: 9 4;
    vector-effect: non-scaling-stroke;
  }
  .part.flagged-fail .grip {
    stroke: var(--fail);
  }
  .part.flagged-caution .grip {
    stroke: var(--caution);
  }
  .symbol path,
  .tank path,
  .lead {
    fill: none;
    stroke: var(--ink);
    stroke-width: 0.22;
    stroke-linejoin: round;
  }
  path.body {
    fill: var(--sheet);
  }
  path.solid {
    fill: var(--ink);
    stroke-width: 0.1;
  }
  path.thin {
    stroke-width: 0.14;
  }
  path.dash {
    stroke-width: 0.14;
    stroke-dasharray: 0.5 0.35;
  }
  path.fluid {
    stroke: var(--accent);
    stroke-width: 0.3;
  }
  text {
    fill: var(--ink);
  }
  .heading {
    font-weight: 700;
  }
  .figures text {
    font-weight: 600;
    fill: var(--ink);
  }
  .figures text.rate {
    font-weight: 400;
    fill: var(--ink-soft);
  }
`;
