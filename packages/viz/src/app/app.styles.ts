import { css } from 'lit';

export const appStyles = css`
  :host {
    display: grid;
    grid-template-rows: auto auto auto auto minmax(0, 1fr) auto;
    grid-template-columns: minmax(0, 1fr);
    height: 100dvh;
    min-height: 620px;
    overflow: clip;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem 1rem;
    align-items: center;
    padding: 0.4rem 0.8rem;
    background: var(--sheet);
    border-bottom: 1px solid var(--rule);
  }
  h1 {
    margin: 0;
    font-size: 1.15rem;
    display: inline-flex;
    gap: 0.5rem;
    align-items: center;
  }
  h1 svg {
    width: 26px;
    height: 26px;
    border-radius: 6px;
  }
  ww-card-bar {
    flex: 1 1 34rem;
  }
  main {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 26rem;
    grid-template-rows: minmax(0, 1.2fr) minmax(0, 1fr);
    grid-template-areas: 'stage side' 'chart side';
    gap: 0.6rem;
    padding: 0.6rem 0.7rem;
    min-height: 0;
  }
  /* Larger buttons leave the bay's table less room. */
  @media (pointer: coarse) {
    main {
      grid-template-rows: minmax(0, 1.45fr) minmax(0, 1fr);
    }
  }
  .area {
    display: flex;
    flex-direction: column;
    min-width: 0;
    min-height: 0;
    background: var(--sheet);
    border: 1px solid var(--rule);
    border-radius: var(--round);
    overflow: hidden;
  }
  .stage {
    grid-area: stage;
  }
  .chart {
    grid-area: chart;
  }
  .side {
    grid-area: side;
    display: flex;
    flex-direction: column;
    gap: 0.6rem;
    min-width: 0;
    min-height: 0;
  }
  .fact {
    flex: none;
    padding: 0.35rem 0;
  }
  .panel {
    flex: 1;
  }
  .content {
    flex: 1;
    min-height: 0;
    display: flex;
    flex-direction: column;
  }
  .coming {
    margin: 1rem;
    color: var(--ink-soft);
  }
  .panel .content {
    overflow: auto;
    position: relative;
  }
  .content > * {
    flex: 1;
    min-height: 0;
  }
  .panel .content > * {
    flex: none;
  }
  [role='tablist'] {
    display: flex;
    /* A fifth tab goes below where there is no room beside. */
    flex-wrap: wrap;
    border-bottom: 1px solid var(--rule);
    background: var(--sunk);
  }
  [role='tab'] {
    flex: 1;
    border: 0;
    border-radius: 0;
    background: none;
    min-height: 38px;
    border-bottom: 3px solid transparent;
    color: var(--ink-soft);
  }
  [role='tab'][aria-selected='true'] {
    background: var(--sheet);
    color: var(--ink);
    font-weight: 700;
    border-bottom-color: var(--accent);
  }
  [role='tab']:focus-visible {
    outline-offset: -3px;
  }
  .badge {
    font-size: 0.82em;
    font-weight: 400;
    font-variant-numeric: tabular-nums;
  }
  .transport {
    background: var(--sheet);
    border-top: 1px solid var(--rule);
    z-index: 4;
  }
  .drop {
    position: fixed;
    inset: 0;
    z-index: 10;
    display: grid;
    place-items: center;
    background: color-mix(in srgb, var(--paper) 82%, transparent);
    border: 4px dashed var(--accent);
    font-size: 1.4rem;
    font-weight: 700;
    pointer-events: none;
  }
  .card-note {
    font-size: 0.84rem;
    line-height: 1.3;
    padding: 0.3rem 0.5rem 0;
    color: var(--ink-soft);
    max-height: 8em;
    overflow: auto;
  }
  @media (max-width: 1099px) {
    h1 {
      flex: 1;
    }
    ww-card-bar {
      order: 1;
      flex-basis: 100%;
    }
    :host {
      display: block;
      height: auto;
      overflow: visible;
    }
    main {
      grid-template-columns: minmax(0, 1fr);
      /* Both in sight at once on a low screen too. */
      grid-template-rows: clamp(280px, 54dvh - 115px, 370px) clamp(240px, 46dvh - 95px, 404px) auto;
      grid-template-areas: 'stage' 'chart' 'side';
    }
    .side {
      display: grid;
      grid-template-columns: minmax(0, 1fr);
    }
    .panel {
      /* Clear of the clock, which lies over the foot of the page. */
      scroll-margin-bottom: 130px;
      min-height: 320px;
    }
    .panel .content {
      max-height: 60vh;
    }
    .transport {
      position: sticky;
      bottom: 0;
    }
  }
  main.tall.swing {
    grid-template-rows: minmax(0, 1fr);
    grid-template-areas: 'stage side';
  }
  main.tall.swing .chart {
    display: none;
  }
  @media (max-width: 1099px) {
    main.tall.swing {
      grid-template-rows: clamp(320px, 64vw + 95px, 100dvh - 170px) auto;
      grid-template-areas: 'stage' 'side';
    }
  }
  main.waits .area {
    /* The former run, for as long as a long one takes. */
    opacity: 0.6;
    transition: opacity 0.1s 0.3s;
  }
  /* For a room: what moves, when, and why; nothing else. */
  :host([large]) {
    display: grid;
    height: 100dvh;
    overflow: clip;
  }
  :host([large]) main {
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(0, 1.25fr) minmax(0, 1fr) auto;
    grid-template-areas: 'stage' 'chart' 'told';
  }
  :host([large]) main.tall.swing {
    grid-template-rows: minmax(0, 1fr) auto;
    grid-template-areas: 'stage' 'told';
  }
  :host([large]) .side {
    display: none;
  }
  @media (max-width: 1400px) {
    /* Still there by their keys. */
    :host([large]) :is(.minor, h1 span) {
      display: none;
    }
    :host([large]) h1 {
      flex: none;
    }
    :host([large]) ww-card-bar {
      order: 0;
      flex: 1 1 24rem;
    }
  }
  @media (max-height: 900px) {
    :host([large]) main {
      grid-template-rows: minmax(0, 0.8fr) minmax(0, 1fr) auto;
      gap: 0.4rem;
      padding: 0.4rem 0.5rem;
    }
    :host([large]) [role='tab'] {
      min-height: 28px;
    }
  }
  @media (max-width: 560px) {
    header {
      gap: 0.35rem 0.5rem;
      padding: 0.35rem 0.6rem;
    }
    h1 span {
      display: none;
    }
    main {
      padding: 0.5rem;
    }
  }
`;
